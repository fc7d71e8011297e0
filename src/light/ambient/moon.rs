//! Where the moon stands and how much of it is lit.
//!
//! The first terms of the series of Meeus, "Astronomical Algorithms" (2nd edition 1998), chapter 47, which shortens Chapront's ELP-2000/82, with
//! parallax on an oblate Earth (chapters 11 and 40) and the phase of chapter 48. Written out here because the crates that were found are
//! unkept, unfinished or under a licence that this project cannot take. `tests/outside` holds it against a general library: within
//! 0.02°.

use super::sun::{SunPlace, direction, julian_day, time_lag};
use crate::scene::When;
use glam::{DMat3, DVec3};
use jiff::Timestamp;

/// Where the moon's middle stands, and how it is lit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MoonPlace {
    /// Compass bearing, degrees from north by east.
    pub bearing_deg: f64,
    /// Height above the horizon, degrees, from the ground; refraction is not counted.
    pub height_deg: f64,
    /// Height above the horizon as it is seen through standard air, degrees; well below the horizon the same.
    pub seen_height_deg: f64,
    /// Angle at the moon between sun and eye, degrees: 0 full, 180 new. Eclipses are not counted.
    pub phase_angle_deg: f64,
    /// Angle that the Earth's radius fills as seen from the moon, degrees; 0.951 at its mean distance.
    pub parallax_deg: f64,
    /// Distance from the middle of the Earth, km.
    pub distance_km: f64,
}

impl MoonPlace {
    /// Share of the disc that is lit, 0 to 1.
    pub fn lit(&self) -> f64 {
        0.5 + 0.5 * self.phase_angle_deg.to_radians().cos()
    }
}

const EARTH_RADIUS_KM: f64 = 6378.14;
const SUN_DISTANCE_KM: f64 = 149_597_870.7;

/// Multiples of D, M, M′ and F, and what a term adds: to the longitude, 10⁻⁶ degrees (sine), and to the distance, m (cosine).
const ALONG: [([i8; 4], f64, f64); 34] = [
    ([0, 0, 1, 0], 6_288_774.0, -20_905_355.0),
    ([2, 0, -1, 0], 1_274_027.0, -3_699_111.0),
    ([2, 0, 0, 0], 658_314.0, -2_955_968.0),
    ([0, 0, 2, 0], 213_618.0, -569_925.0),
    ([0, 1, 0, 0], -185_116.0, 48_888.0),
    ([0, 0, 0, 2], -114_332.0, -3149.0),
    ([2, 0, -2, 0], 58_793.0, 246_158.0),
    ([2, -1, -1, 0], 57_066.0, -152_138.0),
    ([2, 0, 1, 0], 53_322.0, -170_733.0),
    ([2, -1, 0, 0], 45_758.0, -204_586.0),
    ([0, 1, -1, 0], -40_923.0, -129_620.0),
    ([1, 0, 0, 0], -34_720.0, 108_743.0),
    ([0, 1, 1, 0], -30_383.0, 104_755.0),
    ([2, 0, 0, -2], 15_327.0, 10_321.0),
    ([0, 0, 1, 2], -12_528.0, 0.0),
    ([0, 0, 1, -2], 10_980.0, 79_661.0),
    ([4, 0, -1, 0], 10_675.0, -34_782.0),
    ([0, 0, 3, 0], 10_034.0, -23_210.0),
    ([4, 0, -2, 0], 8548.0, -21_636.0),
    ([2, 1, -1, 0], -7888.0, 24_208.0),
    ([2, 1, 0, 0], -6766.0, 30_824.0),
    ([1, 0, -1, 0], -5163.0, -8379.0),
    ([1, 1, 0, 0], 4987.0, -16_675.0),
    ([2, -1, 1, 0], 4036.0, -12_831.0),
    ([2, 0, 2, 0], 3994.0, -10_445.0),
    ([4, 0, 0, 0], 3861.0, -11_650.0),
    ([2, 0, -3, 0], 3665.0, 14_403.0),
    ([0, 1, -2, 0], -2689.0, -7003.0),
    ([2, 0, -1, 2], -2602.0, 0.0),
    ([2, -1, -2, 0], 2390.0, 10_056.0),
    ([1, 0, 1, 0], -2348.0, 6322.0),
    ([2, -2, 0, 0], 2236.0, -9884.0),
    ([0, 1, 2, 0], -2120.0, 5751.0),
    ([2, -2, -1, 0], 2048.0, -4950.0),
];

