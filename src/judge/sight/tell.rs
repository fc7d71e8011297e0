//! Why a figure is seen no better, in plain words.

use super::{Answer, Coarsest, Question, Sight, Word};
use crate::units::two_digits;

/// The reason behind a word: the worst answer with its number.
pub(super) fn reason(sight: &Sight) -> String {
    let worst = sight.worst();
    let number = two_digits(worst.value.map_or(f64::INFINITY, |value| value.typical));
    match (worst.question, worst.word) {
        (_, Word::Strong) => "nothing in sight takes from it".to_owned(),
        (Question::LightEnough, word) => {
            let much =
                if word == Word::Clear { "there could be more light in it" } else { "there is too little light in it" };
            format!("{much}: {number} times the least that shows there, {}", better(worst))
        }
        (Question::FineEnough, _) => {
            let much = match worst.value {
                Some(value) if value.typical < worst.limits[0] => "its strokes are too fine to be read",
                _ => "its strokes are fine",
            };
            format!("{much}: {number} times {}, {}", coarsest(sight.coarsest), better(worst))
        }
        (Question::StandsOut, _) => {
            format!(
                "its dark parts are light: its brightest are {number} times as bright as they are, {}",
                better(worst)
            )
        }
        (Question::HoldsItsOwn, _) => sight.rival.as_ref().map_or_else(String::new, |rival| {
            format!(
                "it counts {number} times as much as {}, {} ({} times its light, {:.0}° beside it)",
                named(&rival.name),
                better(worst),
                two_digits(rival.times),
                rival.degrees
            )
        }),
    }
}

/// What strokes are held against, in words.
pub(in crate::judge) const fn coarsest(coarsest: Coarsest) -> &'static str {
    match coarsest {
        Coarsest::Eye => "the finest that an eye sees there",
        Coarsest::Pixel => "a pixel of its projector",
        Coarsest::Blur => "the blur of its focus",
    }
}

/// What the next better word would ask.
fn better(answer: &Answer) -> String {
    let step = (answer.word as usize).min(2);
    format!("and {} would make it {}", two_digits(answer.limits[step]), Word::ALL[step + 1].name())
}

/// A name in a sentence.
fn named(name: &str) -> String {
    format!("“{name}”")
}
