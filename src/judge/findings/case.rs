//! What is judged: a yard, its night and its readings.

use super::finding::Bound;
use crate::{
    craft::{money::Running, power::PowerReport},
    judge::{Landing, Sight, Sighting, StationReading, reading, sightings},
    light::{
        Beam, Night,
        eye::{Task, threshold},
    },
    scene::{Catalogue, Limit, Spot, Station, Yard, limits},
};
use std::sync::OnceLock;

/// A yard with everything that is judged.
pub struct Case<'a> {
    /// The yard.
    pub yard: &'a Yard,
    /// The catalogue.
    pub catalogue: &'a Catalogue,
    /// Its night.
    pub night: &'a Night,
    /// Readings of its stations, in their order.
    pub readings: Vec<StationReading>,
    /// Where the raster of every station lands.
    landings: Vec<Vec<Landing>>,
    /// Its power plan, for one season, reckoned when first asked for.
    power: OnceLock<PowerReport>,
}

impl<'a> Case<'a> {
    /// Reads a yard.
    pub fn of(yard: &'a Yard, catalogue: &'a Catalogue, night: &'a Night) -> Self {
        let (readings, landings) = reading::all_followed(night, yard, catalogue).into_iter().unzip();
        Self { yard, catalogue, night, readings, landings, power: OnceLock::new() }
    }

    /// Every station that is on and throws onto something, with its reading.
    pub fn lit(&self) -> impl Iterator<Item = (usize, &'a Station, &StationReading)> {
        let stations = self.yard.stations.iter().enumerate().zip(&self.readings);
        stations
            .filter(|((_, station), reading)| {
                reading.on && !reading.target.is_empty() && !self.yard.is_hidden(&station.name.0)
            })
            .map(|((index, station), reading)| (index, station, reading))
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
    pub(super) fn landings(&self, station: usize) -> &[Landing] {
        self.landings.get(station).map_or(&[], Vec::as_slice)
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

    /// Whether a thing is meant to catch what of a station's light misses its target: another form, cloth or film that no
    /// other station lights. So one station lights two gourds.
    pub(super) fn is_meant(&self, station: usize, owner: u32) -> bool {
        let name = &self.night.names[owner as usize];
        let catches = self.yard.forms.iter().any(|form| form.name().0 == *name)
            || self.yard.cloths.iter().any(|cloth| cloth.name.0 == *name)
            || self.yard.films.iter().any(|film| film.name.0 == *name);
        catches && !self.lit().any(|(other, _, reading)| other != station && reading.lights(name))
    }
}
