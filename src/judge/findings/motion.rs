//! A floodlight that fires as visitors arrive: what it leaves of the show.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    frames::{Picture, Shelf},
    judge::{Limits, Sight, Weights, Word, sightings},
    light::{Night, Source, response},
    scene::{Item, Lamp, Yard},
};
use std::{collections::BTreeMap, path::Path, sync::Arc};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let waits = |lamp: &&Lamp| lamp.motion && !lamp.on && !case.yard.is_hidden(&lamp.name.0);
    case.yard.lamps.iter().filter(waits).flat_map(|lamp| fires(case, lamp).unwrap_or_default()).collect()
}

/// What it does to the stations: for each spot the one that suffers most.
fn fires(case: &Case, lamp: &Lamp) -> Option<Vec<Finding>> {
    let (yard, night, source) = lit(case, lamp)?;
    let limits = Limits::of(&yard, case.catalogue);
    let dark = Weights::default().with(source, 0.0);
    let mut worst: Vec<Option<(&str, Sight, Sight)>> = vec![None; yard.spots.len()];
    for (index, station, _) in case.lit() {
        let seen = sightings(&night, &yard, case.catalogue, index).unwrap_or_default();
        for (slot, sighting) in worst.iter_mut().zip(seen.iter()) {
            let pair = sighting.under(&dark, &limits).zip(sighting.under(&Weights::default(), &limits));
            let Some((before, after)) = pair.filter(|_| sighting.in_sight() > 0.5) else { continue };
            // What was no better than that suffers nothing.
            let suffers = after.word < Word::Clear && after.word < before.word;
            if suffers && slot.as_ref().is_none_or(|(_, _, so_far)| after.word < so_far.word) {
                *slot = Some((&station.name.0, before, after));
            }
        }
    }
    let told = yard.spots.iter().zip(worst).filter_map(|(spot, worst)| Some((&spot.name.0, worst?)));
    let finding = |(from, (station, before, after)): (&String, (&str, Sight, Sight))| {
        let answer = after.worst();
        let bound = case.limit(answer.question.limits()[1]);
        let level = if after.word == Word::Lost { Level::Fix } else { Level::Check };
        let says = format!(
            "When “{}” fires, “{station}” is {} from “{from}” in place of {}",
            lamp.name.0,
            after.word.name(),
            before.word.name(),
        );
        let finding = Finding::new(Matter::Motion, level, &lamp.name.0, Some(from));
        let number = answer.value.map_or(0.0, |value| value.typical);
        finding.against(number, &bound, says).unsure(after.most >= Word::Clear)
    };
    Some(told.map(finding).collect())
}

/// The yard and the night with the lamp on, and its index among the sources. Of measured lamps only what the night has is at hand:
/// a floodlight by its own file stays dark, and so do others, both before and after.
fn lit(case: &Case, lamp: &Lamp) -> Option<(Yard, Night, usize)> {
    let mut yard = case.yard.clone();
    let on = yard.lamps.iter_mut().find(|other| other.name == lamp.name)?;
    (on.on, on.from, on.until) = (true, None, None);
    let mut shelf = Shelf::beside(Path::new(""));
    let mut frames: BTreeMap<&str, Vec<_>> = BTreeMap::new();
    for beam in &case.night.beams {
        let station = &yard.stations[beam.station as usize];
        let response = response(&yard, case.catalogue, station)?;
        frames.entry(&station.content.picture).or_default().push((response, Arc::clone(&beam.frame)));
    }
    for (name, frames) in frames {
        shelf.pictures.insert(name.to_owned(), Arc::new(Picture::given(frames)));
    }
    let mut night = case.night.clone();
    night.follow(case.yard, &yard, case.catalogue, &shelf).ok()?;
    let is_it = |source: &Source| matches!(source, Source::Lamp(name) if *name == lamp.name.0);
    let source = night.sources.iter().position(is_it)?;
    Some((yard, night, source))
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let lamp = case.yard.lamps.iter().find(|lamp| lamp.name.0 == finding.of);
    let quiet = lamp.map(|lamp| Proposal {
        says: format!("Unplug “{}” or lock it off while the show runs", lamp.name.0),
        edit: Edit::Change(Item::Lamp(Lamp { motion: false, ..lamp.clone() })),
    });
    quiet.into_iter().collect()
}
