//! Acuity (Shlaer's measurements as fitted in Ward Larson, Rushmeier & Piatko 1997) against other eyes.

use super::close;
use gauzelight::light::eye::acuity;

/// Ikeda, Noda & Yamaguchi, Landolt rings of full contrast: `VA = L / (1.6293 C^−0.3234 (0.8034 C^−0.1876 + L^0.25)⁴)`, C in
/// percent. Another fit to other eyes; a grating of 30 cycles to the degree is an acuity of 1.
#[test]
fn landolt_rings() {
    for (luminance, published) in [(0.01, 0.148), (0.1, 0.413), (1.0, 0.848), (10.0, 1.355), (100.0, 1.812)] {
        close(acuity(luminance) / 30.0, published, 0.25);
    }
}
