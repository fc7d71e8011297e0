//! Air through a box: what its openings leave of a fan, and what rises by itself where there is none.
//!
//! Every opening resists by `Δp = ½ ρ ζ (Q / A)²`. A fan holds `p₀` with its way shut and moves `Q₀` with nothing in its way;
//! between the two its curve is taken as straight, `p = p₀ (1 − Q / Q₀)`, and air flows where both meet.

use super::{
    air::{self, GRAVITY, ZERO_C},
    ease::Ease,
};
use crate::scene::{Fan, Shelter};

/// Share of the area of a sharp-edged hole that its stream fills: the discharge coefficient of orifices.
const JET: f64 = 0.61;
/// What a grille or louvre adds to ζ, and a dust filter; so chosen that both halve a small fan. Common practice, no source.
const GRILLE: f64 = 1.5;
const FILTER: f64 = 5.0;
/// Solidity of insect mesh; invented, typical.
const MESH: f64 = 0.4;
/// What is not known of ζ.
const DOUBT: [f64; 3] = [0.6, 1.0, 1.6];
/// Of the height inside, what lies between the middle of the inlet and that of the outlet; invented, typical.
const STACK: f64 = 0.7;

/// Loss coefficient of a woven screen by its solidity: `(s / (1 − s))² + s`, as Hoerner has it; from memory.
pub fn screen(solidity: f64) -> f64 {
    (solidity / (1.0 - solidity)).powi(2) + solidity
}

/// Openings in one line: `Σ ζ / A²`, 1/m⁴. `None` where air has no way in or none out. A fan sits in the outlet, whose edge its
/// rating holds already.
pub fn resistance(shelter: &Shelter, fan_runs: bool, ease: Ease) -> Option<f64> {
    let (inlet, outlet) = (shelter.inlet_cm2 * 1e-4, shelter.outlet_cm2 * 1e-4);
    if inlet <= 0.0 || outlet <= 0.0 {
        return None;
    }
    let edge = 1.0 / (JET * JET);
    let mut before = 0.0;
    if shelter.grille {
        before += GRILLE;
    }
    if shelter.mesh {
        before += screen(MESH);
    }
    let filter = if shelter.filter { FILTER } else { 0.0 };
    let into = (edge + before + filter) / (inlet * inlet);
    let out = (if fan_runs { before } else { edge + before }) / (outlet * outlet);
    Some((into + out) * ease.of(DOUBT))
}

/// What openings leave of a fan in air of a density, m³/s.
pub fn delivered(fan: &Fan, resistance: Option<f64>, density: f64) -> f64 {
    let Some(resistance) = resistance else { return 0.0 };
    let free = fan.flow_m3_h.0 / 3600.0;
    let held = fan.pressure_pa.0 * density / air::RATED;
    let k = 0.5 * density * resistance;
    // The root of k Q² + (p₀/Q₀) Q − p₀ = 0, in the form that loses nothing where k is small.
    let slope = held / free;
    2.0 * held / (slope + (slope * slope + 4.0 * k * held).sqrt())
}

/// Free-air rating that a fan of the same pressure needs so that openings leave `wanted`, m³/s; `None` where no such fan gets that
/// much through.
pub fn rating(wanted: f64, pressure: f64, resistance: Option<f64>, density: f64) -> Option<f64> {
    let held = pressure * density / air::RATED;
    let left = 1.0 - 0.5 * density * resistance? * wanted * wanted / held;
    (left > 0.02).then(|| wanted / left)
}

/// What rises by itself, m³/s, when it is so many kelvin warmer inside: `√(2 g h ΔT / (T Σ ζ/A²))`, the stack effect of
/// handbooks.
pub fn stack(shelter: &Shelter, resistance: Option<f64>, inside_c: f64, rise: f64) -> f64 {
    let Some(resistance) = resistance else { return 0.0 };
    let height = STACK * shelter.height.0.m;
    (2.0 * GRAVITY * height * rise.max(0.0) / ((inside_c + ZERO_C) * resistance)).sqrt()
}
