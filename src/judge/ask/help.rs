//! What would help: each way tried out, its gain read, and the best told first.

use super::{
    AskFault, Judged, Question, Span, Target, Word,
    choice::Tape,
    plan::{Plan, suits},
    projector::Projector,
    verdict::Standing,
};
use crate::{
    frames::Shelf,
    scene::{Catalogue, Fabric, FabricKind},
    units::{border, two_digits},
};
use rayon::prelude::*;
use serde::Serialize;

/// A gain below this is not worth telling: as a factor, and in steps of the worst question.
const WORTH: f64 = 1.1;
const WORTH_STEPS: f64 = 0.1;
/// How much nearer a projector is tried whose picture fits already: a picture half the area.
const NEARER: f64 = 0.7;
/// How much farther away a picture must fill its target for that to be tried.
const FARTHER: f64 = 1.15;
/// The next class up gives at least so many times the light.
const NEXT_CLASS: f64 = 1.3;
/// A film that passes more than this straight on shows the lens itself, and is not proposed.
const LENS_SHOWS: f64 = 0.03;

/// One thing that would help, by a reading of the same yard with it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Help {
    /// What to do.
    pub what: String,
    /// The word it would then be.
    pub word: Word,
    /// How many times as bright the figure would be, by the station's own light.
    #[serde(serialize_with = "border::light")]
    pub brighter: f64,
    /// How many times as large figure : ground would be.
    #[serde(serialize_with = "border::light")]
    pub contrast: f64,
    /// How many times as much of the picture's light would land on the target.
    #[serde(serialize_with = "border::light")]
    pub on_target: f64,
}

impl Help {
    /// What is gained, in words.
    pub fn gain(&self) -> String {
        let gains = [
            (self.brighter, "as bright"),
            (self.contrast, "the contrast"),
            (self.on_target, "as much of its light on the target"),
        ];
        let told = gains.iter().filter(|(times, _)| *times >= WORTH);
        let told: Vec<String> = told.map(|(times, of)| format!("{}× {of}", two_digits(*times))).collect();
        if told.is_empty() { "less to compete with".to_owned() } else { told.join(", ") }
    }
}

/// Of what kind a way is; of each kind the best is told.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Kind {
    Closer,
    Farther,
    Fabric,
    Lamp,
    Street,
    Class,
    Upright,
}

/// Something that might help.
struct Way {
    kind: Kind,
    what: String,
    question: Question,
}

