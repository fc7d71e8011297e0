//! How bright open level ground is by sun, moon and stars; functions of height alone.

/// Open level ground by stars and airglow, lx, under a clear sky without sun or moon.
///
/// The value that goes with the sun more than 18° down in the Explanatory Supplement to the Astronomical Almanac (Seidelmann 1992;
/// Urban and Seidelmann 2013), `log10 E = −2.69897`. The polynomial of the last twilight falls below it from some 15° down: no sky
/// is darker than its stars, so that the greater of the two counts.
pub const STARS_LX: f64 = 0.002;

/// A stretch of heights, from its lowest on, with the powers of x = height / 90° in `log10 E`.
type Stretch = (f64, [f64; 4]);

const SUN: [Stretch; 6] = [
    (20.0, [3.74, 3.97, -4.07, 1.47]),
    (5.0, [3.05, 13.28, -45.98, 64.33]),
    (-0.8, [2.88, 22.26, -207.64, 1034.30]),
    (-5.0, [2.88, 21.81, -258.11, -858.36]),
    (-12.0, [2.70, 12.17, -431.69, -1899.83]),
    (-18.0, [13.84, 262.72, 1447.42, 2797.93]),
];

const MOON: [Stretch; 3] = [
    (20.0, [-1.95, 4.06, -4.24, 1.56]),
    (5.0, [-2.58, 12.58, -42.58, 59.06]),
    (-0.8, [-2.79, 24.27, -252.95, 1321.29]),
];

fn level_lx(stretches: &[Stretch], height_deg: f64) -> f64 {
    let Some((_, powers)) = stretches.iter().find(|(lowest, _)| height_deg >= *lowest) else { return 0.0 };
    let x = height_deg / 90.0;
    10f64.powf(powers.iter().rev().fold(0.0, |sum, power| sum * x + power))
}

/// Open level ground by a clear sky and the sun in it, lx, with the sun's middle so high above the horizon, degrees, refraction
/// not counted; nothing from 18° down.
///
/// Seidelmann's polynomials (Explanatory Supplement to the Astronomical Almanac 1992), good to 5 %. At their joints they jump by 1 % at
/// most.
pub fn clear_sun_lx(height_deg: f64) -> f64 {
    level_lx(&SUN, height_deg)
}

/// The same by a full moon at its mean distance.
pub fn full_moon_lx(height_deg: f64) -> f64 {
    level_lx(&MOON, height_deg)
}

/// What the moon gives at a phase angle, degrees (0 full, 180 new), over what it gives full: `10^(−8.68·10⁻³ f − 2.2·10⁻⁹ f⁴)`, the
/// term that goes with Seidelmann's polynomials. From memory; at the half it gives 12 %, as published elsewhere.
pub fn phase_share(phase_angle_deg: f64) -> f64 {
    let f = phase_angle_deg.abs();
    10f64.powf(-8.68e-3 * f - 2.2e-9 * f.powi(4))
}

/// What the moon gives over what it gives at its mean distance, by its horizontal parallax, degrees: `(π / 0.951°)²`, the inverse
/// square of distance.
pub fn nearness(parallax_deg: f64) -> f64 {
    (parallax_deg / 0.951).powi(2)
}

/// The share that comes straight from a disc at a seen height above the horizon, degrees, of all that it gives to level ground
/// through clear air; 0 from the horizon down.
///
/// Two published laws of a clear sky share Seidelmann's total between them: level ground gets `128 000 exp(−0.21 m) sin h` lx
/// straight, with the air mass `m`, and `800 + 15 500 √sin h` lx by the sky (IES calculation procedures for daylight availability,
/// 1984; from memory). The share is the first over both. From 10° up each part is then within a third of its own law. Moonlight goes
/// through the same air.
pub fn straight_share(seen_height_deg: f64) -> f64 {
    if seen_height_deg <= 0.0 {
        return 0.0;
    }
    let sine = seen_height_deg.to_radians().sin();
    let straight = 128_000.0 * (-0.21 * air_mass(seen_height_deg)).exp() * sine;
    straight / (straight + 800.0 + 15_500.0 * sine.sqrt())
}

/// Air on the way of light from a seen height, degrees, over that from the zenith (Kasten and Young 1989, Applied Optics 28:4735).
pub fn air_mass(seen_height_deg: f64) -> f64 {
    1.0 / (seen_height_deg.to_radians().sin() + 0.50572 * (seen_height_deg + 6.07995).powf(-1.6364))
}

/// What cloud that covers a share of the sky leaves of a clear sky's light on level ground: `1 − 0.75 N^3.4` (Kasten and Czeplak 1980,
/// Solar Energy 24:177; from memory). It was fitted by day; that it holds at dusk and at night is common practice, no source.
pub fn left_by_cloud(share: f64) -> f64 {
    1.0 - 0.75 * share.clamp(0.0, 1.0).powf(3.4)
}
