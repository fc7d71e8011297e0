//! The answers to the five questions, checked and turned into places: where target, lens, lamp and spot stand.
//!
//! The target's face stands at z = 0 and looks at the street; heights are above the ground; all in metres.

use super::{
    AskFault, Part, Question, Span, Target,
    choice::{Tape, pick},
    projector::Means,
};
use crate::scene::{Catalogue, Fabric, FabricKind};

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
    /// Height of its lower edge above the ground, m.
    pub base: f64,
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
        let width = Span::WIDTH.check(&question.width)?;
        let distance = Span::DISTANCE.check(&question.distance)?;
        let base = Span::LOWER_EDGE.check(&question.lower_edge())?;
        let means = question.projector.means(catalogue)?;
        let aspect = means.aspect();
        let shape = if question.upright { aspect } else { 1.0 / aspect };
        let height = match &question.height {
            Some(height) => Span::HEIGHT.check(height)?,
            None => Tape(question.units).length((width * shape).min(20.0)).m,
        };
        let (along, across) = if question.upright { (height, width) } else { (width, height) };
        let long_fits = along.min(across * aspect);
        let [wide, tele] = means.throw;
        // A lens that zooms is set so that the picture fits, as far as it can.
        let throw = (distance / long_fits).clamp(wide, tele);
        let fabric = fabric(question, catalogue)?;
        Ok(Self { question, means, fabric, height, base, throw, long: distance / throw, long_fits })
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

    /// Height of the picture's middle, m.
    pub fn middle(&self) -> f64 {
        self.base + 0.5 * self.height
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

    /// Where people stand: three times the target's longer edge away and 5 m at least, a little to the right; x and z.
    pub fn spot(&self) -> [f64; 2] {
        let tape = Tape(self.question.units);
        let step = tape.round(0.5, 1.0);
        let z = (3.0 * self.question.width.m.max(self.height)).max(tape.round(5.0, 16.0));
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
            Some(said) => Err(AskFault::Unfit {
                part: Part::Fabric,
                why: format!(
                    "a {} is no fabric, so “{said}” has no place; leave the fabric out, or light a window or a cloth",
                    target.name()
                ),
            }),
            None => Ok(None),
        };
    };
    let fitting: Vec<&Fabric> = catalogue.fabrics.iter().filter(|fabric| suits(target, fabric)).collect();
    let names: Vec<&str> = fitting.iter().map(|fabric| fabric.name.0.as_str()).collect();
    let what = if target == Target::Window { "rear film" } else { "hanging fabric" };
    let said = question.fabric.as_deref().unwrap_or(usual);
    pick(Part::Fabric, what, said, &names).map(|index| Some(fitting[index]))
}
