//! Wind into pressure, and what people call it.

use crate::{craft::shelter::air, units::M_S_PER_MILE_AN_HOUR};
use serde::{Serialize, Serializer};

/// Density of air at a temperature, °C, and a height above the sea, m: 1.225 kg/m³ at 15 °C by the sea.
pub fn air_density(celsius: f64, above_sea_m: f64) -> f64 {
    air::density(air::pressure(above_sea_m), celsius)
}

/// Dynamic pressure, Pa, of a wind in m/s: ½ ρ V². With 1.225 kg/m³ the 0.613 V² of ASCE 7.
pub fn pressure(density: f64, m_s: f64) -> f64 {
    0.5 * density * m_s * m_s
}

/// The wind, m/s, that has a dynamic pressure in Pa.
pub fn speed(density: f64, pressure_pa: f64) -> f64 {
    (2.0 * pressure_pa.max(0.0) / density).sqrt()
}

/// A wind as it is told to somebody who must act before it, m/s: down to the half.
pub fn safe_side(m_s: f64) -> f64 {
    (m_s * 2.0).floor() / 2.0
}

/// A gust over the mean wind that it comes in, by land. Common practice, no source.
const GUST_OVER_MEAN: f64 = 1.5;

/// A step of the Beaufort scale, which is one of mean winds and of what they do to see.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Beaufort(pub u8);

/// Least whole miles an hour of the steps 1 to 12 (published tables agree on them; two were read).
const FROM_MPH: [f64; 12] = [1.0, 4.0, 8.0, 13.0, 19.0, 25.0, 32.0, 39.0, 47.0, 55.0, 64.0, 73.0];

impl Beaufort {
    /// The step of a mean wind in m/s, by whole miles an hour.
    pub fn of(m_s: f64) -> Self {
        let mph = (m_s / M_S_PER_MILE_AN_HOUR).round();
        Self(FROM_MPH.iter().filter(|from| mph >= **from).count() as u8)
    }

    /// The step of the mean wind whose gusts are so strong, m/s.
    pub fn of_gust(m_s: f64) -> Self {
        Self::of(m_s / GUST_OVER_MEAN)
    }

    /// Its name as weather services say it.
    pub const fn name(self) -> &'static str {
        match self.0 {
            0 => "calm",
            1 => "light air",
            2 => "light breeze",
            3 => "gentle breeze",
            4 => "moderate breeze",
            5 => "fresh breeze",
            6 => "strong breeze",
            7 => "near gale",
            8 => "gale",
            9 => "strong gale",
            10 => "storm",
            11 => "violent storm",
            _ => "hurricane force",
        }
    }

    /// What it does to see (after the usual land table, in words of our own).
    pub const fn sign(self) -> &'static str {
        match self.0 {
            0 => "smoke goes straight up",
            1 => "smoke leans, leaves are still",
            2 => "felt on the face, leaves rustle",
            3 => "leaves and thin twigs never rest",
            4 => "dust and paper fly, thin branches move",
            5 => "small trees in leaf sway",
            6 => "thick branches move, wires whistle",
            7 => "whole trees move, walking is work",
            8 => "twigs break off",
            _ => "things break",
        }
    }
}

impl Serialize for Beaufort {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_u8(self.0)
    }
}
