//! The parts of a question, and the lengths that may be said for some of them.

use super::AskFault;
use crate::units::Length;
use std::ops::RangeInclusive;

/// A part of a question: where an answer goes wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// What is lit.
    Target,
    /// How wide it is.
    Width,
    /// How high it is.
    Height,
    /// How high above the ground its lower edge is.
    LowerEdge,
    /// From how far it is lit.
    Distance,
    /// The class of projector.
    Projector,
    /// Its lumens.
    Lumens,
    /// A picture that it was seen to throw.
    Picture,
    /// How dark the street is.
    Street,
    /// What the target is made of.
    Fabric,
}

/// The lengths that may be said for a part of a question.
#[derive(Clone, Debug)]
pub struct Span {
    part: Part,
    what: &'static str,
    metres: RangeInclusive<f64>,
    remedy: &'static str,
}

impl Span {
    /// How wide a target is.
    pub const WIDTH: Self = Self::new(Part::Width, "a width", 0.1..=20.0, "say from 0.1 to 20 m");
    /// How high it is.
    pub const HEIGHT: Self = Self::new(Part::Height, "a height", 0.1..=20.0, "say from 0.1 to 20 m");
    /// How high above the ground its lower edge is.
    pub const LOWER_EDGE: Self =
        Self::new(Part::LowerEdge, "a lower edge", 0.0..=20.0, "say how high above the ground, from 0 to 20 m");
    /// From the lens to it.
    pub const DISTANCE: Self =
        Self::new(Part::Distance, "a distance", 0.3..=60.0, "say how far lens and target are apart, from 0.3 to 60 m");

    const fn new(part: Part, what: &'static str, metres: RangeInclusive<f64>, remedy: &'static str) -> Self {
        Self { part, what, metres, remedy }
    }

    /// A length that was said, m; a fault where no such thing is that long.
    pub fn check(&self, said: &Length) -> Result<f64, AskFault> {
        if self.metres.contains(&said.m) {
            return Ok(said.m);
        }
        Err(AskFault::Range { part: self.part, what: self.what, said: said.to_string(), remedy: self.remedy })
    }
}
