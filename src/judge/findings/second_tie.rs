//! A station hangs above heads by its mount alone.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    craft::{cautions::Caution, wind},
    edit::Edit,
    scene::{Item, Mount, Point, Station, limits},
};

/// Height of a lens on a stand in place of it, m.
const STAND_M: f64 = 1.9;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ABOVE_HEADS);
    let shown = case.yard.stations.iter().filter(|station| !case.yard.is_hidden(&station.name.0));
    let bare = shown.filter(|station| wind::needs_second_tie(station, bound.value));
    bare.map(|station| {
        let height = station.at.0[1].m;
        let says = format!(
            "{} hangs {} up, above heads, by its mount alone: {}",
            station.name.0,
            moves::length(case, height),
            Caution::Falls.short()
        );
        Finding::new(Matter::SecondTie, Level::Fix, &station.name.0, None).against(height, &bound, says)
    })
    .collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(station) = case.yard.stations.iter().find(|station| station.name.0 == finding.of) else {
        return Vec::new();
    };
    let tied = Station { second_tie: true, ..station.clone() };
    let [x, y, z] = &station.at.0;
    let at = Point([x.clone(), y.changed(STAND_M), z.clone()]);
    let lowered = Station { at, mount: Mount::Stand, ..station.clone() };
    let name = &station.name.0;
    vec![
        Proposal {
            says: format!("Give {name} a second tie, rated for ten times what hangs on it"),
            edit: Edit::Change(Item::Station(tied)),
        },
        Proposal {
            says: format!("Put {name} on a stand, {} up", moves::length(case, STAND_M)),
            edit: Edit::Change(Item::Station(lowered)),
        },
    ]
}
