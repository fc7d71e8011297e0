//! The word for seeing, provisional: lost, faint, clear or strong, as the worst of three questions.
//!
//! It rests on a mean luminance around the target and on plain ratios. The full judgement of an adapted eye (veil, age,
//! finest feature, competing lights) is another matter, and this one gives way to it.

use crate::{
    geometry::Sight,
    judge::{Banded, SpotReading, Word, eye},
    light::{EyeRay, Night, luma},
    scene::Spot,
    units::border,
};
use glam::Vec3;
use serde::Serialize;

/// From where on a picture is faint, clear and strong. Each list holds the three limits in that order.
mod limits {
    /// Figure : ground as seen. 7 and 15 are the ratios that AVIXA V201.01 (first ANSI/INFOCOMM 3M-2011) asks for passive
    /// viewing and for basic decision making, there between full white and black; 1.5 is common practice, no source.
    pub const STANDS_OUT: [f64; 3] = [1.5, 7.0, 15.0];
    /// What the figure has over its ground, over the mean luminance around: common practice, no source.
    pub const HOLDS_ITS_OWN: [f64; 3] = [0.5, 2.0, 8.0];
    /// What the figure has over its ground, cd/m². Below 0.005 eyes see neither colour nor detail (lower end of the mesopic
    /// range, CIE 191:2010, from memory); the others are common practice, no source.
    pub const ABOVE_THRESHOLD: [f64; 3] = [0.005, 0.05, 0.3];
}

/// What the verdict rests on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Seen {
    /// Figure : ground as seen, everything included; `None` where nothing beside the figure gives light.
    pub figure_to_ground: Option<Banded>,
    /// The same with every other light out: what the projector's own black leaves of it, at typical values.
    #[serde(serialize_with = "border::light")]
    pub alone: Option<f64>,
    /// What the figure has over its ground by the station's own light, cd/m².
    pub over_ground: Banded,
    /// Mean luminance around the target, cd/m².
    #[serde(serialize_with = "border::light")]
    pub around: f64,
}

/// The word with what it rests on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// The word at typical values.
    pub word: Word,
    /// The word where everything uncertain stands at its worst.
    pub least: Word,
    /// The word where everything uncertain stands at its best.
    pub most: Word,
    /// The numbers behind it.
    pub seen: Seen,
    /// The verdict as one plain line.
    pub sentence: String,
}

/// Where figure : ground would be less than so many times better with every other light out, the projector's own black is
/// what keeps it low.
const OWN_GREY: f64 = 1.5;

/// One end of the band.
type End = fn(Banded) -> f64;

impl Seen {
    /// From a spot's reading, from the same spot's reading with every other light out, and from the luminance around.
    pub(super) fn of(lit: &SpotReading, alone: &SpotReading, around: f64) -> Self {
        let over = |end: End| (end(alone.mean) - end(alone.ground)).max(0.0);
        let over_ground = Banded { low: over(|b| b.low), typical: over(|b| b.typical), high: over(|b| b.high) };
        let alone = alone.figure_to_ground.map(|ratio| ratio.typical);
        Self { figure_to_ground: lit.figure_to_ground, alone, over_ground, around }
    }

    /// How well it is seen without steps: 1, 2 and 3 where faint, clear and strong begin.
    pub(super) fn level(&self) -> f64 {
        self.at(|b| b.typical).0
    }

    /// The level at one end of the bands, and why it is no higher.
    fn at(&self, end: End) -> (f64, &'static str) {
        let over = end(self.over_ground);
        let own_grey =
            self.alone.zip(self.figure_to_ground).is_some_and(|(alone, ratio)| alone < OWN_GREY * ratio.typical);
        // Nothing to stand out from is as good as any contrast; whether there is a figure at all the others ask.
        let contrast = self.figure_to_ground.map_or(f64::INFINITY, end);
        let why = if own_grey { "its own black is grey" } else { "other light fills its dark parts" };
        [
            (rung(contrast, limits::STANDS_OUT), why),
            (rung(over / self.around.max(1e-9), limits::HOLDS_ITS_OWN), "what is around it is as bright"),
            (rung(over, limits::ABOVE_THRESHOLD), "there is too little light in it"),
        ]
        .into_iter()
        .fold((f64::INFINITY, ""), |least, next| if next.0 < least.0 { next } else { least })
    }

