//! A form, or a station on a stand, that goes over in the wind or is near to it.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    craft::wind::{StandWind, WindReport},
    edit::Edit,
    scene::{Item, Mount, Point, Station, limits},
    units,
};

/// Height of a lens on the ground in place of a stand, m.
const LOW_M: f64 = 0.5;

fn standing(case: &Case) -> Vec<StandWind> {
    WindReport::of(case.yard, case.catalogue).standing
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::OVERTURNS);
    let feet = case.yard.units.style().is_feet();
    let over = standing(case).into_iter().filter(|one| one.holds < bound.value);
    over.map(|one| {
        let foot = if one.is_station { "its stand" } else { "its foot" };
        let gust = units::wind(case.yard.climate.gust_m_s, feet);
        let (level, fares) = if one.holds < 1.0 {
            (Level::Fix, format!("goes over in a gust of {gust}"))
        } else {
            (Level::Check, format!("holds only {:.2} times against a gust of {gust}", one.holds))
        };
        let says = format!(
            "“{}” {fares}: it needs {} on {foot} and has {}",
            one.name,
            units::mass(one.ballast_needed_kg, feet),
            units::mass(one.ballast_kg, feet),
        );
        let finding = Finding::new(Matter::Topples, level, &one.name, None).against(one.holds, &bound, says);
        finding.doing("Weigh it down, or hold it with guys and stakes".to_owned())
    })
    .collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let all = standing(case);
    let Some(one) = all.iter().find(|one| one.name == finding.of) else { return Vec::new() };
    // As somebody would fill it: up to the next half kilogram.
    let kg = (one.ballast_needed_kg * 2.0).ceil() / 2.0;
    let says = format!("Put {} on the foot of “{}”", units::mass(kg, case.yard.units.style().is_feet()), one.name);
    match case.yard.item(&one.name) {
        Some(Item::Form(form)) => vec![Proposal { says, edit: Edit::Change(Item::Form(form.with_ballast(kg))) }],
        Some(Item::Station(station)) => {
            let [x, y, z] = &station.at.0;
            let at = Point([x.clone(), y.changed(LOW_M), z.clone()]);
            let low = Station { at, mount: Mount::Ground, ..station.clone() };
            let weighted = Station { ballast_kg: kg, ..station };
            vec![
                Proposal { says, edit: Edit::Change(Item::Station(weighted)) },
                Proposal {
                    says: format!("Set “{}” on the ground", one.name), edit: Edit::Change(Item::Station(low))
                },
            ]
        }
        _ => Vec::new(),
    }
}
