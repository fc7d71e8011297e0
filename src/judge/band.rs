//! A number with what is not known of it.

use crate::units::border;
use serde::Serialize;

/// A computed value with the range that follows when the projector's lumens and the target's own answer stand at their
/// worst ends at once. Other lamps, glass, and light of the surroundings are taken as they are.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Banded {
    /// The least to expect.
    #[serde(serialize_with = "border::light")]
    pub low: f64,
    /// The typical value.
    #[serde(serialize_with = "border::light")]
    pub typical: f64,
    /// The most to expect.
    #[serde(serialize_with = "border::light")]
    pub high: f64,
}

impl Banded {
    /// A value of which `own` scales with what is uncertain and `rest` does not.
    pub fn of(own: f64, rest: f64, scale: Scale) -> Self {
        Self { low: own * scale.low + rest, typical: own + rest, high: own * scale.high + rest }
    }

    /// A value of `a` over `b` that rise and fall together; `None` where `b` is nothing.
    pub fn over(a: Self, b: Self) -> Option<Self> {
        let typical = Some(a.typical / b.typical).filter(|ratio| b.typical > 0.0 && ratio.is_finite())?;
        // Where an end of `b` is nothing, all of it goes with what is not known; so does `a`, and their ratio stays.
        let ratio = |x: f64, y: f64| if y > 0.0 { x / y } else { typical };
        let (one, two) = (ratio(a.low, b.low), ratio(a.high, b.high));
        Some(Self { low: one.min(two), typical, high: one.max(two) })
    }
}

/// Factors on a typical value at the low and the high end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// At the low end.
    pub low: f64,
    /// At the high end.
    pub high: f64,
}

impl Scale {
    /// Nothing uncertain.
    pub const SURE: Self = Self { low: 1.0, high: 1.0 };

    /// Low and high over typical.
    pub fn of(low: f64, typical: f64, high: f64) -> Self {
        if typical > 0.0 { Self { low: low / typical, high: high / typical } } else { Self::SURE }
    }

    /// Both uncertain at once.
    pub fn and(self, other: Self) -> Self {
        Self { low: self.low * other.low, high: self.high * other.high }
    }
}
