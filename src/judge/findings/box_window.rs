//! A box with a pane whose loss of light the station does not count.

use super::{Case, Finding, Level, Matter, boxes, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{Fraction, Item, Station, limits},
    units::two_digits,
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::BOX_WINDOW);
    let mut list = Vec::new();
    for (station, _, report) in boxes::boxed(case) {
        let Some(window) = report.window else { continue };
        let missed = window.not_reckoned();
        if missed <= bound.value {
            continue;
        }
        let says = format!(
            "The box window of “{}” takes {:.0} % of its light when clean, and {} of that is counted",
            station.name.0,
            100.0 * (1.0 - window.passes),
            if window.reckoned < 1.0 {
                format!("{:.0} %", 100.0 * (1.0 - window.reckoned))
            } else {
                "nothing".to_owned()
            }
        );
        let finding = Finding::new(Matter::BoxWindow, Level::Check, &station.name.0, None);
        list.push(finding.against(missed, &bound, says));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((station, _, report)) = boxes::boxed_by(case, &finding.of) else { return Vec::new() };
    let Some(window) = report.window else { return Vec::new() };
    let passes = (window.passes * 100.0).round() / 100.0;
    let edit = Edit::Change(Item::Station(Station { box_window: Fraction(passes), ..station.clone() }));
    let says = format!("Set a box window that passes {} in “{}”", two_digits(passes), station.name.0);
    vec![Proposal { says, edit }]
}
