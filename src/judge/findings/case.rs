//! What is judged: a yard, its night and its readings.

use super::{Finding, finding::Bound};
use crate::{
    craft::{money::Running, power::PowerReport},
    judge::{
        Landings, Sight, Sighting, StationReading,
        reading::{self, Depth, Here, Judged},
        sight::Around,
        sightings,
    },
    light::{
        Beam, Night,
        ambient::season::{SunTime, sun_times},
        eye::{Task, threshold},
    },
    scene::{Catalogue, Limit, Spot, Station, Yard, limits},
};
use rayon::prelude::*;
use std::sync::{Arc, OnceLock};

/// A station's reading, where there is one.
pub(super) type Reading = Option<Arc<Judged>>;

/// Reads a station as far as `depth` says.
fn judged(here: Here<'_>, index: usize, depth: Depth, known: Known<'_>) -> Reading {
    let follow = |beam: &Beam, targets: &[u32]| {
        let followed = || Arc::new(Landings::of(here.night, beam, targets));
        let Some(kept) = known.landings.get(index) else { return followed() };
        // It is followed by many threads, which must not wait for one another here.
        let landings = kept.get().map_or_else(followed, Arc::clone);
        Arc::clone(kept.get_or_init(|| landings))
    };
    let read = || reading::judged(here, index, depth, &follow).map(Arc::new);
    (depth > Depth::Nothing).then(read).flatten()
}

/// What is known of a yard's stations before it is read.
#[derive(Clone, Copy, Default)]
pub(super) struct Known<'a> {
    /// Their readings, where there are any.
    pub readings: &'a [Reading],
    /// Where their rasters land, as far as they were followed; what is followed now is put there.
    pub landings: &'a [OnceLock<Arc<Landings>>],
}

/// A yard with everything that is judged.
pub struct Case<'a> {
    /// The yard.
    pub yard: &'a Yard,
    /// The catalogue.
    pub catalogue: &'a Catalogue,
    /// Its night.
    pub night: &'a Night,
    /// For each of its stations what it is meant to light.
    targets: Vec<Vec<String>>,
    /// For each of its stations that is judged its reading, and where its raster lands.
    read: Vec<Reading>,
    /// What is bright around each of its spots, where any of its stations is read.
    around: Vec<Around>,
    /// Its power plan, for one season, computed when first asked for.
    power: OnceLock<PowerReport>,
    /// The sun over its season, placed when first asked for.
    suns: Arc<OnceLock<Vec<SunTime>>>,
    /// For each of its stations the share of its light that goes up into the sky, found when first asked for.
    upwards: Vec<Arc<OnceLock<f64>>>,
    /// Where the raster of one that is not read lands.
    nothing: Landings,
    /// All its findings, looked for when first asked for.
    pub(super) found: OnceLock<Vec<Finding>>,
}

impl<'a> Case<'a> {
    /// Reads a yard.
    pub fn of(yard: &'a Yard, catalogue: &'a Catalogue, night: &'a Night) -> Self {
        Self::only(yard, catalogue, night, |_| true)
    }

    /// The same with the stations that `judged` picks alone: as if the others lit nothing that is judged. Their light is there.
    pub(in crate::judge) fn only(
        yard: &'a Yard,
        catalogue: &'a Catalogue,
        night: &'a Night,
        judged: impl Fn(&Station) -> bool + Send + Sync,
    ) -> Self {
        let deep = |station: &Station| if judged(station) { Depth::Whole } else { Depth::Nothing };
        Self::as_far(yard, catalogue, night, Known::default(), deep)
    }

