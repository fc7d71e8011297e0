//! Dew and rime: water that air can hold, by the Magnus formula, `e = 6.112 exp(a t / (b + t))` hPa with t in °C: over water a =
//! 17.62 and b = 243.12 (WMO guide no. 8, annex 4.B, read in a maker's manual that quotes it), over ice 22.46 and 272.62 (the same,
//! from memory).

use super::air::ZERO_C;

const AT_ZERO_HPA: f64 = 6.112;
/// a, and b in °C.
const WATER: (f64, f64) = (17.62, 243.12);
const ICE: (f64, f64) = (22.46, 272.62);

fn magnus((steep, base_c): (f64, f64), celsius: f64) -> f64 {
    AT_ZERO_HPA * (steep * celsius / (base_c + celsius)).exp()
}

/// Vapour pressure over water at a temperature, °C, hPa. Relative humidity is held against that in frost too, as weather services do.
pub fn over_water(celsius: f64) -> f64 {
    magnus(WATER, celsius)
}

/// Vapour pressure at which water falls out of air onto what has a temperature, °C, hPa: as rime below 0 °C.
pub fn saturation(celsius: f64) -> f64 {
    magnus(if celsius < 0.0 { ICE } else { WATER }, celsius)
}

/// Temperature at which water begins to fall out of air, °C, by its temperature, °C, and relative humidity, above 0 to 1: its dew point, or
/// below 0 °C its frost point. Air that holds more than ice leaves it is taken to have lost the rest as rime.
pub fn point(celsius: f64, humidity: f64) -> f64 {
    let log = (humidity.clamp(1e-4, 1.0) * over_water(celsius) / AT_ZERO_HPA).ln();
    let (steep, base_c) = if log < 0.0 { ICE } else { WATER };
    (base_c * log / (steep - log)).min(celsius)
}

/// What such a temperature is called.
pub fn name(point_c: f64) -> &'static str {
    if point_c < 0.0 { "frost point" } else { "dew point" }
}

/// Water in a cubic metre of air, g, by its dew point, °C, and its temperature, °C: `e M / (R T)`.
pub fn water(dew_point: f64, celsius: f64) -> f64 {
    // 18.015 g/mol over 8.314 J/(mol K), times 100 Pa in a hPa.
    216.7 * saturation(dew_point) / (celsius + ZERO_C)
}
