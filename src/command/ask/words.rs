//! A projector in a person's words: `mini LED`, `7500 lm on the box`, `110 lm measured`, `40in at 5ft`, with commas between.

use gauzelight::{
    judge::ask::{Lumens, Measured, Projector},
    units::Length,
};

/// What was said of a projector.
#[derive(Debug, PartialEq)]
pub struct Said {
    /// The projector as far as it is clear.
    pub projector: Projector,
    /// Lumens of which it was not said where they are from.
    pub bare: Option<f64>,
}

impl Said {
    /// Reads it.
    pub fn parse(text: &str) -> Result<Self, String> {
        let mut said = Self { projector: Projector::default(), bare: None };
        let mut class: Vec<&str> = Vec::new();
        for part in text.split(',').map(str::trim) {
            if let Some((width, at)) = part.split_once(" at ") {
                let length = |text| Length::parse(text).map_err(|error| error.to_string());
                said.projector.picture = Some(Measured { width: length(width)?, at: length(at)? });
            } else if let Some(lm) = number(part) {
                match lumens_from(part, lm) {
                    Some(lumens) => said.projector.lumens = Some(lumens),
                    None => said.bare = Some(lm),
                }
            } else {
                class.push(part);
            }
        }
        // The name of a class may have a comma of its own.
        if !class.is_empty() {
            said.projector.class = Some(class.join(", "));
        }
        Ok(said)
    }
}

/// Words that may stand beside a number of lumens.
const BESIDE: [&str; 7] = ["lm", "lumen", "lumens", "on", "the", "box", "measured"];

/// The number in `7500`, `7500 lm on the box`, `measured 110lm`; none where anything else is said, as “12 V pocket” is a class.
fn number(part: &str) -> Option<f64> {
    let spaced = part.to_lowercase().replace("lm", " lm");
    let mut rest = spaced.split_whitespace().filter(|word| !BESIDE.contains(word));
    let number = rest.next()?.parse().ok()?;
    rest.next().is_none().then_some(number)
}

/// Lumens by the words beside their number; none where these say neither or both.
pub fn lumens_from(words: &str, lm: f64) -> Option<Lumens> {
    let words = words.to_lowercase();
    match (words.contains("box"), words.contains("measured")) {
        (true, false) => Some(Lumens::OnBox(lm)),
        (false, true) => Some(Lumens::Measured(lm)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_projector_is_said_in_several_ways() {
        let said = |text| Said::parse(text).unwrap();
        assert_eq!(said("mini").projector, Projector::class("mini"));
        assert_eq!(said("12 V pocket").projector, Projector::class("12 V pocket"));
        assert_eq!(said("used lamp projector, wide").projector, Projector::class("used lamp projector, wide"));
        for text in ["7500 lm on the box", "7500lm box", "On the box 7500", "7500 lumens on box"] {
            assert_eq!(said(text).projector.lumens, Some(Lumens::OnBox(7500.0)), "{text}");
        }
        assert_eq!(said("measured 110.5 lm").projector.lumens, Some(Lumens::Measured(110.5)));
        assert_eq!((said("7500 lm").bare, said("-5").bare), (Some(7500.0), Some(-5.0)));
        assert_eq!(said("40in at 5ft").projector.picture.unwrap().at.m, 1.524);
        let all = said("mini LED, 7500 lm on the box, 40in at 5ft").projector;
        assert!(all.class.is_some() && all.lumens.is_some() && all.picture.is_some());
        assert!(Said::parse("40in at dusk").is_err());
    }
}