/// Multiples of D, M, M′ and F, and what a term adds to the latitude, 10⁻⁶ degrees (sine).
const ACROSS: [([i8; 4], f64); 20] = [
    ([0, 0, 0, 1], 5_128_122.0),
    ([0, 0, 1, 1], 280_602.0),
    ([0, 0, 1, -1], 277_693.0),
    ([2, 0, 0, -1], 173_237.0),
    ([2, 0, -1, 1], 55_413.0),
    ([2, 0, -1, -1], 46_271.0),
    ([2, 0, 0, 1], 32_573.0),
    ([0, 0, 2, 1], 17_198.0),
    ([2, 0, 1, -1], 9266.0),
    ([0, 0, 2, -1], 8822.0),
    ([2, -1, 0, -1], 8216.0),
    ([2, 0, -2, -1], 4324.0),
    ([2, 0, 1, 1], 4200.0),
    ([2, 1, 0, -1], -3359.0),
    ([2, -1, -1, 1], 2463.0),
    ([2, -1, 0, 1], 2211.0),
    ([2, -1, -1, -1], 2065.0),
    ([0, 1, -1, -1], -1870.0),
    ([4, 0, -1, -1], 1828.0),
    ([0, 1, 0, 1], -1794.0),
];

/// Where the moon stands at an instant, with the sun there.
pub fn place(when: &When, instant: Timestamp, sun: &SunPlace) -> MoonPlace {
    let day = julian_day(instant);
    let moon_km = from_earth(day + time_lag(day) / 86_400.0);
    let distance_km = moon_km.length();
    let eye = moon_km - stand(when, day);
    let seen = horizon_from_equator(when, day) * eye;
    let bearing_deg = seen.y.atan2(seen.x).to_degrees().rem_euclid(360.0);
    let height_deg = (seen.z / seen.length()).asin().to_degrees();
    // Meeus, formula 48.3, with the sun at its mean distance.
    let apart = direction(sun.bearing_deg, sun.height_deg).angle_between(seen);
    let phase = (SUN_DISTANCE_KM * apart.sin()).atan2(seen.length() - SUN_DISTANCE_KM * apart.cos());
    MoonPlace {
        bearing_deg,
        height_deg,
        seen_height_deg: height_deg + lifted_deg(height_deg),
        phase_angle_deg: phase.to_degrees(),
        parallax_deg: (EARTH_RADIUS_KM / distance_km).asin().to_degrees(),
        distance_km,
    }
}

/// How far air lifts what stands at a height, degrees: `1.02′ / tan(h + 10.3 / (h + 5.11))` (Sæmundsson 1986; Meeus, formula 16.4),
/// nothing where it stays below the horizon all the same.
fn lifted_deg(height_deg: f64) -> f64 {
    if height_deg < -0.8 {
        return 0.0;
    }
    (1.02 / (height_deg + 10.3 / (height_deg + 5.11)).to_radians().tan() / 60.0).max(0.0)
}

