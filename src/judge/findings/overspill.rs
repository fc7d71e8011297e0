//! Some of the figure misses its target.

use super::{
    Case, Finding, Level, Matter, moves, nowhere,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::Part,
    scene::{Item, Pose, Station, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::FIGURE_MISSES);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        let (misses, others) = misses(case, index);
        // Where all of it does, that is told of by itself.
        if misses <= bound.value || nowhere::is_lost(case, index) {
            continue;
        }
        let level = if misses > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let targets = [vec![reading.quoted_onto().as_str()], others].concat().join("” and “");
        let says = format!("{:.0} % of the figure of “{}” misses “{targets}”", 100.0 * misses, reading.station);
        let finding = Finding::new(Matter::Overspill, level, &reading.station, None);
        list.push(finding.against(misses, &bound, says));
    }
    list
}

/// Share of a figure's light that lands on nothing that it is meant for, and what besides its target it is meant for.
fn misses<'a>(case: &'a Case, station: usize) -> (f64, Vec<&'a str>) {
    let figure = &case.landings(station).figure;
    let all: f64 = figure.iter().map(Part::lumens).sum();
    let missing = figure.iter().filter(|part| part.landing.target.is_none());
    let (lost, meant): (Vec<&Part>, Vec<&Part>) = missing.partition(|part| caught(case, station, part).is_none());
    let lost: f64 = lost.into_iter().map(Part::lumens).sum();
    let owners = meant.into_iter().filter_map(|part| caught(case, station, part));
    let mut others: Vec<&str> = owners.map(|owner| case.night.names[owner as usize].as_str()).collect();
    others.sort_unstable();
    others.dedup();
    (if all > 0.0 { lost / all } else { 0.0 }, others)
}

/// What a point of the figure that misses its target is meant for instead.
fn caught(case: &Case, station: usize, part: &Part) -> Option<u32> {
    let beyond = part.landing.beyond.filter(|_| !part.landing.astray);
    beyond.map(|touch| touch.owner).filter(|owner| case.is_meant(station, *owner))
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = Vec::new();
    // What was aimed a little off is aimed at the middle of its target.
    if let (Some(figure), Some(place)) = (reading.figure_at, case.night.place(&reading.target)) {
        let by = [0, 1, 2].map(|axis| f64::from(place.middle[axis]) - figure[axis]);
        if let Some(edit) = moves::aimed_off(case, station, by) {
            let says = format!("Aim “{}” so that its figure lands in the middle", station.name.0);
            list.push(Attempt::Once(Proposal { says, edit }));
        }
    }
    list.extend(moves::along(case, station, &[1.5]));
    list.extend(moves::aimed_higher(case, station, &[-0.6, 0.6]));
    list.extend(moves::aimed_right(case, station, &[-0.6, 0.6]));
    if station.pose != Pose::Upright {
        let edit = Edit::Change(Item::Station(Station { pose: Pose::Upright, ..station.clone() }));
        list.push(Attempt::Once(Proposal { says: format!("Lay “{}” on its side", station.name.0), edit }));
    }
    list
}
