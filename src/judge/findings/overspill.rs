//! Some of the figure misses its target.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::StationReading,
    scene::{Item, Pose, Station, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::FIGURE_MISSES);
    let beyond = case.lit().filter(|(_, _, reading)| reading.figure_misses > bound.value);
    let finding = |(_, _, reading): (usize, &Station, &StationReading)| {
        let level = if reading.figure_misses > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let share = 100.0 * reading.figure_misses;
        let says = format!("{share:.0} % of the figure of {} misses {}", reading.station, reading.target);
        Finding::new(Matter::Overspill, level, &reading.station, None).against(reading.figure_misses, &bound, says)
    };
    beyond.map(finding).collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = Vec::new();
    // What was aimed a little off is aimed at the middle of its target.
    if let (Some(figure), Some(place)) = (reading.figure_at, case.night.place(&reading.target)) {
        let by = [0, 1, 2].map(|axis| f64::from(place.middle[axis]) - figure[axis]);
        if let Some(edit) = moves::aimed_off(case, station, by) {
            list.push(Proposal {
                says: format!("Aim {} so that its figure lands in the middle", station.name.0),
                edit,
            });
        }
    }
    list.extend(moves::along(case, station, &[0.1, 0.25, 0.5, 1.0, 1.5]));
    if station.pose != Pose::Upright {
        let edit = Edit::Change(Item::Station(Station { pose: Pose::Upright, ..station.clone() }));
        list.push(Proposal { says: format!("Lay {} on its side", station.name.0), edit });
    }
    list
}
