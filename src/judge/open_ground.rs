//! The light on open level ground, and for which clock it holds.

use crate::{
    light::{Ambient, Body, Source},
    scene::Yard,
    units::border,
};
use serde::Serialize;

/// A date and a clock time of a place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LocalTime {
    /// The day, as `2026-12-21`.
    pub date: String,
    /// What the clock shows.
    pub clock: String,
    /// The time zone of both.
    pub zone: String,
}

/// Where the middle of sun or moon stands.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Heavenly {
    /// Height above the horizon, degrees, refraction not counted.
    #[serde(serialize_with = "border::light")]
    pub height_deg: f64,
    /// Compass bearing, degrees from north by east.
    #[serde(serialize_with = "border::light")]
    pub bearing_deg: f64,
}

/// The moon, and how much light it gives.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MoonReading {
    /// Where it stands.
    #[serde(flatten)]
    pub place: Heavenly,
    /// What it gives to open level ground in all, straight and by way of the sky, lx.
    #[serde(serialize_with = "border::light")]
    pub lx: f64,
    /// Share of its disc that is lit.
    #[serde(serialize_with = "border::light")]
    pub lit: f64,
}

/// What comes straight from sun or moon and casts a shadow.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Direct {
    /// Name of the source.
    pub from: String,
    /// On open level ground, lx.
    #[serde(serialize_with = "border::light")]
    pub lx: f64,
}

/// The light on open level ground: the sky's and what comes straight.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OpenGround {
    /// When all of this holds; `None` on an evening by plain numbers.
    pub at: Option<LocalTime>,
    /// In all, lx.
    #[serde(serialize_with = "border::light")]
    pub lx: f64,
    /// By the dome of the sky alone, lx.
    #[serde(serialize_with = "border::light")]
    pub sky_lx: f64,
    /// What of that the glow of towns adds, lx.
    #[serde(serialize_with = "border::light")]
    pub town_lx: f64,
    /// What comes straight from the brighter of sun and moon, where one is up.
    pub direct: Option<Direct>,
    /// The sun; `None` on an evening by plain numbers.
    pub sun: Option<Heavenly>,
    /// The moon; `None` on an evening by plain numbers.
    pub moon: Option<MoonReading>,
}

impl OpenGround {
    /// Of a yard's evening as it is set.
    pub fn of(yard: &Yard) -> Self {
        let ambient = Ambient::of(yard);
        let at = yard.evening.when.as_ref().map(|when| LocalTime {
            date: when.date.to_string(),
            clock: when.clock.to_string(),
            zone: when.zone.to_string(),
        });
        let direct = ambient.disc.map(|disc| {
            let source = match disc.body {
                Body::Sun => Source::Sun,
                Body::Moon => Source::Moon,
            };
            Direct { from: source.name().to_owned(), lx: disc.lx }
        });
        let stands = |height_deg, bearing_deg| Heavenly { height_deg, bearing_deg };
        Self {
            at,
            lx: ambient.level_lx(),
            sky_lx: ambient.sky_lx,
            town_lx: ambient.town_lx,
            direct,
            sun: ambient.sun.map(|sun| stands(sun.height_deg, sun.bearing_deg)),
            moon: ambient.moon.map(|moon| MoonReading {
                place: stands(moon.height_deg, moon.bearing_deg),
                lx: ambient.moon_lx,
                lit: moon.lit(),
            }),
        }
    }
}
