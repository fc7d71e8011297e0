//! Five questions about one station, answered by the same light as everything else.
//!
//! What do you light, how large is it and how high up, from how far, with which projector, and how dark is the street? A
//! little yard is written from the answers, lit, read and judged like any other, so that numbers and word are those of its
//! readings; whoever wants to go on opens that yard.

mod choice;
mod fault;
mod help;
mod lumens;
mod plan;
mod projector;
mod span;
mod stand;
mod verdict;

pub use super::Word;
pub use crate::craft::Measured;
pub use choice::{Street, Target};
pub use fault::AskFault;
pub use help::Help;
pub use lumens::{Doubt, Lumens};
pub use projector::Projector;
pub use span::{Part, Span};
pub use verdict::Verdict;

use super::{Limits, SpotReading, StationReading, Weights, read_station, sightings};
use crate::{
    frames::Shelf,
    light::{Night, Source, luma},
    scene::{Catalogue, Units, Yard},
    units::{Length, border},
};
use choice::Tape;
use glam::Vec3;
use plan::Plan;
use serde::Serialize;
use std::path::Path;

/// The five questions, and what few people need to say.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// What is lit.
    pub target: Target,
    /// How wide it is; the picture is meant to fill it.
    pub width: Length,
    /// How high it is; as high as a picture that fills its width where nothing is said.
    pub height: Option<Length>,
    /// How high its lower edge is above the ground; as high as usual where nothing is said.
    pub lower_edge: Option<Length>,
    /// From the lens to it.
    pub distance: Length,
    /// What lights it.
    pub projector: Projector,
    /// How dark it is around.
    pub street: Street,
    /// What it is made of, by name; its usual fabric where nothing is said. Only windows and cloths are made of fabric.
    pub fabric: Option<String>,
    /// Whether the projector lies on its side.
    pub upright: bool,
    /// Whether the street's lamp is off or shaded.
    pub lamp_off: bool,
    /// Units of the little yard, and of lengths in the answer's sentences.
    pub units: Units,
}

impl Question {
    /// The usual question about a target.
    pub fn usual(target: Target, units: Units) -> Self {
        let (width, upright) = (target.usual_width(units), target.is_upright());
        let distance = Self::usual_distance(&width, None, upright, units);
        Self {
            target,
            width,
            height: None,
            lower_edge: None,
            distance,
            projector: Projector::default(),
            street: Street::LitStreet,
            fabric: None,
            upright,
            lamp_off: false,
            units,
        }
    }

    /// How high the target's lower edge is above the ground, as said or as usual.
    pub fn lower_edge(&self) -> Length {
        self.lower_edge.clone().unwrap_or_else(|| self.target.usual_lower_edge(self.units))
    }

    /// A usual distance for a target of this size: about where a throw ratio of 1.4 at 16:9 fills it as far as it fits both ways.
    pub fn usual_distance(width: &Length, height: Option<&Length>, upright: bool, units: Units) -> Length {
        let tape = Tape(units);
        let [along, across] = [width.m, height.map_or(f64::INFINITY, |height| height.m)];
        let long = if upright { across.min(along * 16.0 / 9.0) } else { along.min(across * 16.0 / 9.0) };
        let step = tape.round(0.1, 0.25);
        tape.length((1.4 * long / step).round().max(5.0) * step)
    }
}

/// The picture against its target.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Picture {
    /// Across, m.
    #[serde(serialize_with = "border::lengths")]
    pub width_m: f64,
    /// Upwards, m.
    #[serde(serialize_with = "border::lengths")]
    pub height_m: f64,
    /// Width of the target, m.
    #[serde(serialize_with = "border::lengths")]
    pub target_width_m: f64,
    /// Height of the target, m.
    #[serde(serialize_with = "border::lengths")]
    pub target_height_m: f64,
    /// Whether it stays within the target.
    pub fits: bool,
    /// From where it would fill the target, m.
    #[serde(serialize_with = "border::lengths")]
    pub fill_m: f64,
}

/// Light of the street on the target's face, the station's own left out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Ambient {
    /// By the street lamp, lx.
    #[serde(serialize_with = "border::light")]
    pub lamp_lx: f64,
    /// By the sky, lx.
    #[serde(serialize_with = "border::light")]
    pub sky_lx: f64,
}

impl Ambient {
    /// All of it, lx.
    pub fn total(&self) -> f64 {
        self.lamp_lx + self.sky_lx
    }
}

/// The answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Answer {
    /// Class of the projector.
    pub class: String,
    /// Fabric of the target, where it is made of one.
    pub fabric: Option<String>,
    /// The picture against its target.
    pub picture: Picture,
    /// The readings of the little yard's one station; lux and cd/m² with their bands.
    pub reading: StationReading,
    /// What the street puts on the target.
    pub ambient: Ambient,
    /// How it is seen from the viewing spot.
    pub verdict: Verdict,
    /// What would help, best first.
    pub help: Vec<Help>,
    /// What was guessed, and what to mind, in sentences.
    pub notes: Vec<String>,
    /// One line for the evening with the ladder.
    pub caution: String,
    /// The little yard.
    #[serde(skip)]
    pub yard: Yard,
    /// The text of its file, as a person would write it.
    #[serde(skip)]
    pub yard_text: String,
}

