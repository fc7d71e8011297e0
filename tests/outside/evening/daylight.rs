//! Level ground under sun, moon and stars.

use super::about;
use gauzelight::light::ambient::daylight::{air_mass, clear_sun_lx, full_moon_lx, nearness, phase_share};

/// What the twilights begin and end with by the glossary of the American Meteorological Society: civil from 585 to 410 lx down to 3.5
/// to 2 lx, astronomical from 0.008 to 6·10⁻⁴ lx.
#[test]
fn twilights_begin_and_end_as_a_glossary_says() {
    assert!((410.0..=585.0).contains(&clear_sun_lx(-0.8333)));
    assert!((2.0..=3.5).contains(&clear_sun_lx(-6.0)));
    about(clear_sun_lx(-12.0), 0.008, 0.1);
    about(clear_sun_lx(-18.0), 6e-4, 0.1);
}

/// "Only about 11 % of full" for a half moon: memim.com/moonlight.html. The terms of phase and distance are from memory; this is what
/// holds them.
#[test]
fn a_half_moon_gives_a_ninth() {
    about(phase_share(90.0), 0.119, 0.1);
    about(phase_share(90.0), 0.11, 0.1);
    assert_eq!(phase_share(0.0), 1.0);
}

/// The brightest moon, near the Earth (parallax 61.5′) and overhead, gives 0.32 lx; a usual full moon of temperate winters 0.05 to 0.1 lx and
/// more with height: Kyba, Mohar and Posch 2017, Astronomy & Geophysics 58:1.31.
#[test]
fn moonlight_keeps_its_range() {
    about(full_moon_lx(90.0) * nearness(61.5 / 60.0), 0.32, 0.05);
    assert!((0.05..=0.1).contains(&full_moon_lx(20.0)) && (0.05..=0.1).contains(&full_moon_lx(30.0)));
}

/// Air mass by Kasten and Young 1989: 1 overhead, 1.995 at 30°, 38 at the horizon (from memory of their table).
#[test]
fn air_grows_towards_the_horizon() {
    about(air_mass(90.0), 1.0, 0.001);
    about(air_mass(30.0), 1.994, 0.001);
    about(air_mass(0.0), 37.92, 0.003);
}

/// Level ground by a clear day, sky and sun together, by the IES calculation procedures for daylight availability (1984; from memory):
/// from 10° up the almanac's total, which knows nothing of them, is met within a factor of 1.5. How much of it comes straight is the
/// share of those very laws, which nothing here checks.
#[test]
fn a_clear_day_is_that_of_the_ies() {
    for (height, ies_lx) in
        [(10.0, 14_136.0), (20.0, 33_660.0), (30.0, 53_861.0), (45.0, 81_111.0), (60.0, 102_219.0), (80.0, 118_038.0)]
    {
        let found = clear_sun_lx(height);
        assert!((ies_lx / 1.5..=ies_lx * 1.5).contains(&found), "{height}°: {found} lx against {ies_lx}");
    }
}
