//! Money with its band.

use crate::{scene::Band, units::border, units::with_band};
use serde::Serialize;
use std::{iter::Sum, ops::Add};

/// A price, in whatever money the catalogue's and the yard's are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Price {
    /// The least to expect.
    #[serde(serialize_with = "border::light")]
    pub low: f64,
    /// Typical.
    #[serde(serialize_with = "border::light")]
    pub typical: f64,
    /// The most to expect.
    #[serde(serialize_with = "border::light")]
    pub high: f64,
}

impl Price {
    /// So many of it.
    #[must_use]
    pub fn times(self, count: f64) -> Self {
        let Self { low, typical, high } = self;
        Self { low: low * count, typical: typical * count, high: high * count }
    }

    /// As people read it.
    pub fn show(self) -> String {
        with_band(self.low, self.typical, self.high, "").trim_end().to_owned()
    }
}

impl From<Band> for Price {
    fn from(Band { low, typical, high }: Band) -> Self {
        Self { low, typical, high }
    }
}

impl Add for Price {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self { low: self.low + other.low, typical: self.typical + other.typical, high: self.high + other.high }
    }
}

impl Sum for Price {
    fn sum<I: Iterator<Item = Self>>(prices: I) -> Self {
        prices.fold(Self::default(), Add::add)
    }
}
