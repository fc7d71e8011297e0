//! How fine an eye sees by how much light.

use super::DARKEST;

/// Finest grating of full contrast that an eye tells from grey, cycles to the degree, on a luminance of `luminance` cd/m²:
/// `17.25 atan(1.4 log₁₀ L + 0.35) + 25.72`.
///
/// A fit to Shlaer (1937) by G. Ward Larson, H. Rushmeier and C. Piatko, "A visibility matching tone reproduction operator",
/// IEEE Transactions on Visualization and Computer Graphics 3, 1997. It knows no age: for that there is no source here.
pub fn acuity(luminance: f64) -> f64 {
    17.25 * (1.4 * luminance.max(DARKEST).log10() + 0.35).atan() + 25.72
}

/// Width of the finest stroke that an eye tells apart, minutes of arc: half a cycle of [`acuity`].
pub fn finest(luminance: f64) -> f64 {
    30.0 / acuity(luminance)
}