    /// The same as far as `deep` says of each station. What is known is not read again.
    pub(super) fn as_far(
        yard: &'a Yard,
        catalogue: &'a Catalogue,
        night: &'a Night,
        known: Known<'_>,
        deep: impl Fn(&Station) -> Depth + Send + Sync,
    ) -> Self {
        let looks = yard.stations.iter().any(|station| deep(station) >= Depth::Seen);
        let around = if looks { Around::each(night, &yard.spots) } else { Vec::new() };
        let read = |here: Here<'_>, index: usize| {
            let read = || judged(here, index, deep(&yard.stations[index]), known);
            known.readings.get(index).cloned().flatten().or_else(read)
        };
        Self::read(yard, catalogue, night, around, read)
    }

    /// The yard after a change of the light of those stations alone that are `changed`, read as far as `deep` says: what does not hang
    /// on that is taken from before. It has the same spots, or some of them.
    pub(super) fn after(
        before: &Self,
        yard: &'a Yard,
        night: &'a Night,
        (changed, known): (&[bool], Known<'_>),
        deep: impl Fn(&Station) -> Depth + Send + Sync,
    ) -> Self {
        let stations: Vec<u32> = (0..).zip(changed).filter(|(_, changed)| **changed).map(|(index, _)| index).collect();
        let looks: Vec<bool> = yard.stations.iter().map(|station| deep(station) >= Depth::Seen).collect();
        // A station's own light is none that is bright beside its figure.
        let for_another =
            |station: u32| (0..).zip(&looks).any(|(other, looks): (u32, &bool)| *looks && other != station);
        let counts = |station: u32| stations.contains(&station) && for_another(station);
        let has = |name: &str| yard.spots.iter().any(|spot| spot.name.0 == name);
        let were = before.yard.spots.iter().zip(&before.around).filter(|(spot, _)| has(&spot.name.0));
        let were: Vec<&Around> = were.map(|(_, around)| around).collect();
        let around = if looks.contains(&true) { Around::after(&were, night, &yard.spots, counts) } else { Vec::new() };
        let same_spots = yard.spots.len() == before.yard.spots.len();
        let read = |here: Here<'_>, index: usize| {
            if let Some(given) = known.readings.get(index).cloned().flatten() {
                return Some(given);
            }
            let was = before.read.get(index)?.as_ref().filter(|_| !changed[index]);
            if let Some((kept, was)) = known.landings.get(index).zip(was) {
                kept.get_or_init(|| Arc::clone(&was.landings));
            }
            match was.filter(|_| same_spots && looks[index]) {
                Some(was) if stations.is_empty() => Some(Arc::clone(was)),
                Some(was) => Some(Arc::new(reading::again(here, index, deep(&yard.stations[index]), was, &stations))),
                None => judged(here, index, deep(&yard.stations[index]), known),
            }
        };
        let upwards = before.upwards.iter().zip(changed).map(|(was, changed)| match changed {
            true => Arc::default(),
            false => Arc::clone(was),
        });
        let (suns, upwards) = (Arc::clone(&before.suns), upwards.collect());
        Self { suns, upwards, ..Self::read(yard, before.catalogue, night, around, read) }
    }

    fn read(
        yard: &'a Yard,
        catalogue: &'a Catalogue,
        night: &'a Night,
        around: Vec<Around>,
        read: impl Fn(Here<'_>, usize) -> Reading + Send + Sync,
    ) -> Self {
        let stations = 0..yard.stations.len();
        let targets = stations.clone().map(|index| reading::targets(night, yard, index)).collect();
        let here = Here { night, yard, catalogue, around: &around };
        let read = stations.into_par_iter().map(|index| read(here, index)).collect();
        let (power, suns, found) = (OnceLock::new(), Arc::default(), OnceLock::new());
        let upwards = yard.stations.iter().map(|_| Arc::default()).collect();
        Self {
            yard,
            catalogue,
            night,
            targets,
            read,
            around,
            power,
            suns,
            upwards,
            nothing: Landings::default(),
            found,
        }
    }

    /// The readings of all its stations as far as they are measured, to be given to another case of the same yard and night.
    pub(super) fn measured(&self, deep: impl Fn(&Station) -> Depth) -> Vec<Reading> {
        let stations = self.yard.stations.iter().zip(&self.read);
        stations.map(|(station, read)| read.clone().filter(|_| deep(station) >= Depth::Measured)).collect()
    }

    /// Every station that is judged, on, and throws onto something, with its reading.
    pub fn lit(&self) -> impl Iterator<Item = (usize, &'a Station, &StationReading)> {
        let stations = self.yard.stations.iter().enumerate().zip(&self.read);
        let read = stations.filter_map(|((index, station), read)| Some((index, station, &read.as_ref()?.reading)));
        read.filter(|(index, ..)| self.lights(*index))
    }

    /// The reading of a station that is judged, by its index.
    pub fn reading(&self, station: usize) -> Option<&StationReading> {
        self.read.get(station)?.as_ref().map(|read| &read.reading)
    }

    /// Whether a station is on and throws onto something.
    fn lights(&self, station: usize) -> bool {
        let name = &self.yard.stations[station].name.0;
        self.yard.stations[station].on && !self.targets[station].is_empty() && !self.yard.is_hidden(name)
    }

    /// What a station of this name is meant to light.
    pub(super) fn targets_of(&self, station: &str) -> &[String] {
        let index = self.yard.stations.iter().position(|one| one.name.0 == station);
        index.map_or(&[], |index| self.targets[index].as_slice())
    }

    /// A limit with its reason; the yard's own before the catalogue's. A test proves that the catalogue has every one.
    pub(super) fn limit(&self, name: &str) -> Bound {
        let limit: Option<&Limit> = self.yard.limit(self.catalogue, name);
        let none = Bound { value: f64::NAN, unit: String::new(), why: String::new() };
        limit.map_or(none, |limit| Bound {
            value: limit.value,
            unit: limit.unit.clone(),
            why: format!("{} ({})", limit.note, limit.source.name()),
        })
    }

    /// The limit of three that goes with what lies around the yard: a country lane, a suburb, a town.
    pub(super) fn limit_around(&self, names: [&str; 3]) -> Bound {
        self.limit(self.yard.setting.of_three(names))
    }

    /// A station that is lit, by its name, with its reading.
    pub(super) fn lit_by(&self, name: &str) -> Option<(usize, &'a Station, &StationReading)> {
        self.lit().find(|(_, station, _)| station.name.0 == name)
    }

    /// What the viewing spots see of a station, by source.
    pub fn sightings(&self, station: usize) -> Vec<Sighting> {
        sightings(self.night, self.yard, self.catalogue, station).unwrap_or_default()
    }

    /// Where the raster of a station lands; nothing of one that is off.
    pub(in crate::judge) fn landings(&self, station: usize) -> &Landings {
        self.read.get(station).and_then(Option::as_ref).map_or(&self.nothing, |read| &read.landings)
    }

    /// Where the sun stands over its season; nothing of a yard without a date.
    pub(super) fn suns(&self) -> &[SunTime] {
        let when = self.yard.evening.when.as_ref();
        self.suns.get_or_init(|| when.map_or_else(Vec::new, |when| sun_times(when, self.yard.season)))
    }

    /// The share of a station's light that goes up past everything into the sky; `find` looks for it where that was not done yet.
    pub(super) fn upwards(&self, station: usize, find: impl FnOnce() -> f64) -> f64 {
        // It is found by many threads, which must not wait for one another here.
        let kept = &self.upwards[station];
        kept.get().copied().unwrap_or_else(|| {
            let share = find();
            *kept.get_or_init(|| share)
        })
    }

    /// Its power plan.
    pub(super) fn power(&self) -> &PowerReport {
        self.power.get_or_init(|| PowerReport::of(self.yard, self.catalogue, Running::of(self.yard, 1)))
    }

    /// The beam of a station that has met all of its mirrors.
    pub(super) fn beam(&self, station: usize) -> Option<&'a Beam> {
        self.night.beams.iter().rfind(|beam| beam.station as usize == station)
    }

    /// Spots that see most of a station's figure, with what an eye there makes of it, and how far it is from there, m.
    pub(super) fn seen_from<'b>(
        &'b self,
        reading: &'b StationReading,
    ) -> impl Iterator<Item = (&'a Spot, &'b Sight, f64)> {
        let spots = self.yard.spots.iter().zip(&reading.spots).filter(|(_, read)| read.in_sight > 0.5);
        spots.filter_map(|(spot, read)| Some((spot, read.sight.as_ref()?, read.distance_m?)))
    }

    /// Whether light beside a figure shows at all to an eye that looks at that figure: cd/m² over its surroundings.
    pub(super) fn shows(&self, spot: &Spot, sight: &Sight, luminance: f64) -> bool {
        let least = |name| self.yard.limit(self.catalogue, name).map_or(0.0, |limit| limit.value);
        let task = Task { age: Some(f64::from(spot.age.0)), ..Task::bright(least(limits::LIGHT_SIZE)) };
        luminance >= least(limits::LIGHT_FAINT) * threshold(sight.adaptation, task)
    }

    /// Whether a thing is meant to catch what of a station's light misses the one thing that it is aimed at, where no targets are
    /// listed: another form, cloth or film that no other station lights. So one station lights two gourds.
    pub(super) fn is_meant(&self, station: usize, owner: u32) -> bool {
        if !self.yard.stations[station].target.0.is_empty() {
            return false;
        }
        let name = &self.night.names[owner as usize];
        let catches = self.yard.forms.iter().any(|form| form.name().0 == *name)
            || self.yard.cloths.iter().any(|cloth| cloth.name.0 == *name)
            || self.yard.films.iter().any(|film| film.name.0 == *name);
        let by_another = |other: usize| other != station && self.lights(other) && self.targets[other].contains(name);
        catches && !(0..self.targets.len()).any(by_another)
    }
}
