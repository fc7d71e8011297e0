//! Stations that are put up from a ladder: a caution, once for a yard.

use super::{
    Case, Finding, Level, Matter, moves,
    on_a_stand::{STAND_M, stood, weighed},
    remedy::Proposal,
};
use crate::{
    craft::{cautions::Caution, is_outdoors},
    edit::Edit,
    scene::{Item, Mount, Station, limits},
};

/// Stations whose lens is higher than so many metres. What stands on a shelf in a room stands on a floor that may be high itself.
fn high<'a>(case: &Case<'a>, above: f64) -> Vec<&'a Station> {
    let climbed = |s: &&Station| s.mount != Mount::Shelf || is_outdoors(case.yard, s);
    let shown = |s: &&Station| s.on && !case.yard.is_hidden(&s.name.0);
    case.yard.stations.iter().filter(shown).filter(climbed).filter(|station| station.at.0[1].m > above).collect()
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::LADDER);
    let high = high(case, bound.value);
    let Some(highest) = high.iter().max_by(|a, b| a.at.0[1].m.total_cmp(&b.at.0[1].m)) else { return Vec::new() };
    let height = highest.at.0[1].m;
    let others = match high.len() {
        1 => String::new(),
        2 => " and another station".to_owned(),
        n => format!(" and {} other stations", n - 1),
    };
    let verb = if high.len() == 1 { "is" } else { "are" };
    let says = format!(
        "{}, {} up,{others} {verb} work on a ladder: {}",
        highest.name.0,
        moves::length(case, height),
        Caution::Ladder.short()
    );
    vec![Finding::new(Matter::Ladder, Level::Check, &highest.name.0, None).against(height, &bound, says)]
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let high = high(case, finding.limit);
    let names: Vec<&str> = high.iter().map(|station| station.name.0.as_str()).collect();
    let (lowered, kg) = stood(case, &high);
    let says = format!(
        "Put {} on stands, {} up{}",
        names.join(" and "),
        moves::length(case, STAND_M),
        weighed(case, kg, "the foot of each")
    );
    let edits = lowered.into_iter().map(|station| Edit::Change(Item::Station(station)));
    vec![Proposal { says, edit: Edit::All(edits.collect()) }]
}
