//! The glow of towns and the share of a clear day that comes straight, by this program's own formulas reckoned once more.

use crate::lab::close;
use gauzelight::{
    light::ambient::{
        daylight::{clear_sun_lx, straight_share},
        town::glow_lx,
    },
    scene::Setting,
};

/// What the stated definition comes to, by a pocket calculator: 1.5 π L of a clear sky, 3 to 10 times under closed cloud.
#[test]
fn a_setting_has_its_glow() {
    for (setting, lx) in [
        (Setting::CountryLane, 1.537e-3),
        (Setting::Suburb, 8.066e-3),
        (Setting::Town, 0.020_26),
        (Setting::City, 0.050_89),
    ] {
        close(glow_lx(setting, 0.0), lx, 0.001);
        let overcast = glow_lx(setting, 1.0) / glow_lx(setting, 0.0);
        assert!((3.0..=10.0).contains(&overcast), "{overcast}");
        close(glow_lx(setting, 0.5), 0.5 * (glow_lx(setting, 0.0) + glow_lx(setting, 1.0)), 1e-9);
    }
}

/// Of a clear day the sky's part and the sun's, level ground, by the IES calculation procedures for daylight availability (1984; from
/// memory), typed once more: the program shares the almanac's total as these do, so that each is met as well as the total is.
#[test]
fn a_clear_day_is_shared_as_by_the_ies() {
    for (height, sky_lx, sun_lx) in [
        (10.0, 7259.0, 6877.0),
        (20.0, 9865.0, 23_795.0),
        (30.0, 11_760.0, 42_101.0),
        (45.0, 13_834.0, 67_277.0),
        (60.0, 15_224.0, 86_995.0),
        (80.0, 16_182.0, 101_856.0),
    ] {
        close(straight_share(height), sun_lx / (sun_lx + sky_lx), 1e-2);
        assert!(clear_sun_lx(height) * straight_share(height) < clear_sun_lx(height));
    }
    assert_eq!(straight_share(0.0), 0.0);
    assert_eq!(straight_share(-3.0), 0.0);
}
