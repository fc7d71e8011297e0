//! The sums of a sighting, and what they come to under weights.

use super::{Limits, Sighting, Weights};
use crate::light::eye as laws;

/// Luminance and veil by source.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::judge) struct Sums {
    /// Mean of the figure, cd/m².
    pub figure: Vec<f64>,
    /// Mean of its brightest tenth, cd/m².
    pub white: Vec<f64>,
    /// Mean of the ground beside it, cd/m²; empty where there is none.
    pub ground: Vec<f64>,
    /// Mean of the field around, cd/m²; empty where the target fills it.
    pub field: Vec<f64>,
    /// The veil, cd/m².
    pub veil: Vec<f64>,
    /// The figure's own light at the eye, lx.
    pub figure_lx: f64,
}

/// Light from beside, by source and place.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Rivals {
    /// Source, lx at the eye, degrees from the figure; in the order of their sources.
    parts: Vec<(u32, f64, f64)>,
}

/// The strongest rival under some weights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strongest {
    pub source: u32,
    pub lx: f64,
    pub degrees: f64,
    /// Its light less what its angle takes, lx.
    pub counted: f64,
}

impl Rivals {
    pub fn of(parts: impl Iterator<Item = (u32, f64, f64)>) -> Self {
        // Behind the viewer nothing is in sight.
        let mut parts: Vec<_> = parts.filter(|(_, lx, degrees)| *lx > 0.0 && *degrees < 90.0).collect();
        parts.sort_by_key(|(source, ..)| *source);
        Self { parts }
    }

    /// The strongest under weights, where any shines.
    pub fn strongest(&self, weights: &Weights, half: f64) -> Option<Strongest> {
        let of_one = |parts: &[(u32, f64, f64)]| {
            let weight = weights.of(parts[0].0 as usize);
            let (mut lx, mut counted, mut turned) = (0.0, 0.0, 0.0);
            for (_, light, degrees) in parts {
                let share = light / (1.0 + (degrees / half).powi(2));
                lx += weight * light;
                counted += weight * share;
                turned += weight * share * degrees;
            }
            Strongest { source: parts[0].0, lx, counted, degrees: turned / counted.max(f64::MIN_POSITIVE) }
        };
        let each = self.parts.chunk_by(|a, b| a.0 == b.0).map(of_one);
        each.filter(|rival| rival.counted > 0.0).max_by(|a, b| a.counted.total_cmp(&b.counted))
    }
}

/// What a sighting comes to under weights, at one end of what is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    pub adaptation: f64,
    pub veil: f64,
    /// The answers to the questions, in their order.
    pub answers: [Option<f64>; 4],
}

impl Sighting {
    /// With the station's own light so many times what it typically is.
    pub(super) fn weighed(&self, weights: &Weights, limits: &Limits, own_factor: f64) -> Seen {
        self.weighed_by(&self.sums, weights, limits, own_factor)
    }

    /// The same by other sums than its own.
    pub(super) fn weighed_by(&self, sums: &Sums, weights: &Weights, limits: &Limits, own_factor: f64) -> Seen {
        let own = self.station as usize;
        let parted = |list: &[f64]| {
            let rest = |(i, light): (usize, &f64)| if i == own { 0.0 } else { weights.of(i) * light };
            let other: f64 = list.iter().enumerate().map(rest).sum();
            (own_factor * weights.of(own) * list.get(own).unwrap_or(&0.0), other)
        };
        let (figure, _) = parted(&sums.figure);
        // Where a picture leaves no ground on its target, what lies around the target is its ground.
        let beside = if sums.ground.is_empty() { &sums.field } else { &sums.ground };
        let (ground, ground_rest) = parted(beside);
        let veil = sums.veil.iter().enumerate().map(|(i, light)| weights.of(i) * light).sum::<f64>();
        let around = if sums.field.is_empty() { (ground, ground_rest) } else { parted(&sums.field) };
        let adaptation = around.0 + around.1 + veil;
        let task = laws::Task { age: Some(self.age), ..laws::Task::bright(self.stroke.min(limits.light_size)) };
        let visibility = (figure - ground).max(0.0) / laws::threshold(adaptation, task);
        let behind = ground + ground_rest + veil;
        let (white, white_rest) = parted(&sums.white);
        let stands_out = (behind > 0.0 && !beside.is_empty()).then(|| (white + white_rest + veil) / behind);
        let lx = own_factor * weights.of(own) * sums.figure_lx;
        let rival = self.rivals.strongest(weights, limits.rival_half);
        Seen {
            adaptation,
            veil,
            answers: [
                Some(visibility),
                // By its own light alone: more light on everything around makes no picture easier to read.
                Some(self.stroke / laws::finest(figure)),
                stands_out,
                rival.map(|rival| lx / rival.counted),
            ],
        }
    }
}
