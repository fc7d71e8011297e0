//! How a lamp spreads its light.

use glam::Vec3;
use std::f64::consts::{LN_2, PI, TAU};

/// Samples of one plane of [`Spread::table`].
pub const SPREAD_STEPS: usize = 1024;

/// Samples of each half of a plane [`Over::Angle`].
const HALF: usize = SPREAD_STEPS / 2;

/// Nearer to 0 than any cosine that matters: which half a sample square to the axis belongs to.
const SQUARE: f64 = 1e-12;

/// The kinds of lamp, each symmetric about its axis. Beam angles are kept between 1° and 179°.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lamp {
    /// A bare globe: the same in all directions.
    Globe,
    /// A flat glowing face: cos θ, nothing behind.
    Lambert,
    /// A lamp in a hood: even within, with a soft edge at the half-peak angle, `2^−(2θ/beam)⁴`; nothing behind.
    Hood {
        /// Full angle, in radians, between the two directions at half the peak intensity.
        beam: f32,
    },
    /// A reflector lamp: `cosⁿ θ` with `n` such that intensity is half at the half-peak angle; nothing behind.
    Flood {
        /// Full angle, in radians, between the two directions at half the peak intensity.
        beam: f32,
    },
}

/// What the samples of a plane are equally spaced over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Over {
    /// cos θ = −1…1.
    ///
    /// A step near the axis is 3.6° wide, so a beam much narrower than 10° is drawn a little wider; its lumens stay
    /// right.
    Cosine,
    /// In two halves, each from its pole to square to the axis: √(1 − cos θ) = 0…1 before the lamp, then √(1 + cos θ) =
    /// 0…1 behind it. A step is 0.16° near the poles and 0.22° near the plane between, where intensity may leap: √(1 − cos θ)
    /// = √2 sin θ/2.
    Angle,
}

/// Luminous intensity per lumen, cd/lm, over the direction from the lamp.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// [`SPREAD_STEPS`] samples for each plane, read by linear interpolation; as interpolated they integrate to exactly 1
    /// over the sphere.
    pub table: Vec<f32>,
    /// Half planes that begin at the axis, equally spaced around it from the lamp's side; 1 for a lamp that is symmetric.
    pub planes: usize,
    /// How the samples of a plane are spaced.
    pub over: Over,
}

impl Spread {
    /// Tabulates a kind of lamp.
    pub fn new(lamp: Lamp) -> Self {
        Self::of(|cos| match lamp {
            Lamp::Globe => 1.0,
            Lamp::Lambert => cos.max(0.0),
            Lamp::Hood { beam } if cos > 0.0 => (-LN_2 * (cos.acos() / half_peak(beam)).powi(4)).exp(),
            Lamp::Flood { beam } if cos > 0.0 => cos.powf(-LN_2 / half_peak(beam).cos().ln()),
            Lamp::Hood { .. } | Lamp::Flood { .. } => 0.0,
        })
    }

    /// Tabulates pairs of an angle from the axis, degrees, and an intensity, with straight lines over the angle between them and
    /// nothing outside; the angles rise by 1° at least, and the scale of the intensities does not matter.
    pub fn table(pairs: &[(f64, f64)]) -> Self {
        Self::around(1, |cos, _| {
            let angle = cos.acos().to_degrees();
            let line = pairs.windows(2).find(|pair| (pair[0].0..=pair[1].0).contains(&angle));
            line.map_or(0.0, |pair| {
                let ((from, first), (to, last)) = (pair[0], pair[1]);
                first + (last - first) * (angle - from) / (to - from)
            })
        })
    }

