//! Questions at a terminal, each with its usual answer in brackets; a bad answer is told and asked for again.

use super::words::{Said, lumens_from};
use gauzelight::{
    judge::ask::{AskFault, Lumens, Projector, Span, Street, Target},
    scene::Catalogue,
    units::Length,
};
use std::io::{BufRead, Write};

/// An asking with a person. Where the input ends, every further question gets its usual answer.
pub struct Prompt<'a> {
    from: Box<dyn BufRead + 'a>,
    to: Box<dyn Write + 'a>,
}

impl<'a> Prompt<'a> {
    /// The usual height of a target.
    pub const AS_ITS_PICTURE: &'static str = "as high as its picture";

    /// An asking that reads answers and writes questions.
    pub fn new(from: impl BufRead + 'a, to: impl Write + 'a) -> Self {
        Self { from: Box::new(from), to: Box::new(to) }
    }

    /// Question 1.
    pub fn target(&mut self, usual: Target) -> Target {
        self.offer("1. What do you light?", Target::ALL.iter().map(|target| (target.name(), target.help())));
        let said = self.ask("  ", usual.name(), |said| Target::parse(said).map_err(|fault| fault.to_string()));
        said.unwrap_or(usual)
    }

    /// Lengths of questions 2 and 3.
    pub fn length(&mut self, question: &str, usual: &Length, span: &Span) -> Length {
        self.ask(question, &usual.to_string(), |said| length(said, span)).unwrap_or_else(|| usual.clone())
    }

    /// The height of question 2; none where it is to be as high as its picture.
    pub fn height(&mut self, question: &str) -> Option<Length> {
        self.ask(question, Self::AS_ITS_PICTURE, |said| length(said, &Span::HEIGHT))
    }

    /// Question 4: a class, its lumens, a measured picture, or several of them.
    pub fn projector(&mut self, catalogue: &Catalogue) -> Projector {
        let classes = catalogue.projectors.iter().map(|class| (class.name.0.as_str(), ""));
        let more = [
            ("7500 lm on the box", "what is printed there"),
            ("110 lm measured", "mean lux at nine places of a white picture square on, times its area in m²"),
            ("40in at 5ft", "a picture you measured, and from how far"),
        ];
        self.offer(
            "4. Which projector? A class, what you know of it, or both with commas between:",
            classes.chain(more),
        );
        loop {
            let Some(said) = self.ask("  ", Projector::USUAL, Said::parse) else { return Projector::default() };
            let lumens =
                said.bare.map(|lm| self.lumens(&format!("     {lm} lm: on the box, or measured?"), Lumens::OnBox(lm)));
            let projector = Projector { lumens: lumens.or(said.projector.lumens), ..said.projector };
            if let Some(settled) = self.settled(projector, catalogue) {
                return settled;
            }
        }
    }

    /// A projector whose lumens can be believed, if need be after asking where they are from; none where something else must
    /// be said, after saying why.
    pub fn settled(&mut self, projector: Projector, catalogue: &Catalogue) -> Option<Projector> {
        let fault = match projector.check(catalogue) {
            Ok(()) => return Some(projector),
            Err(fault) => fault,
        };
        let AskFault::Doubted(doubt) = &fault else {
            self.say(&format!("     {fault}\n"));
            return None;
        };
        let Some(likelier) = doubt.likelier else {
            self.say(&format!("     {doubt}\n"));
            return None;
        };
        self.say(&format!("     {}.\n", doubt.why()));
        if self.lumens("     Which was meant: on the box, or measured?", likelier) == likelier {
            return Some(Projector { lumens: Some(likelier), ..projector });
        }
        self.say(&format!("     Then it is no “{}”: name the class that it is.\n", doubt.class));
        None
    }

    /// Where lumens are from.
    fn lumens(&mut self, question: &str, usual: Lumens) -> Lumens {
        let name = match usual {
            Lumens::OnBox(_) => "on the box",
            Lumens::Measured(_) => "measured",
        };
        let lm = usual.value();
        let read = |said: &str| lumens_from(said, lm).ok_or_else(|| "say “on the box” or “measured”".to_owned());
        self.ask(question, name, read).unwrap_or(usual)
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

fn length(said: &str, span: &Span) -> Result<Length, String> {
    let length = Length::parse(said).map_err(|error| error.to_string())?;
    span.check(&length).map(|_| length).map_err(|fault| fault.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked<T>(answers: &str, ask: impl FnOnce(&mut Prompt<'_>) -> T) -> (T, String) {
        let mut told = Vec::new();
        let mut prompt = Prompt::new(answers.as_bytes(), &mut told);
        let answer = ask(&mut prompt);
        drop(prompt);
        (answer, String::from_utf8(told).unwrap())
    }

    #[test]
    fn bad_answers_are_told_and_asked_again_and_an_empty_one_is_the_usual() {
        let usual = Length::parse("2 m").unwrap();
        let (_, told) = asked("cloht\ncloth\n\n900 m\n3 m\n\n12 parsecs\n", |prompt| {
            assert_eq!(prompt.target(Target::Window), Target::Cloth);
            assert_eq!(prompt.length("How wide?", &usual, &Span::WIDTH), usual);
            assert_eq!(prompt.length("How wide?", &usual, &Span::WIDTH).m, 3.0, "900 m is told and asked for again");
            assert_eq!(prompt.height("How high?"), None);
            assert_eq!(prompt.length("How far?", &usual, &Span::DISTANCE), usual, "the input ends after a bad answer");
            assert_eq!(prompt.street(Street::DimStreet), Street::DimStreet);
        });
        for part in ["did you mean “cloth”?", "from 0.1 to 20 m", "parsecs"] {
            assert!(told.contains(part), "{part}: {told}");
        }
    }

    #[test]
    fn lumens_without_a_source_and_lumens_in_doubt_are_asked_about() {
        let catalogue = Catalogue::builtin();
        let projector = |answers: &str| asked(answers, |prompt| prompt.projector(&catalogue));
        let (bare, told) = projector("mini LED, 7500\nmeasured\non the box\n");
        assert_eq!(bare.lumens, Some(Lumens::OnBox(7500.0)));
        assert!(
            told.contains("7500 lm: on the box, or measured?") && told.contains("implausible for a “mini LED”"),
            "{told}"
        );
        // Who insists names another class.
        let (other, told) =
            projector("mini, 2600 lm measured\nmeasured\nused lamp projector, wide, 2600 lm measured\n");
        assert!(told.contains("Then it is no “mini LED”"), "{told}");
        assert_eq!(other.class.as_deref(), Some("used lamp projector, wide"));
        assert_eq!(other.lumens, Some(Lumens::Measured(2600.0)));
        let (usual, told) = projector("7500 lm measured by moonlight\n75000 lm measured\n");
        assert!(told.contains("no projector class is called") && told.contains("Check the number"), "{told}");
        assert_eq!(usual, Projector::default(), "the input ends after a bad answer");
        // What options say is doubted as well.
        let said = Projector { lumens: Some(Lumens::Measured(7500.0)), ..Projector::class("mini LED") };
        let (settled, _) = asked("on the box\n", |prompt| prompt.settled(said, &catalogue));
        assert_eq!(settled.unwrap().lumens, Some(Lumens::OnBox(7500.0)));
    }
}
