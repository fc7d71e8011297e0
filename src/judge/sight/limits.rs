//! The limits of the words, as a yard has them.

use crate::scene::{Catalogue, Yard, limits};

/// The limits of the words.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// For each question, as they stand in [`super::Question::ALL`], the values from which a figure is faint, clear and strong.
    pub ladders: [[f64; 3]; 4],
    /// Angle beside the figure at which a rival counts by half, degrees.
    pub rival_half: f64,
    /// Angle beside the figure from which on a rival counts by its veil alone, degrees.
    pub rival_none: f64,
    /// Largest size at which a figure's light is asked for, minutes of arc.
    pub light_size: f64,
}

impl Limits {
    /// The yard's own first, then the catalogue's. One that neither has is out of reach.
    pub fn of(yard: &Yard, catalogue: &Catalogue) -> Self {
        let value = |name: &str| yard.limit(catalogue, name).map_or(f64::INFINITY, |limit| limit.value);
        Self {
            ladders: limits::LADDERS.map(|ladder| ladder.map(value)),
            rival_half: value(limits::RIVAL_HALF),
            rival_none: value(limits::RIVAL_NONE).clamp(0.1, 90.0),
            light_size: value(limits::LIGHT_SIZE),
        }
    }

    /// Share by which light so many degrees beside the figure counts as a rival: `(1 − (θ/θ₀)⁴) / (1 + (θ/θ½)²)`, nothing from θ₀ on.
    pub fn rival_share(&self, degrees: f64) -> f64 {
        (1.0 - (degrees / self.rival_none).powi(4)).max(0.0) / (1.0 + (degrees / self.rival_half).powi(2))
    }
}
