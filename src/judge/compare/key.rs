//! What rows are sorted by.

use super::{FromSpot, Row};
use std::cmp::Ordering;

/// What rows are sorted by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// Name, from A on.
    Name,
    /// Word, the best first, and among one word the brightest.
    Word,
    /// Luminance, the brightest first.
    Luminance,
    /// Second picture on what stands behind, the faintest first.
    Ghost,
    /// By day, what gives itself away least first.
    Day,
    /// What passes straight through, the most first.
    Through,
    /// Cost, the least first.
    Cost,
}

impl Key {
    /// Each of them.
    pub const ALL: [Self; 7] =
        [Self::Name, Self::Word, Self::Luminance, Self::Ghost, Self::Day, Self::Through, Self::Cost];

    /// What to call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Word => "word",
            Self::Luminance => "luminance",
            Self::Ghost => "ghost",
            Self::Day => "day",
            Self::Through => "through",
            Self::Cost => "cost",
        }
    }

    /// Which of two rows comes first, as seen from a spot.
    pub fn order(self, a: &Row, b: &Row, spot: usize) -> Ordering {
        let (one, other) = (a.spots.get(spot), b.spots.get(spot));
        let bright = || falling(one.map(|s| s.mean.typical), other.map(|s| s.mean.typical));
        match self {
            Self::Name => a.names.cmp(&b.names),
            Self::Word => other.and_then(|s| s.word).cmp(&one.and_then(|s| s.word)).then_with(bright),
            Self::Luminance => bright(),
            Self::Ghost => rising(one.and_then(FromSpot::second_picture), other.and_then(FromSpot::second_picture)),
            Self::Day => rising(one.and_then(|s| s.by_day), other.and_then(|s| s.by_day)),
            Self::Through => falling(a.straight.map(|s| s.typical), b.straight.map(|s| s.typical)),
            Self::Cost => rising(a.cost.map(|s| s.typical), b.cost.map(|s| s.typical)),
        }
    }
}

/// The least first, nothing last.
fn rising(a: Option<f64>, b: Option<f64>) -> Ordering {
    let at = |value: Option<f64>| value.unwrap_or(f64::INFINITY);
    at(a).total_cmp(&at(b))
}

/// The most first, nothing last.
fn falling(a: Option<f64>, b: Option<f64>) -> Ordering {
    let at = |value: Option<f64>| value.unwrap_or(f64::NEG_INFINITY);
    at(b).total_cmp(&at(a))
}
