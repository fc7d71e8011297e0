//! Dew: water that air can hold, by the Magnus formula over water, `e = 6.112 exp(17.62 t / (243.12 + t))` hPa with t in °C
//! (WMO guide no. 8, annex 4.B, read in a maker's manual that quotes it).

use super::air::ZERO_C;

const AT_ZERO_HPA: f64 = 6.112;
const STEEP: f64 = 17.62;
const BASE_C: f64 = 243.12;

/// Vapour pressure at which air of a temperature, °C, holds all that it can, hPa.
pub fn saturation(celsius: f64) -> f64 {
    AT_ZERO_HPA * (STEEP * celsius / (BASE_C + celsius)).exp()
}

/// Temperature at which water begins to fall out of air, °C, by its temperature, °C, and relative humidity, above 0 to 1.
pub fn point(celsius: f64, humidity: f64) -> f64 {
    let log = humidity.clamp(1e-4, 1.0).ln() + STEEP * celsius / (BASE_C + celsius);
    BASE_C * log / (STEEP - log)
}

/// Water in a cubic metre of air, g, by its dew point, °C, and its temperature, °C: `e M / (R T)`.
pub fn water(dew_point: f64, celsius: f64) -> f64 {
    // 18.015 g/mol over 8.314 J/(mol K), times 100 Pa in a hPa.
    216.7 * saturation(dew_point) / (celsius + ZERO_C)
}
