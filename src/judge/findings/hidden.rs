//! Something stands between a viewing spot and a figure, and hides or dims it.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::{SpotReading, StationReading, Taken, eye},
    scene::{Item, Spot, limits},
};
use glam::DVec3;

/// What is farther than this beside where a spot looks is meant for others, degrees: common practice, no source.
const LOOKS_DEG: f64 = 45.0;
/// Of what something takes, more than this share is hidden and not only dimmed.
const HIDES: f64 = 0.9;
/// Of all that is taken, a second thing is named from this share on.
const ALSO: f64 = 0.25;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::HIDDEN);
    let mut list = Vec::new();
    for (_, _, reading) in case.lit() {
        let seen: Vec<(&Spot, &SpotReading)> = looking(case, reading).collect();
        let nowhere = seen.iter().all(|(_, read)| read.in_sight <= 0.5);
        for (spot, read) in seen {
            // What turns its own back on a spot is not hidden by anything.
            let taken: Vec<&Taken> = read.hidden_by.iter().filter(|taken| !is_target(reading, taken)).collect();
            let share: f64 = taken.iter().map(|taken| taken.share).sum();
            let Some(first) = taken.first().filter(|_| share > bound.value) else { continue };
            let second = taken.get(1).filter(|second| second.share > ALSO * share);
            let (by, is_one) = match second {
                Some(second) => (format!("“{}” and “{}”", first.thing, second.thing), false),
                None => (format!("“{}”", first.thing), true),
            };
            let (of, from, percent) = (&reading.station, &spot.name.0, 100.0 * share);
            let says = match (first.opaque > HIDES, is_one) {
                (true, true) => format!("{by} hides {percent:.0} % of “{of}” from “{from}”"),
                (true, false) => format!("{by} hide {percent:.0} % of “{of}” from “{from}”"),
                (false, true) => format!("{by} dims “{of}” by {percent:.0} % from “{from}”"),
                (false, false) => format!("{by} dim “{of}” by {percent:.0} % from “{from}”"),
            };
            let level = if nowhere { Level::Fix } else { Level::Check };
            let finding = Finding::new(Matter::Hidden, level, of, Some(&spot.name.0));
            list.push(finding.against(share, &bound, says));
        }
    }
    list
}

fn is_target(reading: &StationReading, taken: &Taken) -> bool {
    reading.targets.iter().any(|one| one.target == taken.thing)
}

/// Spots that look towards a station's figure, with what they have of it.
fn looking<'b>(case: &'b Case, reading: &'b StationReading) -> impl Iterator<Item = (&'b Spot, &'b SpotReading)> {
    let figure = reading.figure_at.map(DVec3::from_array);
    let spots = case.yard.spots.iter().zip(&reading.spots);
    spots.filter(move |(spot, _)| {
        let eye = eye(spot).as_dvec3();
        let looks = case.night.aim(&spot.look).map(|at| at.as_dvec3() - eye);
        let beside = |(figure, looks): (DVec3, DVec3)| (figure - eye).angle_between(looks).to_degrees();
        !case.yard.is_hidden(&spot.name.0) && figure.zip(looks).is_some_and(|pair| beside(pair) < LOOKS_DEG)
    })
}

/// Without what is most in the way, where hands can take that away.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((_, _, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let seen = reading.spots.iter().find(|spot| Some(spot.spot.as_str()) == finding.from());
    let taken = seen.and_then(|seen| seen.hidden_by.iter().find(|taken| !is_target(reading, taken)));
    let Some(name) = taken.map(|taken| taken.thing.clone()) else { return Vec::new() };
    let movable =
        |item: &Item| matches!(item, Item::Cloth(_) | Item::Film(_) | Item::Thing(_) | Item::Mirror(_) | Item::Form(_));
    let away = case
        .yard
        .item(&name)
        .filter(movable)
        .map(|_| Proposal { says: format!("Take “{name}” away"), edit: Edit::Hide(name.clone(), true) });
    away.into_iter().collect()
}
