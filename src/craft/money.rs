//! How long things run, and what that takes.

use crate::{
    scene::{ProjectorClass, Station, Yard},
    units::border,
};
use serde::Serialize;

/// How long a station runs.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Running {
    /// Seasons.
    pub seasons: u32,
    /// Nights in one.
    pub nights: u32,
    /// Hours in a night.
    #[serde(serialize_with = "border::light")]
    pub hours: f64,
}

/// Seasons that things are bought for, where nobody says another number: common practice, no source.
pub const SEASONS: u32 = 5;
/// Nights of a season where a yard says nothing: common practice, no source.
const NIGHTS: u32 = 30;

impl Running {
    /// As long as a yard's season and its visitors' hours are, for so many seasons.
    pub fn of(yard: &Yard, seasons: u32) -> Self {
        let minutes = |time: jiff::civil::Time| f64::from(time.hour()) * 60.0 + f64::from(time.minute());
        let (from, until) = (minutes(yard.visitors.0.civil()), minutes(yard.visitors.1.civil()));
        let nights = yard.season.map_or(NIGHTS, |(first, last)| {
            let days = (last.civil() - first.civil()).get_days();
            u32::try_from(days).map_or(NIGHTS, |days| days + 1)
        });
        Self { seasons, nights, hours: (until - from).rem_euclid(24.0 * 60.0) / 60.0 }
    }

    /// Hours in all.
    pub fn all(&self) -> f64 {
        f64::from(self.seasons) * f64::from(self.nights) * self.hours
    }
}

/// What running a projector takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Upkeep {
    /// Hours that it runs.
    #[serde(serialize_with = "border::light")]
    pub hours: f64,
    /// Lamps to be bought in that time, beyond the one that is in it.
    pub lamps: u32,
    /// Price of those, in your money; `None` where lamps are needed whose price is not known.
    #[serde(serialize_with = "border::light")]
    pub lamps_cost: Option<f64>,
    /// Electricity, kWh.
    #[serde(serialize_with = "border::light")]
    pub kwh: f64,
}

impl Upkeep {
    /// Of a class in a station, whose hours its lamp has run already.
    pub fn of(class: &ProjectorClass, station: &Station, running: Running) -> Self {
        let hours = running.all();
        let lamps = lamps_needed(class, station.hours, hours);
        let lamps_cost = if lamps > 0 { class.lamp_price.map(|price| price.0 * f64::from(lamps)) } else { Some(0.0) };
        Self { hours, lamps, lamps_cost, kwh: hours * class.watts.0 / 1000.0 }
    }
}

/// Lamps that a projector takes over so many hours, beyond the one in it, which has run already for some.
pub fn lamps_needed(class: &ProjectorClass, run_hours: f64, hours: f64) -> u32 {
    class.lamp_hours.map_or(0, |life| ((run_hours.max(0.0) + hours.max(0.0)) / life.0).floor() as u32)
}
