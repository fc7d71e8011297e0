//! The verdict: what the judge of every yard says of the little one, and that in a sentence.

use crate::judge::{Sight, Word};
use serde::Serialize;
use std::cmp::Ordering;

/// What an eye at the little yard's viewing spot makes of the figure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// The word at typical values; lost where nothing of the figure is in sight.
    pub word: Word,
    /// The word where everything uncertain stands at its worst.
    pub least: Word,
    /// The word where everything uncertain stands at its best.
    pub most: Word,
    /// The whole judgement with its four questions, the very one that the yard's readings have; `None` where nothing of
    /// the figure is in sight.
    pub sight: Option<Sight>,
    /// The verdict as one plain line.
    pub sentence: String,
}

impl Verdict {
    pub(super) fn of(sight: Option<Sight>) -> Self {
        let [word, least, most] = sight.as_ref().map_or([Word::Lost; 3], |sight| [sight.word, sight.least, sight.most]);
        let sentence = sentence(sight.as_ref());
        Self { word, least, most, sight, sentence }
    }

    /// Where it stands, to tell a better one from a worse.
    pub(super) fn standing(&self) -> Standing {
        let sight = self.sight.as_ref();
        let answers = sight.into_iter().flat_map(|sight| &sight.answers);
        let rungs = answers.filter_map(|answer| Some(rung(answer.value?.typical, answer.limits)));
        let worst = rungs.fold(HIGHEST, f64::min);
        Standing { word: self.word, rung: if sight.is_some() { worst } else { LOWEST } }
    }
}

fn sentence(sight: Option<&Sight>) -> String {
    let Some(Sight { word, least, most, reason, .. }) = sight else {
        return "Lost: nothing of the figure is in sight.".to_owned();
    };
    let mut sentence = match word {
        Word::Lost => "Lost: nobody would notice it",
        Word::Faint => "Faint: easily passed by",
        Word::Clear => "Clear: it reads at a glance",
        Word::Strong => "Strong: it draws the eye",
    }
    .to_owned();
    sentence += &format!("; {reason}.");
    let mut others: Vec<&str> = [least, most].into_iter().filter(|other| *other != word).map(|w| w.name()).collect();
    others.dedup();
    if !others.is_empty() {
        sentence += &format!(" What is not known could make it {}.", others.join(" or "));
    }
    sentence
}

/// A place on the ladder of words: first the word, then how far the worst question is from its steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Standing {
    pub word: Word,
    /// 1, 2 and 3 where the worst question is faint, clear and strong.
    pub rung: f64,
}

impl Standing {
    pub fn compare(self, other: Self) -> Ordering {
        self.word.cmp(&other.word).then(self.rung.total_cmp(&other.rung))
    }
}

/// A place beyond the ladder's ends.
const LOWEST: f64 = -2.0;
const HIGHEST: f64 = 5.0;

/// A place on the ladder of limits: 1, 2 and 3 at the limits, between and beyond them by ratio.
fn rung(value: f64, [faint, clear, strong]: [f64; 3]) -> f64 {
    let part = |low: f64, high: f64| (value / low).ln() / (high / low).ln();
    let rung = if value < clear { 1.0 + part(faint, clear) } else { 2.0 + part(clear, strong) };
    rung.clamp(LOWEST, HIGHEST)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_are_rungs() {
        let limits = [3.0, 20.0, 100.0];
        for (i, limit) in limits.into_iter().enumerate() {
            assert!((rung(limit, limits) - (i + 1) as f64).abs() < 1e-12);
        }
        assert_eq!((rung(0.0, limits), rung(f64::INFINITY, limits)), (LOWEST, HIGHEST));
    }

    #[test]
    fn out_of_sight_is_lost_and_worse_than_anything() {
        let nothing = Verdict::of(None);
        assert_eq!((nothing.word, nothing.most), (Word::Lost, Word::Lost));
        assert!(nothing.sentence.starts_with("Lost: nothing of the figure"));
        let faint = Standing { word: Word::Faint, rung: LOWEST };
        assert_eq!(nothing.standing().compare(faint), Ordering::Less);
    }
}
