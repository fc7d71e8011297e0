//! The veil that bright things beside the line of sight draw over it inside the eye.

/// Oldest eye that the age term is read for, years.
const OLDEST: f64 = 100.0;

/// Colour of the eye: 0 black, 0.5 brown, 1 blue, 1.2 pale.
const PIGMENT: f64 = 0.5;

/// Angles that the general equation holds for, degrees.
const NEAREST: f64 = 0.1;
const FARTHEST: f64 = 100.0;

/// Luminance of the veil, cd/m², for each lx at the eye (square to the line of sight) from a bright point `degrees` beside it,
/// to an eye of `age` years:
///
/// `10/θ³ + (5/θ² + 0.1 p/θ) (1 + (age/62.5)⁴) + 0.0025 p`, p = 0.5; below 0.1° as at 0.1°, nothing beyond 100°.
///
/// The general equation for disability glare of CIE 146:2002 (J. Vos 2003); its domain was seen, its coefficients are from memory.
pub fn veil(degrees: f64, age: f64) -> f64 {
    if degrees > FARTHEST {
        return 0.0;
    }
    let theta = degrees.max(NEAREST);
    let older = 1.0 + (age.clamp(0.0, OLDEST) / 62.5).powi(4);
    10.0 / theta.powi(3) + (5.0 / theta.powi(2) + 0.1 * PIGMENT / theta) * older + 0.0025 * PIGMENT
}

/// The same as the threshold increment of road lighting computes it: `10 (1 + (age/70)⁴) / θ²`, the age-adjusted equation of Stiles
/// and Holladay (CIE 146:2002; the power of 4 from memory). Below 0.1° as at 0.1°, nothing from 90° on.
pub fn driving_veil(degrees: f64, age: f64) -> f64 {
    if degrees >= 90.0 {
        return 0.0;
    }
    10.0 * (1.0 + (age.clamp(0.0, OLDEST) / 70.0).powi(4)) / degrees.max(NEAREST).powi(2)
}
