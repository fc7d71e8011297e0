//! CIE 146:2002, by J. Vos 2003: the veil of a bright thing beside the line of sight.

use super::close;
use gauzelight::light::eye::veil;

#[test]
fn published_values() {
    close(veil(5.0, 25.0), 0.4065, 1e-3);
    close(veil(10.0, 25.0), 0.1016, 1e-3);
    close(0.5 * veil(3.0, 60.0), 0.8554, 1e-3);
    // Stiles and Holladay, without an age: 10 E / θ².
    close(veil(7.0, 0.0), 10.0 / 49.0, 1e-12);
}

/// The small-angle form is from memory: it is only held to fall with the angle and to grow with age, and not to end.
#[test]
fn it_falls_with_the_angle_and_grows_with_age() {
    for age in [5.0, 25.0, 60.0, 80.0, 100.0] {
        let at = |tenths: u32| veil(f64::from(tenths) / 20.0, age);
        assert!((0..1900).all(|step| at(step) >= at(step + 1)), "{age}");
        assert!((1..1799).all(|step| veil(f64::from(step) / 20.0, age + 1.0) > at(step) || age >= 100.0));
        assert!(veil(0.0, age).is_finite() && veil(90.0, age) == 0.0 && veil(170.0, age) == 0.0);
    }
}
