//! The sky of a night over towns.

use crate::scene::Setting;
use std::f64::consts::PI;

/// Brightness of the zenith on a clear night without moon, stars and airglow included, mag/arcsec². Suburbs have 19 to 20.5 and cities 17 to 18.5: from memory;
/// which of them stands for a setting is invented.
pub fn zenith_mag(setting: Setting) -> f64 {
    match setting {
        Setting::CountryLane => 21.3,
        Setting::Suburb => 19.5,
        Setting::Town => 18.5,
        Setting::City => 17.5,
    }
}

/// Luminance, cd/m², from mag/arcsec²: `10.8·10⁴ · 10^(−0.4 m)`, the usual conversion.
pub fn luminance(mag: f64) -> f64 {
    108_000.0 * 10f64.powf(-0.4 * mag)
}

/// Illuminance of level ground over π times the zenith's luminance: a glow is brighter towards the horizon. Invented.
const TOWARDS_THE_HORIZON: f64 = 1.5;

/// The glow under a closed cover of cloud over that of a clear sky: 3 to 10 times, from memory; near their geometric mean.
const UNDER_CLOUD: f64 = 5.0;

/// Open level ground by the night sky of a setting, lx, under cloud that covers a share of the sky: `1.5 π L (1 + 4 N)`.
pub fn glow_lx(setting: Setting, cloud: f64) -> f64 {
    let clear = TOWARDS_THE_HORIZON * PI * luminance(zenith_mag(setting));
    clear * (1.0 + (UNDER_CLOUD - 1.0) * cloud.clamp(0.0, 1.0))
}
