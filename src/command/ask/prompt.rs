//! Questions at a terminal, each with its usual answer in brackets; a bad answer is told and asked for again.

use gauzelight::{
    judge::ask::{Measured, Projector, Street, Target},
    scene::Catalogue,
    units::Length,
};
use std::io::{BufRead, Write};

/// A asking with a person. Where the input ends, every further question gets its usual answer.
pub struct Prompt<'a> {
    from: Box<dyn BufRead + 'a>,
    to: Box<dyn Write + 'a>,
}

impl<'a> Prompt<'a> {
    /// A asking that reads answers and writes questions.
    pub fn new(from: impl BufRead + 'a, to: impl Write + 'a) -> Self {
        Self { from: Box::new(from), to: Box::new(to) }
    }

    /// Question 1.
    pub fn target(&mut self, usual: Target) -> Target {
        self.offer("1. What do you light?", Target::ALL.iter().map(|target| (target.name(), target.help())));
        let said = self.ask("  ", usual.name(), |said| Target::parse(said).map_err(|fault| fault.to_string()));
        said.unwrap_or(usual)
    }

    /// Questions 2 and 3.
    pub fn length(&mut self, question: &str, usual: &Length) -> Length {
        let read = |said: &str| Length::parse(said).map_err(|error| error.to_string());
        self.ask(question, &usual.to_string(), read).unwrap_or_else(|| usual.clone())
    }

    /// Question 4: a class, the lumens on a box, or a measured picture.
    pub fn projector(&mut self, catalogue: &Catalogue) -> Projector {
        let classes = catalogue.projectors.iter().map(|class| (class.name.0.as_str(), ""));
        let more = [("7500 lm", "what its box claims"), ("40in at 5ft", "a picture you measured, and from how far")];
        self.offer("4. Which projector? A class, or what you know of it:", classes.chain(more));
        self.ask("  ", Projector::USUAL, |said| projector(said, catalogue)).unwrap_or_default()
    }

    /// Question 5.
    pub fn street(&mut self, usual: Street) -> Street {
        self.offer("5. How dark is the street?", Street::ALL.iter().map(|street| (street.name(), street.help())));
        let said = self.ask("  ", usual.name(), |said| Street::parse(said).map_err(|fault| fault.to_string()));
        said.unwrap_or(usual)
    }

    fn offer<'t>(&mut self, question: &str, choices: impl Iterator<Item = (&'t str, &'t str)>) {
        self.say(&format!("{question}\n"));
        for (name, help) in choices {
            self.say(format!("     {name:<26}{help}").trim_end());
            self.say("\n");
        }
    }

    /// Asks until the answer can be read; none for an empty answer.
    fn ask<T>(&mut self, question: &str, usual: &str, read: impl Fn(&str) -> Result<T, String>) -> Option<T> {
        loop {
            self.say(&format!("{question} [{usual}] "));
            let mut line = String::new();
            let ended = !matches!(self.from.read_line(&mut line), Ok(1..));
            if ended || line.trim().is_empty() {
                if ended {
                    self.say("\n");
                }
                return None;
            }
            match read(line.trim()) {
                Ok(answer) => return Some(answer),
                Err(why) => self.say(&format!("     {why}\n")),
            }
        }
    }

    /// A terminal that cannot be written to has nobody to tell.
    fn say(&mut self, words: &str) {
        let _ = self.to.write_all(words.as_bytes()).and_then(|()| self.to.flush());
    }
}

/// A projector in a person's words: `mini LED`, `7500`, `7500 lm`, `40in at 5ft`.
fn projector(said: &str, catalogue: &Catalogue) -> Result<Projector, String> {
    // Lumens are a number alone or with their unit; "12 V pocket" is a class.
    let number = said.trim().trim_end_matches("lumens").trim_end_matches("lm").trim_end();
    let projector = if let Some((width, at)) = said.split_once(" at ") {
        let length = |text| Length::parse(text).map_err(|error| error.to_string());
        Projector { measured: Some(Measured { width: length(width)?, at: length(at)? }), ..Projector::default() }
    } else if let Ok(lumens) = number.parse() {
        Projector { box_lumens: Some(lumens), ..Projector::default() }
    } else {
        Projector::class(said)
    };
    projector.check(catalogue).map_err(|fault| fault.to_string())?;
    Ok(projector)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bad_answers_are_told_and_asked_again_and_an_empty_one_is_the_usual() {
        let mut told = Vec::new();
        let mut prompt = Prompt::new("cloht\ncloth\n\n12 parsecs\n".as_bytes(), &mut told);
        assert_eq!(prompt.target(Target::Window), Target::Cloth);
        let usual = Length::parse("2 m").unwrap();
        assert_eq!(prompt.length("How wide?", &usual), usual);
        assert_eq!(prompt.length("How far?", &usual), usual, "the input ends after a bad answer");
        assert_eq!(prompt.street(Street::DimStreet), Street::DimStreet);
        drop(prompt);
        let told = String::from_utf8(told).unwrap();
        assert!(told.contains("did you mean “cloth”?") && told.contains("parsecs"), "{told}");
    }

    #[test]
    fn a_projector_is_said_in_three_ways() {
        let catalogue = Catalogue::builtin();
        let read = |said| projector(said, &catalogue);
        assert_eq!(read("mini").unwrap(), Projector::class("mini"));
        assert_eq!(read("7500 lm").unwrap().box_lumens, Some(7500.0));
        assert_eq!(read("40in at 5ft").unwrap().measured.unwrap().at.m, 1.524);
        for bad in ["maxi LED", "3 lm", "0 at 5ft", "40in at dusk", "-7500"] {
            assert!(read(bad).is_err(), "{bad}");
        }
    }
}
