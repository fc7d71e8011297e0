//! The veil that bright things beside the line of sight draw over it inside the eye.

/// Oldest eye that the age term is read for, years.
const OLDEST: f64 = 100.0;

/// Luminance of the veil, cd/m², for each lx at the eye (square to the line of sight) from a bright thing `degrees` beside
/// it, to an eye of `age` years:
///
/// * from 1° to 30°, and onwards to 90° for want of better, `10 (1 + (age/70)⁴) / θ²`;
/// * below 1° the small-angle form `10/θ³ + 5 (1 + (age/62.5)⁴) / θ²`, or the above where that is more (it is at great age);
///   below 0.1° as at 0.1°;
/// * nothing from behind: beyond 90°.
///
/// CIE 146:2002 (J. Vos 2003). The power of 4 and the small-angle form are from memory; the standard's general form for wider
/// angles has further terms for the colour of the eye, left out here.
pub fn veil(degrees: f64, age: f64) -> f64 {
    let age = age.clamp(0.0, OLDEST);
    if degrees >= 90.0 {
        return 0.0;
    }
    let theta = degrees.max(0.1);
    let wide = 10.0 * (1.0 + (age / 70.0).powi(4)) / theta.powi(2);
    if theta >= 1.0 {
        return wide;
    }
    wide.max(10.0 / theta.powi(3) + 5.0 * (1.0 + (age / 62.5).powi(4)) / theta.powi(2))
}
