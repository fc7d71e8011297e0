//! A station hangs above heads by its mount alone.

use super::{
    Case, Finding, Level, Matter, moves,
    on_a_stand::{STAND_M, stood, weighed},
    remedy::Proposal,
};
use crate::{
    craft::wind,
    edit::Edit,
    scene::{Item, Station, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ABOVE_HEADS);
    let shown = case.yard.stations.iter().filter(|station| !case.yard.is_hidden(&station.name.0));
    let bare = shown.filter(|station| wind::needs_second_tie(station, bound.value));
    bare.map(|station| {
        let height = station.at.0[1].m;
        let says =
            format!("“{}” hangs {} up, above heads, by its mount alone", station.name.0, moves::length(case, height));
        Finding::new(Matter::SecondTie, Level::Fix, &station.name.0, None).against(height, &bound, says)
    })
    .collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(station) = case.yard.stations.iter().find(|station| station.name.0 == finding.of) else {
        return Vec::new();
    };
    let tied = Station { second_tie: true, ..station.clone() };
    let (lowered, kg) = stood(case, &[station]);
    let name = &station.name.0;
    let mut list = vec![Proposal {
        says: format!("Give “{name}” a second tie, rated for ten times the weight that it holds"),
        edit: Edit::Change(Item::Station(tied)),
    }];
    list.extend(lowered.into_iter().map(|lowered| Proposal {
        says: format!("Put “{name}” on a stand, {} up{}", moves::length(case, STAND_M), weighed(case, kg, "its foot")),
        edit: Edit::Change(Item::Station(lowered)),
    }));
    list
}
