//! `ask`: five questions about one station, and a little yard to go on from.

mod little;
mod page;
mod prompt;
mod words;

use super::Failure;
use gauzelight::{
    judge::ask::{self, Answer, AskFault, Lumens, Measured, Part, Projector, Question, Span, Street, Target},
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
    gauzelight ask --target wall --width 8ft --height 5ft --lower-edge 2ft --distance 11ft --projector \"mini LED\" --street lit\n  \
    gauzelight ask --target window --box-lumens 7500 --picture-width 40in --picture-at 5ft\n  \
    gauzelight ask --target cloth --projector pocket --measured-lumens 160"
)]
pub struct Ask {
    /// 1. What do you light: window, cloth, wall or form
    #[arg(long, value_name = "WHAT")]
    target: Option<String>,
    /// 2. How wide it is: the window, the cloth, the form, the part of the wall that is lit
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    width: Option<Length>,
    /// How high it is; as high as a picture that fills its width where not said
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    height: Option<Length>,
    /// How high its lower edge is above the ground
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    lower_edge: Option<Length>,
    /// 3. From how far: lens to target
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    distance: Option<Length>,
    /// 4. Which projector: a class of the catalogue, or a part of its name that no other has
    #[arg(long, value_name = "CLASS")]
    projector: Option<String>,
    /// Lumens on the box, as printed there; what it really gives is guessed by its class
    #[arg(long, value_name = "LUMENS", allow_negative_numbers = true)]
    box_lumens: Option<f64>,
    /// Lumens measured: mean lux at nine places of a white picture square on, times its area in square metres
    #[arg(long, value_name = "LUMENS", allow_negative_numbers = true, conflicts_with = "box_lumens")]
    measured_lumens: Option<f64>,
    /// Lumens of which nobody knows where they are from
    #[arg(long, hide = true, value_name = "LUMENS", allow_negative_numbers = true)]
    lumens: Option<f64>,
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
        if let Some(lm) = self.lumens {
            return Err(Failure::options(format_args!(
                "--lumens: {lm} lm on the box, or measured? Say --box-lumens {lm} or --measured-lumens {lm}"
            )));
        }
        let catalogue = super::home::catalogue();
        let (stdin, stderr) = (io::stdin(), io::stderr());
        let at_terminal = stdin.is_terminal() && stderr.is_terminal();
        let prompt = at_terminal.then(|| Prompt::new(stdin.lock(), stderr.lock()));
        let locale = super::home::units();
        let mut asking = Asking { prompt, taken: Vec::new() };
        let question = self.question(&mut asking, locale, &catalogue).map_err(|fault| self.failure(&fault))?;
        let taken = asking.taken;
        if !taken.is_empty() {
            super::aside(format_args!("gauzelight: not said, so the usual is taken: {}", taken.join(", ")));
        }
        let answer = ask::answer(&question, &catalogue).map_err(|fault| self.failure(&fault))?;
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
        let lengths = [&self.width, &self.height, &self.lower_edge, &self.distance];
        let mut question = Question::usual(target, units_said(&lengths, locale));
        question.upright |= self.upright;
        let usual = question.width.clone();
        let said = checked(&Span::WIDTH, &self.width)?;
        question.width = asking.answer(said, "--width", (usual.clone(), &usual.to_string()), |prompt| {
            prompt.length(&format!("2. How wide is the {}?", lit(target)), &usual, &Span::WIDTH)
        });
        // A width said at the prompt in feet makes the rest of the asking one in feet.
        question.units = units_said(&[&Some(question.width.clone())], question.units);
        let said = checked(&Span::HEIGHT, &self.height)?.map(Some);
        question.height = asking
            .answer(said, "--height", (None, Prompt::AS_ITS_PICTURE), |prompt| prompt.height("   How high is it?"));
        let usual = question.lower_edge();
        let said = checked(&Span::LOWER_EDGE, &self.lower_edge)?;
        let lower_edge = asking.answer(said, "--lower-edge", (usual.clone(), &usual.to_string()), |prompt| {
            prompt.length("   How high above the ground is its lower edge?", &usual, &Span::LOWER_EDGE)
        });
        question.lower_edge = Some(lower_edge);
        let (width, height) = (&question.width, question.height.as_ref());
        let usual = Question::usual_distance(width, height, question.upright, question.units);
        let said = checked(&Span::DISTANCE, &self.distance)?;
        question.distance = asking.answer(said, "--distance", (usual.clone(), &usual.to_string()), |prompt| {
            prompt.length("3. From how far, lens to target?", &usual, &Span::DISTANCE)
        });
        question.projector = self.projector(asking, catalogue)?;
        let said = self.street.as_deref().map(Street::parse).transpose()?;
        let usual = question.street;
        question.street = asking.answer(said, "--street", (usual, usual.name()), |prompt| prompt.street(usual));
        question.fabric.clone_from(&self.fabric);
        question.lamp_off = self.lamp_off;
        Ok(question)
    }

    /// The projector. Lumens in doubt are asked about where somebody is there to be asked.
    fn projector(&self, asking: &mut Asking<'_>, catalogue: &Catalogue) -> Result<Projector, AskFault> {
        let said = match (self.said_projector(), &mut asking.prompt) {
            (Some(said), Some(prompt)) => prompt.settled(said, catalogue),
            (Some(said), None) => said.check(catalogue).map(|()| Some(said))?,
            (None, _) => None,
        };
        let usual = (Projector::default(), Projector::USUAL);
        Ok(asking.answer(said, "--projector", usual, |prompt| prompt.projector(catalogue)))
    }

    /// The projector as far as options say it; none where they don't at all.
    fn said_projector(&self) -> Option<Projector> {
        let picture = self.picture_width.clone().zip(self.picture_at.clone());
        let projector = Projector {
            class: self.projector.clone(),
            lumens: self.box_lumens.map(Lumens::OnBox).or(self.measured_lumens.map(Lumens::Measured)),
            picture: picture.map(|(width, at)| Measured { width, at }),
        };
        (projector != Projector::default()).then_some(projector)
    }

    /// A fault with the option that it lies in, and what to say there.
    fn failure(&self, fault: &AskFault) -> Failure {
        let lumens = if self.measured_lumens.is_some() { "--measured-lumens" } else { "--box-lumens" };
        let option = match fault.part() {
            Some(Part::Target) => "--target",
            Some(Part::Width) => "--width",
            Some(Part::Height) => "--height",
            Some(Part::LowerEdge) => "--lower-edge",
            Some(Part::Distance) => "--distance",
            Some(Part::Projector) => "--projector",
            Some(Part::Lumens) => lumens,
            Some(Part::Picture) => "--picture-width and --picture-at",
            Some(Part::Street) => "--street",
            Some(Part::Fabric) => "--fabric",
            None => return Failure::options(fault),
        };
        let AskFault::Doubted(doubt) = fault else { return Failure::options(format_args!("{option}: {fault}")) };
        let instead = match doubt.likelier {
            Some(Lumens::OnBox(lm)) => {
                format!("Which was meant? Say --box-lumens {lm} if that is printed on its box, or")
            }
            Some(Lumens::Measured(lm)) => {
                format!("Which was meant? Say --measured-lumens {lm} if that was measured, or")
            }
            None => "Check the number, or".to_owned(),
        };
        Failure::options(format_args!("{option}: {}. {instead} name the class that it is by --projector", doubt.why()))
    }
}

/// A length that an option says, where it may be so long.
fn checked(span: &Span, said: &Option<Length>) -> Result<Option<Length>, AskFault> {
    said.as_ref().map(|said| span.check(said).map(|_| said.clone())).transpose()
}

/// What has the size that is asked for.
fn lit(target: Target) -> &'static str {
    match target {
        Target::Wall => "part of the wall that is lit",
        Target::Window | Target::Cloth | Target::Form => target.name(),
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
