//! What a conductor is: its cross-section and what it resists, from the geometry of the wire and the resistivity of copper.

use crate::scene::Gauge;

/// Resistivity of annealed copper at 20 °C, Ω m (International Annealed Copper Standard, IEC 60028).
const RESISTIVITY: f64 = 1.7241e-8;
/// Its rise, of the value at 20 °C, for each kelvin (IEC 60028).
const RISE: f64 = 0.003_93;
/// A rope of strands is longer than it looks by about this (lay of class B strands, ASTM B8; from memory).
const LAY: f64 = 1.02;
/// A nominal cross-section in mm² may resist more than its geometry by so much: solid, and of fine strands (IEC 60228, classes 1
/// and 5; from memory).
const NOMINAL: [f64; 2] = [1.07, 1.15];

/// The temperature of copper at work that trade tables are made for (NEC Chapter 9 Table 8), °C: on the safe side in a winter night,
/// at whose frost the same copper resists about a quarter less.
pub const WORKING_C: f64 = 75.0;

/// Cross-section of one conductor, mm². A gauge number `n` is `0.127 mm · 92^((36 − n)/39)` across (ASTM B258).
pub fn area_mm2(gauge: Gauge) -> f64 {
    match gauge {
        Gauge::Awg(number) => {
            let across = 0.127 * 92f64.powf((36.0 - f64::from(number)) / 39.0);
            std::f64::consts::FRAC_PI_4 * across * across
        }
        Gauge::Mm2(area) => area,
    }
}

/// What one metre of one conductor resists with its copper at `copper_c` °C, Ω: `ρ₂₀ (1 + α (T − 20)) / A`.
pub fn ohms_per_m(gauge: Gauge, solid: bool, copper_c: f64) -> f64 {
    let make = match (gauge, solid) {
        (Gauge::Awg(_), true) => 1.0,
        (Gauge::Awg(_), false) => LAY,
        (Gauge::Mm2(_), true) => NOMINAL[0],
        (Gauge::Mm2(_), false) => NOMINAL[1],
    };
    make * RESISTIVITY * (1.0 + RISE * (copper_c - 20.0)) / (area_mm2(gauge) * 1e-6)
}
