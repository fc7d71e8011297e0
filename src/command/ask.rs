//! `ask`: five questions about one station, and a little yard to go on from.

mod little;
mod page;
mod prompt;

use super::Failure;
use gauzelight::{
    judge::ask::{self, Answer, AskFault, Measured, Projector, Question, Street, Target},
    scene::{Catalogue, Units},
    units::{Length, Style},
};
use prompt::Prompt;
use serde::Serialize;
use std::{
    io::{self, IsTerminal},
    path::PathBuf,
};

/// Options of `ask`.
#[derive(clap::Args)]
#[command(
    after_help = "What is not said is asked for at a terminal; elsewhere the usual value is taken, and that is said.\n\
    Lengths are taken as 1.2 m, 120 cm, 4ft, \"4' 6\\\"\", 40 1/2 in and the like; a bare number is metres.\n\n\
    Examples:\n  \
    gauzelight ask\n  \
    gauzelight ask --target wall --width 8ft --distance 11ft --projector \"mini LED\" --street lit\n  \
    gauzelight ask --target window --box-lumens 7500 --picture-width 40in --picture-at 5ft"
)]
pub struct Ask {
    /// 1. What do you light: window, cloth, wall or form
    #[arg(long, value_name = "WHAT")]
    target: Option<String>,
    /// 2. How wide it is
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    width: Option<Length>,
    /// How high it is; as high as a picture that fills its width where not said
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    height: Option<Length>,
    /// 3. From how far: lens to target
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    distance: Option<Length>,
    /// 4. Which projector: a class of the catalogue, or a part of its name that no other has
    #[arg(long, value_name = "CLASS")]
    projector: Option<String>,
    /// Lumens printed on its box; what it really gives is guessed by its class
    #[arg(long, value_name = "LUMENS", allow_negative_numbers = true)]
    box_lumens: Option<f64>,
    /// Width of a picture that you measured; with --picture-at it gives the throw ratio
    #[arg(long, value_name = "LENGTH", requires = "picture_at", allow_hyphen_values = true)]
    picture_width: Option<Length>,
    /// How far the lens was from that picture
    #[arg(long, value_name = "LENGTH", requires = "picture_width", allow_hyphen_values = true)]
    picture_at: Option<Length>,
    /// 5. How dark is the street: country lane, dim street, lit street or bright town
    #[arg(long, value_name = "HOW")]
    street: Option<String>,
    /// Film of the window or fabric of the cloth, by its name in the catalogue
    #[arg(long, value_name = "NAME")]
    fabric: Option<String>,
    /// The projector lies on its side; for a form it always does
    #[arg(long)]
    upright: bool,
    /// The street lamp is off or shaded
    #[arg(long)]
    lamp_off: bool,
    /// File for the little yard
    #[arg(long, value_name = "FILE", default_value = "little.ron")]
    out: PathBuf,
    /// Write over that file where it is there already
    #[arg(long)]
    force: bool,
    /// The answer as JSON
    #[arg(long)]
    json: bool,
}

/// The answer with what only the command knows.
#[derive(Serialize)]
struct Told<'a> {
    #[serde(flatten)]
    answer: &'a Answer,
    /// Options that were not said, with the value taken.
    taken: &'a [String],
    /// Where the little yard lies, if it could be written.
    yard: Option<String>,
}

impl Ask {
    /// Asks and answers.
    pub fn run(&self) -> Result<(), Failure> {
        let catalogue = Catalogue::builtin();
        let (stdin, stderr) = (io::stdin(), io::stderr());
        let at_terminal = stdin.is_terminal() && stderr.is_terminal();
        let prompt = at_terminal.then(|| Prompt::new(stdin.lock(), stderr.lock()));
        let locale = super::home::units();
        let mut asking = Asking { prompt, taken: Vec::new() };
        let question = self.question(&mut asking, locale, &catalogue).map_err(Failure::options)?;
        let taken = asking.taken;
        if !taken.is_empty() {
            super::aside(format_args!("gauzelight: not said, so the usual is taken: {}", taken.join(", ")));
        }
        let answer = ask::answer(&question, &catalogue).map_err(Failure::options)?;
        // The answer is worth having even where the little yard cannot be written.
        let written = little::write(&self.out, &answer.yard_text, self.force);
        let file = written.as_deref().ok();
        if file.is_some_and(|file| file != self.out) {
            let out = self.out.display();
            super::aside(format_args!("gauzelight: {out} is there already and stays (--force writes over it)"));
        }
        if self.json {
            let told = Told { answer: &answer, taken: &taken, yard: file.map(|file| file.display().to_string()) };
            super::say(serde_json::to_string_pretty(&told).map_err(Failure::said)?);
        } else {
            super::say(page::text(&question, &answer, file).trim_end());
        }
        written.map(drop)
    }

