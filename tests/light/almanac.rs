//! Light of sun, twilight and moon by the almanac's polynomials, reckoned once more apart from the program.

use gauzelight::light::ambient::daylight::{STARS_LX, clear_sun_lx, full_moon_lx, phase_share};

/// Within a share; the polynomials jump by up to 1 % at their joints, so that 1.5 % covers either side.
#[track_caller]
fn about(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() <= share, "found {found}, wanted {wanted} ± {share} of it");
}

/// Seidelmann's polynomials (Explanatory Supplement to the Astronomical Almanac 1992; Urban and Seidelmann 2013).
#[test]
fn sun_and_twilight_are_the_almanac_s() {
    for (height, lx) in [
        (90.0, 128_825.0),
        (60.0, 103_118.0),
        (45.0, 77_849.0),
        (30.0, 46_297.0),
        (20.0, 27_376.0),
        (10.0, 11_121.0),
        (5.0, 4538.0),
        (0.0, 758.6),
        (-0.8, 462.4),
        (-1.0, 404.6),
        (-2.0, 189.4),
        (-3.0, 79.07),
        (-4.0, 29.93),
        (-5.0, 10.44),
        (-6.0, 3.412),
        (-7.0, 1.086),
        (-8.0, 0.3481),
        (-9.0, 0.1164),
        (-10.0, 0.042_11),
        (-12.0, 0.008_06),
        (-18.0, 0.000_645),
    ] {
        about(clear_sun_lx(height), lx, 0.015);
    }
    about(STARS_LX, 10f64.powf(-2.698_97), 0.001);
    assert_eq!(clear_sun_lx(-18.001), 0.0);
}

/// A full moon at its mean distance by the polynomials of the same book.
#[test]
fn the_full_moon_is_the_almanac_s() {
    for (height, lx) in [
        (90.0, 0.2692),
        (60.0, 0.2160),
        (45.0, 0.1641),
        (30.0, 0.0977),
        (20.0, 0.0575),
        (10.0, 0.0236),
        (5.0, 0.009_94),
        (0.0, 0.001_62),
    ] {
        about(full_moon_lx(height), lx, 0.015);
    }
    assert_eq!(full_moon_lx(-1.0), 0.0);
}

/// Moonlight by height and phase at once: the almanac's full moon by height times what a phase leaves, at a quarter of the lit disc and
/// more. The phases are those of the same book's term, reckoned apart: 0.5468, 0.2823 and 0.1187 at 30°, 60° and 90°.
#[test]
fn moonlight_goes_with_height_and_phase() {
    for (height, phase, lx) in [
        (90.0, 30.0, 0.1472),
        (60.0, 60.0, 0.0610),
        (45.0, 90.0, 0.019_5),
        (30.0, 30.0, 0.0534),
        (20.0, 60.0, 0.0162),
        (10.0, 90.0, 0.0028),
        (5.0, 60.0, 0.0028),
    ] {
        about(full_moon_lx(height) * phase_share(phase), lx, 0.02);
    }
}