    /// The verdict.
    pub(super) fn verdict(self) -> Verdict {
        let (level, why) = self.at(|b| b.typical);
        let word = Word::of(level);
        let (least, most) = (Word::of(self.at(|b| b.low).0), Word::of(self.at(|b| b.high).0));
        let mut sentence = match word {
            Word::Lost => format!("Lost: nobody would notice it; {why}."),
            Word::Faint => format!("Faint: easily passed by; {why}."),
            Word::Clear => "Clear: it reads at a glance.".to_owned(),
            Word::Strong => "Strong: it draws the eye.".to_owned(),
        };
        if least < word && most > word {
            sentence += &format!(" What is not known could make it {} or {}.", least.name(), most.name());
        } else if least < word || most > word {
            let other = if least < word { least } else { most };
            sentence += &format!(" What is not known could make it {}.", other.name());
        }
        Verdict { word, least, most, seen: self, sentence }
    }
}

/// A place on the ladder of limits: 1, 2 and 3 at the limits, between and beyond them by ratio, within −2 to 5.
fn rung(value: f64, [faint, clear, strong]: [f64; 3]) -> f64 {
    let part = |low: f64, high: f64| (value / low).ln() / (high / low).ln();
    let rung = if value < clear { 1.0 + part(faint, clear) } else { 2.0 + part(clear, strong) };
    rung.clamp(-2.0, 5.0)
}

/// Angles from the target at which the surround is looked at, degrees: a field of 20° across, and wider where the target
/// fills that.
const RINGS: [&[f32]; 2] = [&[3.0, 6.0, 9.0], &[15.0, 25.0, 40.0]];
/// Directions on each ring.
const AROUND: u32 = 16;

/// Mean luminance around a target, cd/m², the target itself left out.
pub(super) fn around(night: &Night, spot: &Spot, target: u32, middle: Vec3) -> f64 {
    let from = eye(spot);
    let ahead = (middle - from).normalize_or_zero();
    let (side, up) = ahead.any_orthonormal_pair();
    let ring = |degrees: f32| {
        (0..AROUND).filter_map(move |i| {
            let turn = std::f32::consts::TAU * (i as f32 + 0.5) / AROUND as f32;
            let (sin, cos) = degrees.to_radians().sin_cos();
            let along = cos * ahead + sin * (turn.cos() * side + turn.sin() * up);
            let meets = night.touches(Sight::endless(from, along)).iter().any(|touch| touch.owner == target);
            (!meets).then(|| f64::from(luma(night.luminance(EyeRay { from, along, width: 0.0 }))))
        })
    };
    let mut all: Vec<f64> = Vec::new();
    for rings in RINGS {
        all.extend(rings.iter().flat_map(|degrees| ring(*degrees)));
        // A handful of rays past the target's edge would be chance.
        if all.len() >= AROUND as usize {
            break;
        }
    }
    all.iter().sum::<f64>() / all.len().max(1) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seen(ratio: f64, over: f64, around: f64) -> Seen {
        let banded = |typical: f64| Banded { low: 0.5 * typical, typical, high: 2.0 * typical };
        Seen { figure_to_ground: Some(banded(ratio)), alone: Some(2.0 * ratio), over_ground: banded(over), around }
    }

    #[test]
    fn limits_are_rungs_and_the_worst_question_decides() {
        for list in [limits::STANDS_OUT, limits::HOLDS_ITS_OWN, limits::ABOVE_THRESHOLD] {
            for (i, limit) in list.into_iter().enumerate() {
                assert!((rung(limit, list) - (i + 1) as f64).abs() < 1e-12);
            }
        }
        assert_eq!((rung(0.0, limits::STANDS_OUT), rung(f64::INFINITY, limits::STANDS_OUT)), (-2.0, 5.0));
        assert_eq!(seen(100.0, 100.0, 1.0).verdict().word, Word::Strong);
        assert_eq!(seen(10.0, 100.0, 1.0).verdict().word, Word::Clear);
        assert_eq!(seen(100.0, 1.0, 1.0).verdict().word, Word::Faint);
        assert_eq!(seen(100.0, 0.001, 1e-6).verdict().word, Word::Lost);
    }

    #[test]
    fn nothing_beside_it_is_no_fault_and_no_figure_is() {
        let bare = |over: f64| Seen { figure_to_ground: None, alone: None, ..seen(1.0, over, 1.0) }.verdict().word;
        assert_eq!(bare(100.0), Word::Strong);
        assert_eq!(bare(0.0), Word::Lost);
    }

    #[test]
    fn a_limit_within_the_band_is_said() {
        let verdict = seen(10.0, 100.0, 1.0).verdict();
        assert_eq!((verdict.least, verdict.most), (Word::Faint, Word::Strong));
        assert!(verdict.sentence.ends_with("could make it faint or strong."), "{}", verdict.sentence);
    }
}
