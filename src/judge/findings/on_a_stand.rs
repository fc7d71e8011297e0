//! A station on a stand in place of its mount, weighed down so that it does not go over.

use super::Case;
use crate::{
    craft::wind::WindReport,
    scene::{Mount, Point, Station},
    units,
};

/// Height of a lens on a stand in place of what hangs, m.
pub(super) const STAND_M: f64 = 1.9;

/// What a proposal says of that weight, in a sentence's end; nothing of none, as in a room.
pub(super) fn weighed(case: &Case, kg: f64, foot: &str) -> String {
    if kg > 0.0 {
        format!(", with {} on {foot}", units::mass(kg, case.yard.units.style().is_feet()))
    } else {
        String::new()
    }
}

/// Those stations on stands, with the weight, kg, that each has on its foot: the most that the wind asks for at one of them, up
/// to the next half kilogram.
pub(super) fn stood(case: &Case, stations: &[&Station]) -> (Vec<Station>, f64) {
    let mut stood: Vec<Station> = stations
        .iter()
        .map(|station| {
            let [x, y, z] = &station.at.0;
            let at = Point([x.clone(), y.changed(STAND_M), z.clone()]);
            Station { at, mount: Mount::Stand, ballast_kg: 0.0, ..(*station).clone() }
        })
        .collect();
    let mut yard = case.yard.clone();
    yard.stations.clone_from(&stood);
    let wind = WindReport::of(&yard, case.catalogue);
    let asked = wind.standing.iter().filter(|one| one.is_station).map(|one| one.ballast_needed_kg);
    let kg = (asked.fold(0.0, f64::max) * 2.0).ceil() / 2.0;
    for station in &mut stood {
        station.ballast_kg = kg;
    }
    (stood, kg)
}