    /// The question, answer by answer: each usual answer rests on those before it.
    fn question(&self, asking: &mut Asking<'_>, locale: Units, catalogue: &Catalogue) -> Result<Question, AskFault> {
        let said = self.target.as_deref().map(Target::parse).transpose()?;
        let usual = Target::Window;
        let target = asking.answer(said, "--target", (usual, usual.name()), |prompt| prompt.target(usual));
        let mut question = Question::usual(target, units_said(&[&self.width, &self.height, &self.distance], locale));
        question.upright |= self.upright;
        let usual = question.width.clone();
        question.width = asking.answer(self.width.clone(), "--width", (usual.clone(), &usual.to_string()), |prompt| {
            prompt.length(&format!("2. How wide is the {}?", target.name()), &usual)
        });
        // A width said at the prompt in feet makes the rest of the asking one in feet.
        question.units = units_said(&[&Some(question.width.clone())], question.units);
        let usual = Question::usual_distance(&question.width, question.upright, question.units);
        question.distance =
            asking.answer(self.distance.clone(), "--distance", (usual.clone(), &usual.to_string()), |prompt| {
                prompt.length("3. From how far, lens to target?", &usual)
            });
        let usual = (Projector::default(), Projector::USUAL);
        question.projector =
            asking.answer(self.said_projector(), "--projector", usual, |prompt| prompt.projector(catalogue));
        let said = self.street.as_deref().map(Street::parse).transpose()?;
        let usual = question.street;
        question.street = asking.answer(said, "--street", (usual, usual.name()), |prompt| prompt.street(usual));
        question.height.clone_from(&self.height);
        question.fabric.clone_from(&self.fabric);
        question.lamp_off = self.lamp_off;
        Ok(question)
    }

    /// The projector as far as options say it; none where they don't at all.
    fn said_projector(&self) -> Option<Projector> {
        let measured = self.picture_width.clone().zip(self.picture_at.clone());
        let projector = Projector {
            class: self.projector.clone(),
            box_lumens: self.box_lumens,
            measured: measured.map(|(width, at)| Measured { width, at }),
        };
        (projector != Projector::default()).then_some(projector)
    }
}

/// Where answers come from that no option gives: a person at a terminal, or what is usual.
struct Asking<'a> {
    prompt: Option<Prompt<'a>>,
    /// Options that nobody said, with the value taken.
    taken: Vec<String>,
}

impl<'a> Asking<'a> {
    /// What was said, else what the person at the terminal says, else the usual answer, which comes with its name.
    fn answer<T>(
        &mut self,
        said: Option<T>,
        option: &str,
        usual: (T, &str),
        ask: impl FnOnce(&mut Prompt<'a>) -> T,
    ) -> T {
        match (said, &mut self.prompt) {
            (Some(said), _) => said,
            (None, Some(prompt)) => ask(prompt),
            (None, None) => {
                self.taken.push(format!("{option} {}", usual.1));
                usual.0
            }
        }
    }
}

/// The units that lengths were said in: the first that has a unit decides, else `otherwise`.
fn units_said(lengths: &[&Option<Length>], otherwise: Units) -> Units {
    let of = |style| match style {
        Style::Bare => None,
        Style::Metres | Style::Centimetres | Style::Millimetres => Some(Units::Metric),
        Style::Feet | Style::Inches | Style::FeetInches => Some(Units::Feet),
    };
    lengths.iter().copied().flatten().find_map(|length| of(length.style)).unwrap_or(otherwise)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_with_a_unit_decide_the_units() {
        let length = |text| Some(Length::parse(text).unwrap());
        assert_eq!(units_said(&[&None, &length("2"), &length("8ft")], Units::Metric), Units::Feet);
        assert_eq!(units_said(&[&length("80 cm")], Units::Feet), Units::Metric);
        assert_eq!(units_said(&[&length("2")], Units::Feet), Units::Feet);
    }
}