    /// Tabulates any law of cos θ, positive somewhere; its scale does not matter.
    pub fn of(law: impl Fn(f64) -> f64) -> Self {
        let last = SPREAD_STEPS - 1;
        let step = 2.0 / last as f64;
        let raw: Vec<f64> = (0..SPREAD_STEPS).map(|k| law(k as f64 * step - 1.0)).collect();
        // 2π ∫ f dcos, by trapezia: exact for straight lines between samples.
        let flux = 2.0 * PI * step * (raw.iter().sum::<f64>() - 0.5 * (raw[0] + raw[last]));
        let table = raw.iter().map(|value| (value / flux) as f32).collect();
        Self { table, planes: 1, over: Over::Cosine }
    }

    /// Tabulates any law of cos θ and the azimuth, rad, positive somewhere, in so many planes over the angle; its scale does
    /// not matter. The law is asked on both sides of the plane square to the axis.
    pub fn around(planes: usize, law: impl Fn(f64, f64) -> f64) -> Self {
        let planes = planes.max(1);
        let step = 1.0 / (HALF - 1) as f64;
        let mut raw = Vec::with_capacity(planes * SPREAD_STEPS);
        let mut flux = 0.0;
        for plane in 0..planes {
            let azimuth = plane as f64 * TAU / planes as f64;
            for sign in [1.0, -1.0] {
                for k in 0..HALF {
                    let root = k as f64 * step;
                    let value = law(sign * (1.0 - root * root).max(SQUARE), azimuth);
                    // dΩ = 2 x dx dφ: each straight line between samples shares its x among both ends; φ by trapezia.
                    let below = if k > 0 { step * (root - step / 3.0) } else { 0.0 };
                    let above = if k + 1 < HALF { step * (root + step / 3.0) } else { 0.0 };
                    flux += value * (below + above) * TAU / planes as f64;
                    raw.push(value);
                }
            }
        }
        let table = raw.iter().map(|value| (value / flux) as f32).collect();
        Self { table, planes, over: Over::Angle }
    }

    /// Intensity in cd per lm along a unit vector from the lamp, whose axis and side are unit vectors square to each other;
    /// the azimuth runs from the side towards side × axis.
    #[inline]
    pub fn toward(&self, along: Vec3, axis: Vec3, side: Vec3) -> f32 {
        let cos = along.dot(axis);
        if self.over == Over::Cosine {
            return self.sample(cos);
        }
        let (pole, half) = if cos < 0.0 { (-axis, HALF) } else { (axis, 0) };
        // |a − b|² = 2 (1 − cos θ), without the rounding of a cosine near 1.
        let x = ((along - pole).length() * std::f32::consts::FRAC_1_SQRT_2).min(1.0) * (HALF - 1) as f32;
        let step = (x as usize).min(HALF - 2);
        let share = x - step as f32;
        let aside = [along.dot(side), along.dot(side.cross(axis))];
        // On the axis every azimuth is as good.
        let turn = if aside[0].abs().max(aside[1].abs()) < 1e-6 { 0.0 } else { aside[1].atan2(aside[0]) };
        let turn = turn * (1.0 / std::f32::consts::TAU);
        let around = (turn - turn.floor()) * self.planes as f32;
        let plane = (around as usize).min(self.planes - 1);
        let next = if plane + 1 == self.planes { 0 } else { plane + 1 };
        let row = |plane: usize| {
            let at = plane * SPREAD_STEPS + half + step;
            self.table[at] + (self.table[at + 1] - self.table[at]) * share
        };
        let first = row(plane);
        first + (row(next) - first) * (around - plane as f32)
    }

    /// Intensity in cd per lm at cos θ from the axis, clamped to −1…1, of a lamp over the cosine.
    pub fn sample(&self, cos: f32) -> f32 {
        let x = (cos.clamp(-1.0, 1.0) + 1.0) * 0.5 * (SPREAD_STEPS - 1) as f32;
        let step = (x as usize).min(SPREAD_STEPS - 2);
        self.table[step] + (self.table[step + 1] - self.table[step]) * (x - step as f32)
    }
}

/// Half the full beam angle.
fn half_peak(beam: f32) -> f64 {
    0.5 * f64::from(beam).clamp(1_f64.to_radians(), 179_f64.to_radians())
}
