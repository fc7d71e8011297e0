//! How a lamp spreads its light.

use std::f64::consts::{LN_2, PI};

/// Samples of [`Spread::table`].
pub const SPREAD_STEPS: usize = 256;

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

/// Luminous intensity per lumen, cd/lm, over the angle from the lamp's axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// [`SPREAD_STEPS`] samples equally spaced over cos θ = −1…1, read by linear interpolation; as interpolated they
    /// integrate to exactly 1 over the sphere.
    ///
    /// A step near the axis is 7° wide, so a beam much narrower than 20° is drawn a little wider; its lumens stay
    /// right.
    pub table: Vec<f32>,
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

    /// Tabulates any law of cos θ, positive somewhere; its scale does not matter.
    pub fn of(law: impl Fn(f64) -> f64) -> Self {
        let last = SPREAD_STEPS - 1;
        let step = 2.0 / last as f64;
        let raw: Vec<f64> = (0..SPREAD_STEPS).map(|k| law(k as f64 * step - 1.0)).collect();
        // 2π ∫ f dcos, by trapezia: exact for straight lines between samples.
        let flux = 2.0 * PI * step * (raw.iter().sum::<f64>() - 0.5 * (raw[0] + raw[last]));
        Self { table: raw.iter().map(|value| (value / flux) as f32).collect() }
    }

    /// Intensity in cd per lm at cos θ from the axis, clamped to −1…1.
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
