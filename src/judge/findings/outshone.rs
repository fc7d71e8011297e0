//! A station takes the eye from another.

use super::{
    Case, Finding, Level, Matter, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::{
        Word,
        sight::{Question, Rival},
    },
    light::Source,
    scene::{Item, Station, limits},
    units::two_digits,
};

/// The station that a rival is, where it is one.
fn station_of<'a>(case: &Case<'a>, rival: &Rival) -> Option<&'a Station> {
    match case.night.sources.get(rival.source as usize)? {
        Source::Station(index, _) => case.yard.stations.get(*index as usize),
        _ => None,
    }
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::HOLDS_CLEAR);
    let mut list = Vec::new();
    for (_, station, reading) in case.lit() {
        for spot in reading.spots.iter().filter(|spot| spot.in_sight > 0.5) {
            let Some((sight, rival)) = spot.sight.as_ref().and_then(|sight| Some((sight, sight.rival.as_ref()?)))
            else {
                continue;
            };
            let answer = sight.answer(Question::HoldsItsOwn);
            let (Some(other), Some(value)) = (station_of(case, rival), answer.value) else { continue };
            if answer.word >= Word::Clear {
                continue;
            }
            let level = if value.typical < answer.limits[0] { Level::Fix } else { Level::Check };
            let of = &station.name.0;
            let says = format!(
                "“{}” outshines “{of}” from “{}”: “{of}” counts for {} of it, {} needed ({} times its light, {:.0}° beside it)",
                other.name.0,
                spot.spot,
                two_digits(value.typical),
                two_digits(bound.value),
                two_digits(rival.times),
                rival.degrees
            );
            let finding = Finding::new(Matter::Outshone, level, of, Some(&spot.spot));
            list.push(finding.against(value.typical, &bound, says).unsure(value.high >= bound.value));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let spot = reading.spots.iter().find(|spot| Some(spot.spot.as_str()) == finding.from());
    let rival = spot.and_then(|spot| station_of(case, spot.sight.as_ref()?.rival.as_ref()?));
    let Some(other) = rival else { return Vec::new() };
    let times = finding.limit / finding.number.max(1e-6);
    let mut list = moves::dimmer(case, other, 1.0 / times);
    let off = Station { on: false, ..other.clone() };
    list.push(Attempt::Once(Proposal {
        says: format!("Let “{}” and “{}” play in turns, not at once", other.name.0, station.name.0),
        edit: Edit::Change(Item::Station(off)),
    }));
    list.extend(moves::along(case, station, &[1.5]));
    list.extend(moves::brighter(case, station, times.min(20.0)));
    list
}
