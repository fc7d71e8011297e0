//! The answers to the five questions, checked and turned into places: where target, lens, lamp and spot stand.
//!
//! The target's face stands at z = 0 and looks at the street; heights are above the ground; all in metres.

use super::{
    AskFault, Question, Target,
    choice::{Tape, pick},
    projector::Means,
};
use crate::{
    scene::{Catalogue, Fabric, FabricKind},
    units::Length,
};

/// The lens hangs no lower than this above ground or floor, m.
const LOWEST_LENS: f64 = 0.3;
/// How far the room reaches beyond its window at each side, less what a projector needs to stand there, m.
const BESIDE_WINDOW: f64 = 0.45;
/// A picture counts as filling its target, not spilling over it, up to this much more, as a share.
const SPILL: f64 = 0.02;

/// A question checked, with what follows from it.
#[derive(Clone, Debug)]
pub(super) struct Plan<'a> {
    /// The question.
    pub question: &'a Question,
    /// The projector.
    pub means: Means<'a>,
    /// The fabric of the target, where it is one.
    pub fabric: Option<&'a Fabric>,
    /// Height of the target, m.
    pub height: f64,
    /// Distance over picture width.
    pub throw: f64,
    /// Longer edge of the picture on the target, m.
    pub long: f64,
    /// Longer edge of the largest picture that the target holds, m.
    pub long_fits: f64,
}

impl<'a> Plan<'a> {
    /// Checks a question.
    pub fn of(question: &'a Question, catalogue: &'a Catalogue) -> Result<Self, AskFault> {
        let width = within("a width", &question.width, 0.1, 20.0, "targets from 0.1 to 20 m wide are reckoned with")?;
        let way = "the lens stands from 0.3 to 60 m away";
        let distance = within("a distance", &question.distance, 0.3, 60.0, way)?;
        let means = question.projector.means(catalogue)?;
        let aspect = means.aspect();
        let shape = if question.upright { aspect } else { 1.0 / aspect };
        let height = match &question.height {
            Some(height) => within("a height", height, 0.1, 20.0, "targets from 0.1 to 20 m high are reckoned with")?,
            None => Tape(question.units).length((width * shape).min(20.0)).m,
        };
        let (along, across) = if question.upright { (height, width) } else { (width, height) };
        let long_fits = along.min(across * aspect);
        let [wide, tele] = means.throw;
        // A lens that zooms is set so that the picture fits, as far as it can.
        let throw = (distance / long_fits).clamp(wide, tele);
        let fabric = fabric(question, catalogue)?;
        Ok(Self { question, means, fabric, height, throw, long: distance / throw, long_fits })
    }

    /// Width and height of the picture on the target, m.
    pub fn picture(&self) -> [f64; 2] {
        let short = self.long / self.means.aspect();
        if self.question.upright { [short, self.long] } else { [self.long, short] }
    }

    /// Whether the picture stays within the target.
    pub fn fits(&self) -> bool {
        self.long <= self.long_fits * (1.0 + SPILL)
    }

    /// From where the picture would fill the target, m.
    pub fn fill(&self) -> f64 {
        self.throw * self.long_fits
    }

    /// Height of the target's lower edge, m.
    pub fn base(&self) -> f64 {
        let tape = Tape(self.question.units);
        match self.question.target {
            Target::Window => tape.round(1.0, 3.0),
            Target::Cloth => tape.round(0.4, 1.5),
            Target::Wall => tape.round(0.5, 1.5),
            Target::Form => 0.0,
        }
    }

    /// Height of the picture's middle, m.
    pub fn middle(&self) -> f64 {
        self.base() + 0.5 * self.height
    }

    /// The lens: x, y, z. It stands so that its axis meets the target squarely, wherever a built-in shift lifts the picture.
    pub fn lens(&self) -> [f64; 3] {
        let behind = self.question.target == Target::Window;
        let [sx, sy] = self.means.class.shift.0;
        let (across, up) = (sx * self.long, sy * self.long / self.means.aspect());
        // On its side the raster's right points down, and its up to the right as the projector looks.
        let (right, rise) = if self.question.upright { (up, -across) } else { (across, up) };
        let x = if behind { right } else { -right };
        let most = if behind { 0.5 * self.question.width.m + BESIDE_WINDOW } else { f64::INFINITY };
        let z = if behind { -self.question.distance.m } else { self.question.distance.m };
        [x.clamp(-most, most), (self.middle() - rise).max(LOWEST_LENS), z]
    }

    /// The street lamp, where the street has one: to the left, before the target and above it.
    pub fn lamp(&self) -> [f64; 3] {
        let tape = Tape(self.question.units);
        let high = tape.round(5.5, 18.0).max(self.middle() + tape.round(3.5, 11.0));
        [tape.round(-4.0, -13.0), high, tape.round(5.0, 16.0)]
    }

    /// Where people stand: three widths away and 5 m at least, a little to the right; x and z.
    pub fn spot(&self) -> [f64; 2] {
        let tape = Tape(self.question.units);
        let step = tape.round(0.5, 1.0);
        let z = (3.0 * self.question.width.m).max(tape.round(5.0, 16.0));
        let z = (z / step).ceil() * step;
        [(0.2 * z / step).round() * step, z]
    }

    /// Picture of the project's own that is thrown.
    pub fn shown(&self) -> &'static str {
        match (self.question.upright, self.question.target) {
            (true, Target::Cloth) => "owl_glide",
            (true, _) => "guardian",
            (false, Target::Window | Target::Form) => "owl_face",
            (false, Target::Cloth | Target::Wall) => "owl_wall",
        }
    }
}

fn within(what: &'static str, said: &Length, least: f64, most: f64, allowed: &'static str) -> Result<f64, AskFault> {
    if (least..=most).contains(&said.m) {
        return Ok(said.m);
    }
    Err(AskFault::Range { what, said: said.to_string(), allowed })
}

/// Whether a target can be made of a fabric: a window of film, a cloth of anything else.
pub(super) fn suits(target: Target, fabric: &Fabric) -> bool {
    let is_film = matches!(fabric.kind, FabricKind::Film { .. });
    match target {
        Target::Window => is_film,
        Target::Cloth => !is_film,
        Target::Wall | Target::Form => false,
    }
}

fn fabric<'a>(question: &Question, catalogue: &'a Catalogue) -> Result<Option<&'a Fabric>, AskFault> {
    let target = question.target;
    let Some(usual) = target.usual_fabric() else {
        return match &question.fabric {
            Some(said) => Err(AskFault::Unfit(format!(
                "a {} is no fabric, so “{said}” has no place; leave the fabric out, or light a window or a cloth",
                target.name()
            ))),
            None => Ok(None),
        };
    };
    let fitting: Vec<&Fabric> = catalogue.fabrics.iter().filter(|fabric| suits(target, fabric)).collect();
    let names: Vec<&str> = fitting.iter().map(|fabric| fabric.name.0.as_str()).collect();
    let what = if target == Target::Window { "rear film" } else { "hanging fabric" };
    let said = question.fabric.as_deref().unwrap_or(usual);
    pick(what, said, &names).map(|index| Some(fitting[index]))
}
