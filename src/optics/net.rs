//! Nets: tulle, bobbinet, insect screen.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

use super::energy::{balance, share};
use super::{Curve, EnergyError, Rgb, Sheet};

/// Bearings over which [`Net::sheet`] averages an eighth of a turn; the weave repeats by mirroring.
const BEARINGS: u32 = 256;

/// A square mesh of threads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Net {
    /// Thread-to-pitch ratio γ: thread thickness over the distance from thread to thread, 0 to 1.
    pub ratio: f32,
    /// Share of the light that meets a thread and is scattered back to its own side.
    pub reflect: Rgb,
    /// Share of the light that meets a thread and is scattered on to the far side; mostly 0.
    pub transmit: Rgb,
}

impl Net {
    /// Share of the area that is hole, seen square on: (1 − γ)².
    pub fn openness(&self) -> f32 {
        (1.0 - self.ratio).powi(2)
    }

    /// The angle from the normal, in radians, from which a line of sight across the threads is closed: acos γ.
    pub fn cut_off(&self) -> f32 {
        self.ratio.acos()
    }

    /// Tabulates the net, averaged over the bearing of its weave.
    ///
    /// Threads scatter what does not pass between them: ρ(θ) = ρ_thread (1 − τ_nn(θ)) and τ_nd(θ) = τ_thread (1 −
    /// τ_nn(θ)). So energy holds at every angle, and a net of threads that lose nothing loses nothing.
    pub fn sheet(&self) -> Result<Sheet, EnergyError> {
        share("thread-to-pitch ratio", self.ratio)?;
        balance(self.reflect, self.transmit, Rgb::ZERO)?;
        let ratio = f64::from(self.ratio);
        let through = Curve::of(|cos| [mean_transmittance(ratio, cos); 3]);
        let met = |share: Rgb| {
            Curve::from_samples(|step| [0, 1, 2].map(|c| f64::from(share[c]) * (1.0 - through.value(step, c))))
        };
        Ok(Sheet::even(met(self.reflect), met(self.transmit), through))
    }
}

/// Share of a beam that passes a square mesh of opaque threads straight, by geometry:
/// `(1 − γ/cos a)(1 − γ/cos b)` with `tan a = tan θ cos φ`, `tan b = tan θ sin φ`, each factor at least 0.
///
/// `ratio` is γ; `theta` the angle from the normal and `phi` the bearing against one set of threads, both in radians.
pub fn transmittance(ratio: f64, theta: f64, phi: f64) -> f64 {
    // 1/cos a = √(1 + tan² a)
    let factor = |tan: f64| (1.0 - ratio * 1.0_f64.hypot(tan)).max(0.0);
    factor(theta.tan() * phi.cos()) * factor(theta.tan() * phi.sin())
}

fn mean_transmittance(ratio: f64, cos: f64) -> f64 {
    let theta = cos.acos().min(FRAC_PI_2);
    let bearing = |k: u32| FRAC_PI_4 * (f64::from(k) + 0.5) / f64::from(BEARINGS);
    (0..BEARINGS).map(|k| transmittance(ratio, theta, bearing(k))).sum::<f64>() / f64::from(BEARINGS)
}
