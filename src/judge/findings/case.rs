//! What is judged: a yard, its night and its readings.

use super::finding::Bound;
use crate::{
    judge::{Sighting, StationReading, read_all, sightings},
    light::Night,
    scene::{Catalogue, Limit, Station, Yard},
};

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
}

impl<'a> Case<'a> {
    /// Reads a yard.
    pub fn of(yard: &'a Yard, catalogue: &'a Catalogue, night: &'a Night) -> Self {
        Self { yard, catalogue, night, readings: read_all(night, yard, catalogue) }
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

    /// A station that is lit, by its name, with its reading.
    pub(super) fn lit_by(&self, name: &str) -> Option<(usize, &'a Station, &StationReading)> {
        self.lit().find(|(_, station, _)| station.name.0 == name)
    }

    /// What the viewing spots see of a station, by source.
    pub fn sightings(&self, station: usize) -> Vec<Sighting> {
        sightings(self.night, self.yard, self.catalogue, station).unwrap_or_default()
    }
}
