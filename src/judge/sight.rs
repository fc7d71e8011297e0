//! Can they see it: what an eye at a viewing spot makes of a station's figure, in a word, with its numbers and its reason.
//!
//! The word is the worst answer of four [`Question`]s; their limits stand in one data file ([`crate::scene::limits`]). What a
//! source of light does to each is kept apart in a [`Sighting`], so that a whole evening is judged by [`Weights`].

mod around;
mod beside;
mod bright;
mod figures;
mod halo;
mod lights;
mod limits;
mod question;
mod rival;
mod sample;
mod sighting;
mod tell;
mod weigh;
mod word;

pub use figures::{Figures, Place};
pub use limits::Limits;
pub use question::{Answer, Coarsest, Question};
pub use sighting::{Sighting, Weights};
pub use word::Word;

pub(super) use {around::Around, sighting::By, tell::coarsest, weigh::Sums};

use super::{Banded, band::Scale};
use crate::units::border;
use glam::Vec3;
use halo::Halo;
use serde::Serialize;

/// The brightest other thing in sight.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rival {
    /// Name of what sends its light.
    pub name: String,
    /// Index among the night's sources.
    #[serde(skip)]
    pub source: u32,
    /// Its light at the eye from where it counts as a rival, lx.
    #[serde(serialize_with = "border::light")]
    pub lx: f64,
    /// How far beside the figure, degrees.
    #[serde(serialize_with = "border::light")]
    pub degrees: f64,
    /// Its light at the eye over the figure's; endless where the figure has none.
    #[serde(serialize_with = "border::light")]
    pub times: f64,
}

/// What an eye makes of a figure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Sight {
    /// The word at typical values.
    pub word: Word,
    /// The word where what is not known of the station's light and its target stands at its worst.
    pub least: Word,
    /// The word where it stands at its best.
    pub most: Word,
    /// Why it is no better, in plain words.
    pub reason: String,
    /// The questions with their answers, as in [`Question::ALL`].
    pub answers: [Answer; 4],
    /// Luminance that the figure must show on: its ground as seen, with the veil, cd/m².
    #[serde(serialize_with = "border::light")]
    pub adaptation: f64,
    /// Luminance of the veil that bright things beside draw over it, cd/m².
    #[serde(serialize_with = "border::light")]
    pub veil: f64,
    /// Diameter of the disc that has the figure's solid angle, minutes of arc.
    #[serde(serialize_with = "border::light")]
    pub size_arcmin: f64,
    /// Mean width of the figure's strokes as drawn, as it lands and as seen, minutes of arc.
    #[serde(serialize_with = "border::light")]
    pub stroke_arcmin: f64,
    /// What they are held against: the coarsest of eye, pixel and blur.
    pub coarsest: Coarsest,
    /// The figure's own light at the eye, lx.
    pub figure_lx: Banded,
    /// The strongest rival, where there is any.
    pub rival: Option<Rival>,
    /// Brightest point of the figure without the veil, cd/m².
    #[serde(skip)]
    pub peak: Banded,
    /// Mean over the figure without the veil, cd/m².
    #[serde(skip)]
    pub mean: Banded,
    /// The ground beside it without the veil, cd/m².
    #[serde(skip)]
    pub ground: Banded,
    /// The figure's light by where it comes from.
    #[serde(skip)]
    halo: Halo,
}

impl Sight {
    fn of(sighting: &Sighting, weights: &Weights, limits: &Limits) -> Self {
        let own = sighting.station as usize;
        let Scale { low, high } = sighting.scale;
        let ends = [low, 1.0, high].map(|factor| sighting.weighed(weights, limits, factor));
        let answers = Question::ALL.map(|question| {
            let at = question as usize;
            Answer::of(question, ends.map(|end| end.answers[at]), limits.ladders[at])
        });
        let worst = |pick: fn(&Answer) -> Word| answers.iter().map(pick).min().unwrap_or(Word::Lost);
        let shares = |lights: &[f64]| {
            let all: f64 = lights.iter().enumerate().map(|(i, light)| weights.of(i) * light).sum();
            let own = weights.of(own) * lights.get(own).unwrap_or(&0.0);
            (own, (all - own).max(0.0))
        };
        let banded = |(own, rest): (f64, f64)| Banded::of(own, rest, sighting.scale);
        let point = |sample: &sample::Sample| {
            let light = |(source, light)| weights.of(source) * f64::from(light);
            let all: f64 = sample.lights.each().map(light).sum();
            let own = weights.of(own) * f64::from(sample.lights.at(own));
            (own, (all - own).max(0.0))
        };
        let points: Vec<(f64, f64)> = sighting.figure.iter().map(point).collect();
        let shines = sighting.figure.iter().zip(points.iter().map(|(own, rest)| own + rest));
        let halo = Halo::of(shines, sighting.age);
        let peak = points.into_iter().max_by(|a, b| (a.0 + a.1).total_cmp(&(b.0 + b.1))).unwrap_or_default();
        let figure_lx = weights.of(own) * sighting.sums.figure_lx;
        let rival = sighting.rivals.strongest(weights).map(|rival| Rival {
            name: sighting.names[rival.source as usize].clone(),
            source: rival.source,
            lx: rival.lx,
            degrees: rival.degrees,
            times: (rival.lx / figure_lx.max(f64::MIN_POSITIVE)).min(1e9),
        });
        let mut sight = Self {
            word: worst(|a| a.word),
            least: worst(|a| a.least),
            most: worst(|a| a.most),
            reason: String::new(),
            answers,
            adaptation: ends[1].adaptation,
            veil: ends[1].veil,
            size_arcmin: sighting.detail.size,
            stroke_arcmin: sighting.detail.stroke,
            coarsest: ends[1].coarsest,
            figure_lx: banded((figure_lx, 0.0)),
            rival,
            peak: banded(peak),
            mean: banded(shares(&sighting.sums.figure)),
            ground: banded(shares(&sighting.sums.ground)),
            halo,
        };
        sight.reason = tell::reason(&sight);
        sight
    }

    /// The answer that makes the word: of the worst the one that is farthest from better.
    pub fn worst(&self) -> &Answer {
        let of = |a: &&Answer| (a.word, a.margin());
        let least = self.answers.iter().min_by(|a, b| {
            let ((one, near), (other, far)) = (of(a), of(b));
            one.cmp(&other).then(near.total_cmp(&far))
        });
        least.unwrap_or(&self.answers[0])
    }

    /// Luminance of the veil that the figure itself draws over what that eye looks at along a ray, cd/m².
    pub(super) fn halo(&self, along: Vec3) -> f64 {
        self.halo.veil(along)
    }

    /// The answer to a question.
    pub fn answer(&self, question: Question) -> &Answer {
        &self.answers[question as usize]
    }

    /// The word, with what it may also be: `clear`, or `about clear (faint–strong)`.
    pub fn phrase(&self) -> String {
        if self.least == self.most {
            return self.word.name().to_owned();
        }
        format!("{} ({} to {})", self.word.name(), self.least.name(), self.most.name())
    }
}
