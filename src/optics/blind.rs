//! Roller blinds.

use std::f64::consts::FRAC_PI_2;

use super::energy::balance;
use super::{Curve, EnergyError, Rgb, Sheet};

/// A roller blind: flat, coated or tightly woven cloth, known by what it does to light that meets it square on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Blind {
    /// Share that goes straight on, τ_nn at normal incidence.
    pub through: Rgb,
    /// Share scattered to the far side, τ_nd at normal incidence.
    pub diffuse: Rgb,
    /// Share scattered back; the same at every angle.
    pub reflect: Rgb,
}

impl Blind {
    /// Tabulates the blind by the off-normal laws for roller blinds of ASHRAE 1311-RP (Kotey, Wright & Collins 2009).
    ///
    /// Both transmittances only fall with angle, so what holds at normal incidence holds everywhere.
    pub fn sheet(&self) -> Result<Sheet, EnergyError> {
        balance(self.reflect, self.diffuse, self.through)?;
        let normal = |channel: usize| (f64::from(self.through[channel]), f64::from(self.diffuse[channel]));
        let straight = |cos: f64, channel| straight(normal(channel).0, cos);
        let scattered = |cos: f64, channel| {
            let (through, diffuse) = normal(channel);
            // The fit for the total falls below that for the straight part in blinds that hardly scatter.
            (total(through + diffuse, through, cos) - self::straight(through, cos)).max(0.0)
        };
        Ok(Sheet::even(
            Curve::constant(self.reflect),
            Curve::of(|cos| [0, 1, 2].map(|channel| scattered(cos, channel))),
            Curve::of(|cos| [0, 1, 2].map(|channel| straight(cos, channel))),
        ))
    }
}

/// Straight transmittance at θ: `τ0 cos(90° θ/θ_c)^(0.6 c^0.3)`, `c = cos(90° τ0)`, 0 from the cut-off
/// `θ_c = 90° − 25° c` on.
fn straight(normal: f64, cos: f64) -> f64 {
    let c = (normal * FRAC_PI_2).cos();
    let cut_off = FRAC_PI_2 - 25_f64.to_radians() * c;
    let theta = cos.acos();
    if theta >= cut_off { 0.0 } else { normal * (FRAC_PI_2 * theta / cut_off).cos().powf(0.6 * c.powf(0.3)) }
}

/// Total transmittance at θ: `τ0 cos^e θ` with `e = 0.133 (τ_m + 0.003)^−0.467` up to `τ_m = 0.33` and `0.33 (1 − τ_m)`
/// above, `τ_m = (τ0 − τ_nn0)/(1 − τ_nn0)` being the material's own transmittance.
fn total(normal: f64, through: f64, cos: f64) -> f64 {
    let material = if through < 1.0 { (normal - through) / (1.0 - through) } else { 0.0 };
    let power = if material <= 0.33 { 0.133 * (material + 0.003).powf(-0.467) } else { 0.33 * (1.0 - material) };
    normal * cos.powf(power)
}
