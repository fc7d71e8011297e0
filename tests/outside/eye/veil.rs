//! CIE 146:2002, by J. Vos 2003: the veil of a bright thing beside the line of sight.

use super::close;
use gauzelight::light::eye::{driving_veil, veil};

/// The general equation at 25 years, p = 0.5, by hand.
#[test]
fn the_general_equation() {
    for (degrees, wanted) in [(1.0, 15.18), (5.0, 0.2966), (10.0, 0.0677), (30.0, 0.00903), (70.0, 0.00306)] {
        close(veil(degrees, 25.0), wanted, 2e-3);
    }
    // Below a tenth of a degree as there; nothing beyond a hundred.
    close(veil(0.1, 25.0), 10_514.0, 1e-3);
    assert_eq!(veil(0.0, 25.0), veil(0.1, 25.0));
    assert!(veil(100.0, 25.0) > 0.0 && veil(100.1, 25.0) == 0.0);
}

/// Stiles and Holladay by age, as road lighting reckons.
#[test]
fn a_driver_has_the_square() {
    close(driving_veil(5.0, 25.0), 0.4065, 1e-3);
    close(driving_veil(10.0, 25.0), 0.1016, 1e-3);
    close(0.5 * driving_veil(3.0, 60.0), 0.8554, 1e-3);
    close(driving_veil(7.0, 0.0), 10.0 / 49.0, 1e-12);
    assert!(driving_veil(90.0, 25.0) == 0.0 && driving_veil(0.0, 25.0).is_finite());
}

/// It falls with the angle and grows with age, without a step: no neighbouring angles differ by more than the power of three asks.
#[test]
fn it_falls_evenly() {
    for age in [5.0, 25.0, 60.0, 80.0, 100.0] {
        let at = |step: u32| veil(f64::from(step) / 20.0, age);
        assert!((0..1999).all(|step| at(step) >= at(step + 1)), "{age}");
        assert!(
            (2..1999).all(|step| at(step) / at(step + 1) <= (f64::from(step + 1) / f64::from(step)).powi(3)),
            "{age}"
        );
        assert!((1..1999).all(|step| veil(f64::from(step) / 20.0, age + 1.0) > at(step) || age >= 100.0));
    }
}
