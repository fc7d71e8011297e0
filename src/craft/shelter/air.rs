//! Air that carries heat away: `W = ρ cp Q ΔT`, with its density by height above the sea.

use crate::units::M3_H_PER_CFM;

/// Heat that a kilogram of air takes up for each kelvin, J/(kg K).
pub const HEAT_CAPACITY: f64 = 1005.0;
/// Gas constant of dry air, J/(kg K).
pub const GAS: f64 = 287.05;
/// 0 °C, K.
pub const ZERO_C: f64 = 273.15;
/// Fall of gravity, m/s².
pub const GRAVITY: f64 = 9.806_65;
/// Density that fans are rated at, kg/m³: dry air at 20 °C and 101.325 kPa.
pub const RATED: f64 = 1.204_1;

/// Pressure in the standard atmosphere so many metres above the sea, Pa (ISO 2533:1975):
/// `101325 (1 − 0.0065 h / 288.15)^5.25588`.
pub fn pressure(above_sea: f64) -> f64 {
    101_325.0 * (1.0 - 0.0065 * above_sea / 288.15).max(0.01).powf(5.255_88)
}

/// Density of dry air at a pressure, Pa, and a temperature, °C: kg/m³.
pub fn density(pressure: f64, celsius: f64) -> f64 {
    pressure / (GAS * (celsius + ZERO_C).max(1.0))
}

/// Density in the standard atmosphere so many metres above the sea, kg/m³; 15 °C at the sea, and 6.5 K less each kilometre up.
pub fn standard_density(above_sea: f64) -> f64 {
    density(pressure(above_sea), 15.0 - 0.0065 * above_sea)
}

/// Mass of air a second that carries so many watts off with so many kelvin of rise, kg/s.
pub fn mass_flow(watts: f64, rise: f64) -> f64 {
    watts / (HEAT_CAPACITY * rise)
}

/// Volume of air of a density that does the same, m³/s.
pub fn flow(watts: f64, rise: f64, density: f64) -> f64 {
    mass_flow(watts, rise) / density
}

/// A flow given in m³/s, in m³/h.
pub fn per_hour(flow: f64) -> f64 {
    3600.0 * flow
}

/// A flow given in m³/s, in cubic feet a minute.
pub fn cfm(flow: f64) -> f64 {
    per_hour(flow) / M3_H_PER_CFM
}