/// The moon from the middle of the Earth, km, in the equator's axes of date; `day` is a Julian day of terrestrial time.
fn from_earth(day: f64) -> DVec3 {
    let t = centuries(day);
    let angle = |degrees: f64| degrees.rem_euclid(360.0).to_radians();
    let mean = angle(218.316_447_7 + 481_267.881_234_21 * t - 0.001_578_6 * t * t);
    let elongation = angle(297.850_192_1 + 445_267.111_403_4 * t - 0.001_881_9 * t * t);
    let sun = angle(357.529_109_2 + 35_999.050_290_9 * t - 0.000_153_6 * t * t);
    let anomaly = angle(134.963_396_4 + 477_198.867_505_5 * t + 0.008_741_4 * t * t);
    let node = angle(93.272_095_0 + 483_202.017_523_3 * t - 0.003_653_9 * t * t);
    // The Earth's way round the sun grows rounder.
    let rounder = 1.0 - 0.002_516 * t - 0.000_007_4 * t * t;
    let term = |multiples: [i8; 4]| {
        let [d, m, a, f] = multiples.map(f64::from);
        (d * elongation + m * sun + a * anomaly + f * node, rounder.powi(i32::from(multiples[1]).abs()))
    };
    // What Venus, Jupiter and the Earth's flatness add.
    let [venus, jupiter, third] = [119.75 + 131.849 * t, 53.09 + 479_264.290 * t, 313.45 + 481_266.484 * t].map(angle);
    let mut longitude = 3958.0 * venus.sin() + 1962.0 * (mean - node).sin() + 318.0 * jupiter.sin();
    let mut distance_m = 385_000_560.0;
    for (multiples, along, away) in ALONG {
        let (argument, factor) = term(multiples);
        longitude += along * factor * argument.sin();
        distance_m += away * factor * argument.cos();
    }
    let mut latitude = -2235.0 * mean.sin()
        + 382.0 * third.sin()
        + 175.0 * ((venus - node).sin() + (venus + node).sin())
        + 127.0 * (mean - anomaly).sin()
        - 115.0 * (mean + anomaly).sin();
    for (multiples, across) in ACROSS {
        let (argument, factor) = term(multiples);
        latitude += across * factor * argument.sin();
    }
    let (longitude, latitude) = (mean + (longitude * 1e-6).to_radians(), (latitude * 1e-6).to_radians());
    let ecliptic = DVec3::new(longitude.cos() * latitude.cos(), longitude.sin() * latitude.cos(), latitude.sin());
    DMat3::from_rotation_x(obliquity(t)) * (distance_m / 1000.0 * ecliptic)
}

/// Julian centuries since the beginning of 2000.
fn centuries(day: f64) -> f64 {
    (day - 2_451_545.0) / 36_525.0
}

/// Slant of the ecliptic, rad; nutation, less than 0.003°, is left out here and in the sidereal time alike.
fn obliquity(t: f64) -> f64 {
    (23.439_291_1 - 0.013_004_2 * t).to_radians()
}

/// The place on the ground from the middle of the Earth, km, in the equator's axes turned to the stars at a Julian day of universal time.
fn stand(when: &When, day: f64) -> DVec3 {
    // Meeus, chapter 11: flattening 1/298.257.
    let flat = 0.996_647_19;
    let latitude = when.latitude_deg.0.to_radians();
    let u = (flat * latitude.sin()).atan2(latitude.cos());
    let turn = sidereal(when, day);
    EARTH_RADIUS_KM * DVec3::new(u.cos() * turn.cos(), u.cos() * turn.sin(), flat * u.sin())
}

/// Local mean sidereal time, rad (Meeus, formula 12.4).
fn sidereal(when: &When, day: f64) -> f64 {
    let t = centuries(day);
    let degrees = 280.460_618_37 + 360.985_647_366_29 * (day - 2_451_545.0) + 0.000_387_933 * t * t;
    (degrees + when.longitude_deg.0).rem_euclid(360.0).to_radians()
}

/// North, east and up of a place from the equator's axes.
fn horizon_from_equator(when: &When, day: f64) -> DMat3 {
    let (latitude, turn) = (when.latitude_deg.0.to_radians(), sidereal(when, day));
    let up = DVec3::new(latitude.cos() * turn.cos(), latitude.cos() * turn.sin(), latitude.sin());
    let east = DVec3::new(-turn.sin(), turn.cos(), 0.0);
    DMat3::from_cols(up.cross(east), east, up).transpose()
}
