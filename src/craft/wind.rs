//! What the wind does to all that hangs and stands: pull on cloths and their ties, weight for hems and feet, second ties.
//!
//! These are rules of thumb from published coefficients, made for choosing ties and for knowing when to take things down.
//! They are no proof that anything holds; whatever could fall on somebody is for a licensed person.

mod cloth;
mod drag;
mod mounted;
mod page;
mod pressure;
mod standing;

pub use cloth::{ClothWind, PLUMB_DEG, STILL_AIR_M_S, UNEVEN, swing_deg};
pub use drag::{Drag, SOLID, kept_share, openness, solidity};
pub use mounted::{MountWind, needs_second_tie};
pub use pressure::{Beaufort, air_density, pressure, safe_side, speed};
pub use standing::{StandWind, stands};

use crate::{
    craft::shelter::air::GRAVITY,
    scene::{Catalogue, Yard, limits},
    units::border,
};
use serde::Serialize;

/// What the strongest gust of a yard does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WindReport {
    /// That gust, m/s.
    #[serde(serialize_with = "border::light")]
    pub gust_m_s: f64,
    /// The mean wind that it comes in.
    pub mean: Beaufort,
    /// Its pressure, Pa.
    #[serde(serialize_with = "border::light")]
    pub pressure_pa: f64,
    /// What ties and feet are held against.
    pub rules: Rules,
    /// Hanging cloths.
    pub cloths: Vec<ClothWind>,
    /// Forms, and stations on stands.
    pub standing: Vec<StandWind>,
    /// Stations on brackets, under beams and in trees.
    pub mounted: Vec<MountWind>,
}

impl WindReport {
    /// Of all that is brought out in a yard.
    pub fn of(yard: &Yard, catalogue: &Catalogue) -> Self {
        let climate = &yard.climate;
        let air = Air::of(yard);
        let rules = Rules::of(yard, catalogue);
        let shown = |name: &str| !yard.is_hidden(name);
        let cloths = yard.cloths.iter().filter(|cloth| shown(&cloth.name.0));
        Self {
            gust_m_s: climate.gust_m_s,
            mean: Beaufort::of_gust(climate.gust_m_s),
            pressure_pa: air.pressure_pa(),
            rules,
            cloths: cloths.map(|cloth| ClothWind::of(yard, catalogue, cloth, air, rules)).collect(),
            standing: stands(yard, air, rules),
            mounted: MountWind::all(yard, air, rules),
        }
    }
}

/// Rules of thumb that a yard may set for itself, as limits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Rules {
    /// Pull that a tie is taken to hold, N.
    #[serde(serialize_with = "border::light")]
    pub tie_bears_n: f64,
    /// What holds over what overturns, at least.
    #[serde(serialize_with = "border::light")]
    pub hold_factor: f64,
    /// What hangs higher than that hangs above heads, m.
    #[serde(serialize_with = "border::lengths")]
    pub above_heads_m: f64,
}

impl Rules {
    /// Of a yard. A test proves that the catalogue has every limit.
    pub fn of(yard: &Yard, catalogue: &Catalogue) -> Self {
        let limit = |name: &str| yard.limit(catalogue, name).map_or(f64::NAN, |limit| limit.value);
        Self {
            tie_bears_n: limit(limits::TIE_HOLDS),
            hold_factor: limit(limits::OVERTURNS),
            above_heads_m: limit(limits::ABOVE_HEADS),
        }
    }
}

/// The air of a yard in its strongest gust: as dense as in its coldest night.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Density, kg/m³.
    pub density: f64,
    /// The gust, m/s.
    pub gust_m_s: f64,
}

impl Air {
    /// Of a yard.
    pub fn of(yard: &Yard) -> Self {
        let climate = &yard.climate;
        Self { density: air_density(climate.coldest_c, climate.above_sea.m), gust_m_s: climate.gust_m_s }
    }

    /// Dynamic pressure of the gust, Pa.
    pub fn pressure_pa(self) -> f64 {
        pressure(self.density, self.gust_m_s)
    }
}
