//! The answer as a page of text.

use gauzelight::{
    judge::{
        Banded,
        ask::{Answer, Lumens, Picture, Question, Street},
        sight,
    },
    scene::Units,
    units::{Length, Style, illuminance, lux, two_digits, with_band},
};
use std::{fmt::Write as _, path::Path};

/// More ways to help than this are too many to read.
const MOST_HELP: usize = 5;

/// The page; `file` is where the little yard lies, if it could be written.
pub fn text(question: &Question, answer: &Answer, file: Option<&Path>) -> String {
    let mut page = String::new();
    // Writing to a string cannot fail.
    let _ = write(&mut page, question, answer, file);
    page
}

fn write(page: &mut String, question: &Question, answer: &Answer, file: Option<&Path>) -> std::fmt::Result {
    let made_of = answer.fabric.as_ref().map_or_else(String::new, |fabric| format!(" of {fabric}"));
    let (target, street) = (question.target.name(), street(question));
    let high = question
        .height
        .as_ref()
        .map_or_else(|| shown(answer.picture.target_height_m, question.units), Length::to_string);
    writeln!(
        page,
        "A {target}{made_of}, {} wide and {high} high, its lower edge {} above the ground, lit by a “{}” from {}; {street}.\n",
        question.width,
        question.lower_edge(),
        answer.class,
        question.distance
    )?;
    writeln!(page, "{}\n", answer.verdict.sentence)?;
    for asked in answer.verdict.sight.iter().flat_map(|sight| &sight.answers) {
        writeln!(page, "  {:<19}{}", name(asked.question), asked_of(asked))?;
    }
    let reading = &answer.reading;
    let from = match question.projector.lumens {
        Some(Lumens::Measured(_)) => "measured".to_owned(),
        Some(said @ Lumens::OnBox(_)) => format!("by {said}"),
        None => "by its class".to_owned(),
    };
    writeln!(page, "  light out          {}, {from}", banded(reading.lumens, "lm"))?;
    writeln!(page, "  picture            {}", picture(&answer.picture, question))?;
    writeln!(page, "  mean on the target {}", lit(reading.mean_on_target_lx, question.units))?;
    if reading.phone_check.on_target > 0 {
        writeln!(page, "  phone check        {}", lit(reading.phone_check.mean, question.units))?;
    }
    if let Some(seen) = answer.from_spot() {
        let off = seen.distance_m.map_or_else(String::new, |m| format!(", {} off", shown(m, question.units)));
        writeln!(page, "  figure             {}, seen from in front{off}", banded(seen.mean, "cd/m²"))?;
        writeln!(page, "  ground beside it   {}", banded(seen.ground, "cd/m²"))?;
        match seen.figure_to_ground {
            Some(ratio) => writeln!(page, "  figure : ground    {}", banded(ratio, ": 1"))?,
            None => writeln!(page, "  figure : ground    no dark part of the picture meets the {target}")?,
        }
    }
    let (ambient, total) = (&answer.ambient, answer.ambient.total());
    let of_which = match question.street.lamp_lx() {
        Some(_) => format!("; {} of it from the street lamp", lux(ambient.lamp_lx)),
        None => String::new(),
    };
    let exact = Banded { low: total, typical: total, high: total };
    writeln!(page, "  ambient on it      {}{of_which}", lit(exact, question.units))?;
    if !answer.help.is_empty() {
        writeln!(page, "\nWhat would help")?;
        for (index, help) in answer.help.iter().take(MOST_HELP).enumerate() {
            writeln!(page, "  {}. {}: {}; {}", index + 1, help.what, help.gain(), help.word.name())?;
        }
    }
    if !answer.notes.is_empty() {
        writeln!(page, "\nTo know")?;
        for note in &answer.notes {
            writeln!(page, "  {note}")?;
        }
    }
    writeln!(page, "\n{}", answer.caution)?;
    match file {
        Some(file) => writeln!(page, "\nA little yard to go on from: {0}\n  gauzelight {0}", file.display()),
        None => Ok(()),
    }
}

fn name(question: sight::Question) -> &'static str {
    match question {
        sight::Question::LightEnough => "light enough",
        sight::Question::FineEnough => "coarse enough",
        sight::Question::StandsOut => "stands out",
        sight::Question::HoldsItsOwn => "holds its own",
    }
}

/// A question's word with its number and its steps.
fn asked_of(asked: &sight::Answer) -> String {
    let Some(value) = asked.value else { return format!("{}: there is nothing to hold it against", asked.word.name()) };
    let [least, clear, strong] = asked.limits.map(two_digits);
    let number = with_band(value.low, value.typical, value.high, "");
    let least = match asked.question {
        sight::Question::LightEnough | sight::Question::StandsOut => format!("lost below {least}, else faint"),
        // Neither hides a figure.
        sight::Question::FineEnough => format!("faint below {clear}, and too fine to be read below {least}"),
        sight::Question::HoldsItsOwn => format!("faint below {clear}"),
    };
    format!("{}: {}; {least}; clear from {clear}, strong from {strong}", asked.word.name(), number.trim_end())
}

fn street(question: &Question) -> String {
    let name = question.street.name();
    let lamp = if question.lamp_off && question.street != Street::CountryLane { ", its lamp off" } else { "" };
    format!("{name}{lamp}")
}

fn picture(picture: &Picture, question: &Question) -> String {
    let length = |m: f64| shown(m, question.units);
    let name = question.target.name();
    let size = format!("{} wide, {} high", length(picture.width_m), length(picture.height_m));
    let fill = length(picture.fill_m);
    let near = (picture.fill_m / question.distance.m - 1.0).abs() < 0.02;
    match (picture.fits, near) {
        (_, true) => format!("{size}: it fills the {name}"),
        (true, false) => format!("{size}: it fits within the {name}, and would fill it from {fill}"),
        (false, false) => format!("{size}: too large for the {name}, which it would fill from {fill}"),
    }
}

/// A length to the centimetre or the half inch: a picture has no finer edge.
fn shown(m: f64, units: Units) -> String {
    let (style, step) = match units {
        Units::Metric => (Style::Metres, 0.01),
        Units::Feet => (Style::FeetInches, 0.0127),
    };
    Length::metres((m / step).round() * step).show(style)
}

fn banded(value: Banded, unit: &str) -> String {
    with_band(value.low, value.typical, value.high, unit)
}

/// Foot-candles beside lux, for who reads feet.
fn lit(lx: Banded, units: Units) -> String {
    illuminance(lx.low, lx.typical, lx.high, units == Units::Feet).join(", ")
}
