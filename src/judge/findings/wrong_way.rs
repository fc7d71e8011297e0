//! A picture that is seen the wrong way round.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::StationReading,
    scene::{Content, Item, Station, limits},
};

/// How many of the spots that see a station see it turned left for right, and how many see it.
fn turned(case: &Case, station: &Station, reading: &StationReading) -> (usize, usize) {
    let Some(fate) = &reading.fate else { return (0, 0) };
    // An opaque thing is seen from its lit side or not at all.
    let see_through = case.night.veils.iter().any(|v| case.night.names[v.owner as usize] == reading.target);
    let seen = reading.spots.iter().zip(&fate.seen_from_lit_side).filter(|(spot, _)| spot.in_sight > 0.0);
    let odd = (station.mirrors.len() % 2 == 1) ^ station.content.mirrored;
    let sides: Vec<bool> = seen.map(|(_, lit)| odd ^ (see_through && !lit)).collect();
    (sides.iter().filter(|turned| **turned).count(), sides.len())
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::WRONG_WAY);
    let finding = |(_, station, reading): (usize, &Station, &StationReading)| {
        let (turned, seen) = turned(case, station, reading);
        let number = turned as f64 / seen.max(1) as f64;
        let says = format!(
            "The picture of “{}” is the wrong way round, left for right, from {turned} of the {seen} spots that see it",
            reading.station
        );
        let finding = Finding::new(Matter::WrongWay, Level::Check, &reading.station, None);
        (number > bound.value).then(|| finding.against(number, &bound, says))
    };
    case.lit().filter_map(finding).collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mirrored = !station.content.mirrored;
    let word = if mirrored { "mirrored" } else { "as it is drawn" };
    let content = Content { mirrored, ..station.content.clone() };
    vec![Proposal {
        says: format!("Send the picture of “{}” {word}", station.name.0),
        edit: Edit::Change(Item::Station(Station { content, ..station.clone() })),
    }]
}
