//! What is asked of a figure, and what came of it.

use super::Word;
use crate::{judge::Banded, scene::limits};
use serde::Serialize;

/// What bounds how fine a picture may be drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Coarsest {
    /// The finest that an eye tells apart.
    Eye,
    /// A pixel of the projector.
    Pixel,
    /// The blur of its focus.
    Blur,
}

/// A question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// Is there light enough? What the station puts on the figure less what it puts on its ground, over the least difference that
    /// shows on that ground and its veil (Adrian 1989): the visibility level.
    LightEnough,
    /// Is it coarse enough to be read? Mean stroke as drawn over the coarsest of what an eye sees by the figure's own light, a
    /// pixel of the projector and the blur of its focus.
    FineEnough,
    /// Does it stand out? Brightest tenth of the figure : ground, white to black, both as seen through the veil.
    StandsOut,
    /// Does it hold its own? The figure's light at the eye over that of its strongest rival, a rival at an angle θ beside
    /// it counting by [`super::Limits::rival_share`].
    HoldsItsOwn,
}

impl Question {
    /// Every question, in the order in which the first of equally bad answers gives the reason.
    pub const ALL: [Self; 4] = [Self::LightEnough, Self::FineEnough, Self::StandsOut, Self::HoldsItsOwn];

    /// Names of its limits in the catalogue, whose notes say where they come from: faint, clear, strong.
    pub fn limits(self) -> [&'static str; 3] {
        limits::LADDERS[self as usize]
    }

    /// The word for a value by the steps from which a figure is faint, clear and strong. Lost is only what cannot be seen, for want
    /// of light or of contrast: what is too fine to be read or outshone is faint.
    pub fn word(self, value: f64, steps: [f64; 3]) -> Word {
        let least = match self {
            Self::LightEnough | Self::StandsOut => Word::Lost,
            Self::FineEnough | Self::HoldsItsOwn => Word::Faint,
        };
        Word::by(value, steps).max(least)
    }
}

/// What came of a question.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// The question.
    pub question: Question,
    /// Its number; `None` where there is nothing to hold the figure against, which is as good as any.
    pub value: Option<Banded>,
    /// The values from which a figure is faint, clear and strong.
    pub limits: [f64; 3],
    /// The word at the typical value.
    pub word: Word,
    /// The word where what is not known stands at its worst.
    pub least: Word,
    /// The word where it stands at its best.
    pub most: Word,
}

impl Answer {
    /// From its number at the low end, at the typical value and at the high end.
    pub(super) fn of(question: Question, [low, typical, high]: [Option<f64>; 3], limits: [f64; 3]) -> Self {
        let word = |value: Option<f64>| value.map_or(Word::Strong, |value| question.word(value, limits));
        let value =
            typical.map(|typical| Banded { low: low.unwrap_or(typical), typical, high: high.unwrap_or(typical) });
        Self { question, value, limits, word: word(typical), least: word(low), most: word(high) }
    }

    /// How far above or below the step to the next word it stands, by ratio: the worst of answers with one word is the least.
    pub(super) fn margin(&self) -> f64 {
        let step = self.limits[(self.word as usize).min(2)];
        self.value.map_or(f64::INFINITY, |value| value.typical / step)
    }
}
