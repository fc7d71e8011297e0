//! The least difference that an eye adapted to a luminance tells, of a thing large enough.

use super::DARKEST;

/// Least difference in luminance, cd/m², on an adaptation of `luminance` cd/m², in five pieces from rods to cones.
///
/// J. Ferwerda et al., "A model of visual adaptation for realistic image synthesis", SIGGRAPH 1996, joined into one curve by
/// G. Ward Larson, H. Rushmeier and C. Piatko (1997).
pub fn adapted_threshold(luminance: f64) -> f64 {
    let l = luminance.max(DARKEST).log10();
    let power = if l < -3.94 {
        -2.86
    } else if l < -1.44 {
        (0.405 * l + 1.6).powf(2.18) - 2.86
    } else if l < -0.0184 {
        l - 0.395
    } else if l < 1.9 {
        (0.249 * l + 0.65).powf(2.7) - 0.72
    } else {
        l - 1.255
    };
    10_f64.powf(power)
}
