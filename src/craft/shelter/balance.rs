//! The temperature at which as much heat leaves a box as comes in.

use super::{
    air::{self, HEAT_CAPACITY},
    draught,
    ease::Ease,
    walls,
};
use crate::scene::Shelter;

/// Halvings of the range that the answer lies in: far below a thousandth of a kelvin.
const HALVINGS: u32 = 60;

/// The air around a box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outdoors {
    /// Its temperature, °C.
    pub celsius: f64,
    /// Its pressure, Pa.
    pub pressure: f64,
}

impl Outdoors {
    /// Its density, kg/m³.
    pub fn density(self) -> f64 {
        air::density(self.pressure, self.celsius)
    }
}

/// Air through a box that is so many kelvin warmer inside, m³/s.
pub fn flow(shelter: &Shelter, fan_runs: bool, outdoors: Outdoors, rise: f64, ease: Ease) -> f64 {
    let runs = shelter.fan.as_ref().filter(|_| fan_runs);
    let resistance = draught::resistance(shelter, runs.is_some(), ease);
    match runs {
        Some(fan) => draught::delivered(fan, resistance, outdoors.density()),
        None => draught::stack(shelter, resistance, outdoors.celsius + rise, rise),
    }
}

/// How much warmer it is inside than outside, K: where `(U A + ρ cp Q) ΔT = W`.
pub fn rise(shelter: &Shelter, watts: f64, fan_runs: bool, outdoors: Outdoors, ease: Ease) -> f64 {
    let loss = walls::loss(shelter, ease);
    let leaves = |rise: f64| {
        let carried = outdoors.density() * HEAT_CAPACITY * flow(shelter, fan_runs, outdoors, rise, ease);
        (loss + carried) * rise
    };
    // More heat leaves the warmer it is, and by the walls alone no less than this.
    let (mut low, mut high) = (0.0, watts.max(0.0) / loss);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        *(if leaves(middle) < watts { &mut low } else { &mut high }) = middle;
    }
    0.5 * (low + high)
}