/// What would help, best first.
pub(super) fn helps(plan: &Plan<'_>, now: &Judged, catalogue: &Catalogue, shelf: &mut Shelf) -> Vec<Help> {
    let ways = ways(plan, catalogue);
    // What cannot be had is no help, so that a way that fails is left out.
    let plans: Vec<(&Way, Plan<'_>)> =
        ways.iter().filter_map(|way| Some((way, Plan::of(&way.question, catalogue).ok()?))).collect();
    for (_, plan) in &plans {
        super::fetch(shelf, plan);
    }
    let tried: Vec<(Kind, Standing, Help)> =
        plans.par_iter().filter_map(|(way, plan)| tried(way, plan, now, catalogue, shelf).ok()).collect();
    let from = now.verdict.standing();
    let mut best: Vec<(Kind, Standing, Help)> = Vec::new();
    for (kind, reached, help) in tried {
        let better = reached.word > from.word || (reached.word == from.word && reached.rung > from.rung + WORTH_STEPS);
        let helps = better || (kind == Kind::Upright && help.on_target >= WORTH);
        match best.iter_mut().find(|(other, ..)| *other == kind) {
            Some(held) if helps && reached.compare(held.1).is_gt() => *held = (kind, reached, help),
            None if helps => best.push((kind, reached, help)),
            _ => {}
        }
    }
    best.sort_by(|a, b| b.1.compare(a.1).then(a.0.cmp(&b.0)));
    best.into_iter().map(|(.., help)| help).collect()
}

fn tried(
    way: &Way,
    plan: &Plan<'_>,
    now: &Judged,
    catalogue: &Catalogue,
    shelf: &Shelf,
) -> Result<(Kind, Standing, Help), AskFault> {
    let then = super::judge(plan, catalogue, shelf)?;
    let times = |to: f64, from: f64| if from > 0.0 && to.is_finite() { to / from } else { 1.0 };
    let ratio = |judged: &Judged| judged.reading.spots.first()?.figure_to_ground;
    let help = Help {
        what: way.what.clone(),
        word: then.verdict.word,
        brighter: times(then.over_ground, now.over_ground),
        contrast: match (ratio(&then), ratio(now)) {
            (Some(after), Some(before)) => times(after.typical, before.typical),
            _ => 1.0,
        },
        on_target: times(1.0 - then.reading.misses, 1.0 - now.reading.misses),
    };
    Ok((way.kind, then.verdict.standing(), help))
}

fn ways(plan: &Plan<'_>, catalogue: &Catalogue) -> Vec<Way> {
    let now = plan.question;
    let name = now.target.name();
    let mut ways = Vec::new();
    let mut way = |kind: Kind, what: String, change: &dyn Fn(&mut Question)| {
        let mut question = now.clone();
        change(&mut question);
        ways.push(Way { kind, what, question });
    };
    closer(plan, &mut way);
    farther(plan, &mut way);
    for fabric in catalogue.fabrics.iter().filter(|fabric| worth_trying(plan, fabric)) {
        let fabric = &fabric.name.0;
        let what = match now.target {
            Target::Window => format!("another film: “{fabric}”"),
            _ => format!("a denser fabric: “{fabric}”"),
        };
        way(Kind::Fabric, what, &|q| q.fabric = Some(fabric.clone()));
    }
    if now.street.lamp_lx().is_some() && !now.lamp_off {
        way(Kind::Lamp, "switch the lamp off, or shade the target from it".to_owned(), &|q| q.lamp_off = true);
    }
    if let Some(darker) = now.street.darker().filter(|_| !now.lamp_off) {
        way(Kind::Street, format!("a darker spot: a {}", darker.name()), &|q| q.street = darker);
    }
    next_class(plan, catalogue, &mut way);
    if !now.upright && plan.height > now.width.m {
        let what = format!("lay the projector on its side, as the {name} is taller than wide");
        way(Kind::Upright, what, &|q| q.upright = true);
    }
    ways
}

type Take<'a> = dyn FnMut(Kind, String, &dyn Fn(&mut Question)) + 'a;

/// To where the picture fills the target; where it fits already, to where it is half as large.
fn closer(plan: &Plan<'_>, way: &mut Take<'_>) {
    let tape = Tape(plan.question.units);
    let nearest = plan.means.class.nearest.0.m;
    let name = plan.question.target.name();
    let now = plan.question.distance.m;
    let spills = !plan.fits();
    let wanted = if spills { plan.fill() } else { NEARER * now };
    let to = tape.near(wanted.max(nearest));
    if to.m >= now {
        return;
    }
    let what = if spills && wanted >= nearest {
        format!("come closer, to {to}, where the picture fills the {name}")
    } else {
        format!("come closer, to {to}, with a smaller picture")
    };
    way(Kind::Closer, what, &|q| q.distance = to.clone());
}

/// To where a picture that leaves much of the target dark fills it: a larger one is coarser, and shows more.
fn farther(plan: &Plan<'_>, way: &mut Take<'_>) {
    let (now, tape) = (plan.question.distance.m, Tape(plan.question.units));
    let to = tape.near(plan.fill());
    if plan.fill() >= FARTHER * now && Span::DISTANCE.check(&to).is_ok() {
        let what = format!("go back to {to}, where the picture fills the {}", plan.question.target.name());
        way(Kind::Farther, what, &|q| q.distance = to.clone());
    }
}

/// The next brighter class, from where its picture is as large.
fn next_class(plan: &Plan<'_>, catalogue: &Catalogue, way: &mut Take<'_>) {
    let enough = NEXT_CLASS * plan.means.lumens().typical;
    let brighter = catalogue.projectors.iter().filter(|class| class.lumens.typical >= enough);
    let Some(class) = brighter.min_by(|a, b| a.lumens.typical.total_cmp(&b.lumens.typical)) else { return };
    let to = Tape(plan.question.units).near((plan.long * class.throw_ratio.0).max(class.nearest.0.m));
    let what = format!("a brighter projector: “{}” from {to}", class.name.0);
    way(Kind::Class, what, &|q| {
        q.projector = Projector::class(&class.name.0);
        q.distance = to.clone();
    });
}

/// Denser cloth, or another film that hides the lens.
fn worth_trying(plan: &Plan<'_>, fabric: &Fabric) -> bool {
    let Some(now) = plan.fabric else { return false };
    let target = plan.question.target;
    let is_open = match target {
        Target::Window => straight(fabric) >= LENS_SHOWS,
        _ => straight(fabric) >= straight(now),
    };
    suits(target, fabric) && fabric.name != now.name && !is_open
}

/// What a fabric passes straight on, square to it.
fn straight(fabric: &Fabric) -> f64 {
    match &fabric.kind {
        FabricKind::Net { thread, .. } => (1.0 - thread.typical).powi(2),
        FabricKind::Cloth { through, .. } | FabricKind::Film { through, .. } => through.typical,
    }
}
