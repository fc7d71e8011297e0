//! Stations that hang: on brackets, under beams, in trees.

use super::{Air, GRAVITY, Rules, standing::box_drag_m2};
use crate::{
    craft::is_outdoors,
    scene::{Mount, Station, Yard},
    units::border,
};
use serde::Serialize;

/// A small projector in its box with its mount, kg. Common practice, no source.
const HUNG_KG: f64 = 4.0;
/// What a second tie should be rated for over what hangs on it: it must stop a fall. Common practice of stages, no source.
const SECOND_TIE_FACTOR: f64 = 10.0;

/// What hangs on a mount.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MountWind {
    /// Name of the station.
    pub station: String,
    /// Height of its lens, m.
    #[serde(serialize_with = "border::lengths")]
    pub height_m: f64,
    /// Pull of its weight and, in the open, the gust together, N.
    #[serde(serialize_with = "border::light")]
    pub pull_n: f64,
    /// Whether it hangs above heads, so that a second tie must hold it.
    pub above_heads: bool,
    /// Whether it has one.
    pub second_tie: bool,
    /// What that should be rated for, N.
    #[serde(serialize_with = "border::light")]
    pub second_tie_n: f64,
}

/// Whether a mount holds a station in the air.
fn hangs(station: &Station) -> bool {
    matches!(station.mount, Mount::Wall | Mount::Hung | Mount::Tree)
}

/// Whether a station hangs above heads, indoors too, and no second tie holds it.
pub fn needs_second_tie(station: &Station, above_m: f64) -> bool {
    hangs(station) && station.at.0[1].m > above_m && !station.second_tie
}

impl MountWind {
    /// All stations that hang.
    pub fn all(yard: &Yard, air: Air, rules: Rules) -> Vec<Self> {
        let hung = yard.stations.iter().filter(|s| hangs(s) && !yard.is_hidden(&s.name.0));
        hung.map(|station| {
            let height_m = station.at.0[1].m;
            let weight_n = (HUNG_KG + station.ballast_kg) * GRAVITY;
            let wind_n = if is_outdoors(yard, station) { box_drag_m2(station) * air.pressure_pa() } else { 0.0 };
            Self {
                station: station.name.0.clone(),
                height_m,
                pull_n: weight_n.hypot(wind_n),
                above_heads: height_m > rules.above_heads_m,
                second_tie: station.second_tie,
                second_tie_n: SECOND_TIE_FACTOR * weight_n,
            }
        })
        .collect()
    }
}
