//! The grey box around the figure lands beside the target, where it shows.

use super::{
    Case, Finding, Level, Matter,
    glimpse::{self, Patch},
    moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::{Landing, Sight, eye},
    scene::{Item, Pose, Spot, Station, limits},
    units::two_digits,
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::SPILL);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit().filter(|(_, _, reading)| reading.misses > 0.01) {
        let seen = case.seen_from(reading);
        let each = seen.filter_map(|(spot, sight, _)| Some((spot, worst(case, index, spot, sight)?)));
        let Some((spot, (patch, times))) = each.max_by(|a, b| a.1.1.total_cmp(&b.1.1)) else { continue };
        if times <= bound.value {
            continue;
        }
        let level = if times > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let says = format!(
            "Light of “{}” that misses “{}” makes “{}” {} times as bright, seen from “{}”",
            reading.station,
            reading.quoted_onto(),
            case.night.names[patch.owner as usize],
            two_digits(times),
            spot.name.0,
        );
        list.push(Finding::new(Matter::Spill, level, &reading.station, None).against(times, &bound, says));
    }
    list
}

/// What a spot sees brightened most by what misses the target, the figure itself left out, and how many times.
/// What the station is meant to light as well does not count.
fn worst(case: &Case, station: usize, spot: &Spot, sight: &Sight) -> Option<(Patch, f64)> {
    let missing = |l: &&Landing| {
        let is_meant = |owner: u32| !l.astray && case.is_meant(station, owner);
        l.is_ground() && l.target.is_none() && l.beyond.is_some_and(|touch| !is_meant(touch.owner))
    };
    let landings: Vec<&Landing> = case.landings(station).cells.iter().filter(missing).collect();
    let patches = glimpse::patches(case, station, eye(spot), &landings, |landing| landing.beyond);
    let shown = patches.into_iter().filter(|patch| case.shows(spot, sight, patch.own));
    let times = |patch: Patch| {
        let times = patch.times_beside(sight);
        (patch, times)
    };
    shown.map(times).max_by(|a, b| a.1.total_cmp(&b.1))
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::along(case, station, &[1.5]);
    if station.pose == Pose::Table {
        let edit = Edit::Change(Item::Station(Station { pose: Pose::Upright, ..station.clone() }));
        list.push(Attempt::Once(Proposal { says: format!("Lay “{}” on its side", station.name.0), edit }));
    }
    list.extend(moves::other_class(case, station, |class, now| class.on_off_contrast.0 > now.on_off_contrast.0));
    list
}
