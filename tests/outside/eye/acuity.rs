//! Acuity and adaptation after Ferwerda et al. 1996 and Ward Larson, Rushmeier & Piatko 1997: values computed once from the
//! published pieces apart from this code.

use super::close;
use gauzelight::light::eye::{acuity, adapted_threshold, finest};

/// Luminance, threshold, cycles to the degree.
const TABLE: [(f64, f64, f64); 7] = [
    (0.001, 0.001840, 3.007),
    (0.01, 0.005472, 5.309),
    (0.1, 0.04027, 11.751),
    (1.0, 0.3913, 31.528),
    (10.0, 1.072, 43.861),
    (48.0, 2.994, 46.705),
    (100.0, 5.559, 47.514),
];

#[test]
fn the_published_pieces() {
    for (luminance, threshold, cycles) in TABLE {
        close(adapted_threshold(luminance), threshold, 1e-3);
        close(acuity(luminance), cycles, 1e-3);
        close(finest(luminance), 30.0 / cycles, 1e-3);
    }
}

#[test]
fn both_grow_with_light_and_nothing_is_asked_of_the_dark() {
    let at = |step: i32| 10_f64.powf(f64::from(step) / 20.0);
    for step in -140..60 {
        assert!(acuity(at(step)) <= acuity(at(step + 1)));
        assert!(adapted_threshold(at(step)) <= 1.01 * adapted_threshold(at(step + 1)), "{}", at(step));
    }
    assert!(acuity(0.0) > 0.0 && finest(0.0).is_finite() && adapted_threshold(0.0) > 0.0);
}

/// Ikeda, Noda & Yamaguchi, Landolt rings of full contrast: `VA = L / (1.6293 C^−0.3234 (0.8034 C^−0.1876 + L^0.25)⁴)`, C in
/// percent. Another fit to other eyes; a grating of 30 cycles to the degree is an acuity of 1.
#[test]
fn landolt_rings() {
    let rings = |l: f64| {
        let c = 100_f64;
        l / (1.6293 * c.powf(-0.3234) * (0.8034 * c.powf(-0.1876) + l.powf(0.25)).powi(4))
    };
    for (luminance, published) in [(0.01, 0.148), (0.1, 0.413), (1.0, 0.848), (10.0, 1.355), (100.0, 1.812)] {
        close(rings(luminance), published, 5e-3);
        close(acuity(luminance) / 30.0, published, 0.25);
    }
}