impl Answer {
    /// What the yard's one viewing spot sees.
    pub fn from_spot(&self) -> Option<&SpotReading> {
        self.reading.spots.first()
    }
}

/// Answers a question.
pub fn answer(question: &Question, catalogue: &Catalogue) -> Result<Answer, AskFault> {
    let plan = Plan::of(question, catalogue)?;
    let mut shelf = Shelf::beside(Path::new(""));
    fetch(&mut shelf, &plan);
    let now = judge(&plan, catalogue, &shelf)?;
    let help = help::helps(&plan, &now, catalogue, &mut shelf);
    let [width_m, height_m] = plan.picture();
    let picture = Picture {
        width_m,
        height_m,
        target_width_m: question.width.m,
        target_height_m: plan.height,
        fits: plan.fits(),
        fill_m: plan.fill(),
    };
    Ok(Answer {
        class: plan.means.class.name.0.clone(),
        fabric: plan.fabric.map(|fabric| fabric.name.0.clone()),
        picture,
        notes: notes(&plan),
        caution: caution(&plan),
        reading: now.reading,
        ambient: now.ambient,
        verdict: now.verdict,
        help,
        yard: now.yard,
        yard_text: now.text,
    })
}

/// A yard with its readings.
struct Judged {
    text: String,
    yard: Yard,
    reading: StationReading,
    ambient: Ambient,
    verdict: Verdict,
    /// What the figure has over its ground by the station's own light, cd/m².
    over_ground: f64,
}

/// Puts the picture of a plan on the shelf; those that the program carries cannot fail.
fn fetch(shelf: &mut Shelf, plan: &Plan<'_>) {
    shelf.fetch([plan.shown()]);
}

fn judge(plan: &Plan<'_>, catalogue: &Catalogue, shelf: &Shelf) -> Result<Judged, AskFault> {
    let text = stand::text(plan, catalogue)?;
    let yard = stand::parse(&text, catalogue)?;
    let night = Night::build(&yard, catalogue, shelf)?;
    let reading = read_station(&night, &yard, catalogue, 0).ok_or(AskFault::NoReading)?;
    let sightings = sightings(&night, &yard, catalogue, 0).ok_or(AskFault::NoReading)?;
    let sighting = sightings.first().ok_or(AskFault::NoReading)?;
    let limits = Limits::of(&yard, catalogue);
    let verdict = Verdict::of(sighting.under(&Weights::default(), &limits));
    let mut alone = Weights(vec![0.0; night.sources.len()]).with(sighting.disc(), 0.0);
    for (weight, source) in alone.0.iter_mut().zip(&night.sources) {
        *weight = f64::from(u8::from(matches!(source, Source::Station(..))));
    }
    let own = sighting.under(&alone, &limits);
    let over_ground = own.map_or(0.0, |own| (own.mean.typical - own.ground.typical).max(0.0));
    let ambient = ambient(&night, stand::meter(plan));
    Ok(Judged { text, reading, ambient, verdict, over_ground, yard })
}

fn ambient(night: &Night, at: Vec3) -> Ambient {
    let mut ambient = Ambient { lamp_lx: 0.0, sky_lx: 0.0 };
    for (source, lx) in night.sources.iter().zip(night.illuminance(at, Vec3::Z).lx) {
        let lx = f64::from(luma(lx));
        match source {
            Source::Station(..) => {}
            Source::Lamp(_) | Source::Room { .. } => ambient.lamp_lx += lx,
            Source::Sun | Source::Moon | Source::Sky => ambient.sky_lx += lx,
        }
    }
    ambient
}

fn notes(plan: &Plan<'_>) -> Vec<String> {
    let tape = Tape(plan.question.units);
    let class = plan.means.class;
    let mut notes = plan.means.notes.clone();
    let [wide, tele] = plan.means.throw;
    if tele > wide {
        notes.push(format!("Its lens zooms, and is set to a throw ratio of {:.2} (of {wide} to {tele}).", plan.throw));
    }
    let lens = plan.lens()[1];
    if plan.question.target != Target::Window && lens > LADDER {
        let high = tape.near(lens);
        notes.push(format!(
            "Its lens is {high} above the ground, level with the picture: from lower down the picture leans."
        ));
    }
    if plan.question.distance.m < class.nearest.0.m {
        notes.push(format!("It cannot be sharp nearer than {}.", tape.length(class.nearest.0.m)));
    }
    let (real, claimed) = (class.pixels, class.claimed_pixels);
    if real.0 < claimed.0 {
        notes.push(format!("It has {} by {} pixels, whatever else it takes in.", real.0, real.1));
    }
    notes
}

/// Above this a lens is reached from a ladder, m.
const LADDER: f64 = 1.8;

fn caution(plan: &Plan<'_>) -> String {
    let mut line = "Do not stare into the beam.".to_owned();
    if plan.lens()[1] > LADDER {
        line += " Two people to a ladder.";
    }
    line += match plan.question.target {
        Target::Window => " Leave air around the projector, and nothing that burns against it.",
        _ => " Outdoor mains: leads and sockets made for it, behind a residual-current device, by your local code.",
    };
    line
}
