//! Points of the site that a tape can be hooked to, each with its name, and the one that all coordinates start from.
//!
//! A mark stays where it is: on a house, a wall, a post, steps or the edge of an opening, never on cloth, film, mirror, plant or form,
//! which are hung, grow, sway or are set down anew. And it is one that a hand reaches.

use crate::{
    geometry::Quad,
    light::Night,
    scene::{Thing, Yard},
};
use glam::DVec3;

/// Height that a hand reaches with both feet on the ground, m: common practice, no source.
pub const BY_HAND_M: f64 = 2.1;
/// Height that a hand reaches from a ladder that people have, m: common practice, no source.
pub const BY_LADDER_M: f64 = 4.0;
/// How far from where one works a hand reaches a mark that is higher than both, m: up, down and aside.
const BESIDE_M: f64 = 1.5;

/// A named corner or edge.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// The thing that it is on.
    pub owner: String,
    /// Which point of that thing.
    pub part: String,
    /// Where, m.
    pub at: DVec3,
}

/// How a mark is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reach {
    /// From the ground.
    Hand,
    /// From a ladder, or from beside the point that is set.
    Ladder,
}

impl Mark {
    /// What people call it: `shed: front left corner, foot`.
    pub fn name(&self) -> String {
        format!("{}: {}", self.owner, self.part)
    }

    /// How it is reached by somebody who sets a point; `None` where nobody gets to it.
    pub fn reach(&self, point: DVec3) -> Option<Reach> {
        let way = self.at - point;
        let is_beside = way.y.abs() <= BESIDE_M && way.with_y(0.0).length() <= 2.0 * BESIDE_M;
        match self.at.y {
            y if y <= BY_HAND_M => Some(Reach::Hand),
            y if y <= BY_LADDER_M || is_beside => Some(Reach::Ladder),
            _ => None,
        }
    }
}

/// Where coordinates start, and which way they run.
#[derive(Clone, Debug, PartialEq)]
pub struct Datum {
    /// What people call the point.
    pub name: String,
    /// Where it is, on the ground, m.
    pub at: DVec3,
    /// To the right along the front, seen from the street.
    pub along: DVec3,
    /// From the front towards the street.
    pub out: DVec3,
}

impl Datum {
    /// The left foot of the first house's front, else of the first wall's; else the yard's own middle.
    pub fn of(yard: &Yard) -> Self {
        let houses = yard.houses.iter().map(|h| (&h.name.0, &h.at, &h.width, h.turn_deg, "front left corner, foot"));
        let walls = yard.walls.iter().map(|w| (&w.name.0, &w.at, &w.width, w.turn_deg, "lower left corner"));
        // What stands in a roof is nothing to measure from.
        let grounded = houses.chain(walls).find(|(name, at, ..)| at.0[1].m.abs() < 0.05 && !yard.is_hidden(name));
        match grounded {
            Some((name, at, width, turn, part)) => {
                let (along, out) = axes(turn.0);
                let foot = point(at) - 0.5 * width.0.m * along;
                Self { name: format!("{name}: {part}"), at: foot.with_y(0.0), along, out }
            }
            None => Self { name: "the middle of the yard".to_owned(), at: DVec3::ZERO, along: DVec3::X, out: DVec3::Z },
        }
    }

    /// A point by its distance along, its height, and its distance out, m.
    pub fn coordinates(&self, at: DVec3) -> [f64; 3] {
        let way = at - self.at;
        [way.dot(self.along), at.y, way.dot(self.out)]
    }

    /// A way by its parts along, up and out.
    pub fn turned(&self, way: DVec3) -> DVec3 {
        DVec3::new(way.dot(self.along), way.y, way.dot(self.out))
    }
}

/// Right and out of what is turned about the vertical, degrees counter-clockwise from above.
fn axes(turn_deg: f64) -> (DVec3, DVec3) {
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    (DVec3::new(cos, 0.0, -sin), DVec3::new(sin, 0.0, cos))
}

fn point(at: &crate::scene::Point) -> DVec3 {
    DVec3::from([0, 1, 2].map(|axis| at.0[axis].m))
}

const CORNERS: [&str; 4] = ["lower left corner", "lower right corner", "upper left corner", "upper right corner"];

/// The four corners of a face: lower left, lower right, upper left, upper right, seen from its front.
pub(super) fn face_corners(face: &Quad) -> [DVec3; 4] {
    [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)].map(|(s, t)| face.point(s, t).as_dvec3())
}

/// Every mark of a yard that is not put away, in the yard's order.
pub fn marks(yard: &Yard, night: &Night) -> Vec<Mark> {
    let mut list = Vec::new();
    for house in yard.houses.iter().filter(|house| !yard.is_hidden(&house.name.0)) {
        let (along, out) = axes(house.turn_deg.0);
        let (foot, half) = (point(&house.at), 0.5 * house.width.0.m * along);
        let parts = ["front left corner", "front right corner", "back left corner", "back right corner"];
        let ways = [-half, half, -half - house.depth.0.m * out, half - house.depth.0.m * out];
        for (part, way) in parts.into_iter().zip(ways) {
            for (up, name) in [(0.0, "foot"), (house.height.0.m, "eaves")] {
                let at = foot + way + up * DVec3::Y;
                list.push(Mark { owner: house.name.0.clone(), part: format!("{part}, {name}"), at });
            }
        }
    }
    let faced = |name: &str, list: &mut Vec<Mark>| {
        if let Some(face) = night.place(name).and_then(|place| place.face).filter(|_| !yard.is_hidden(name)) {
            for (part, at) in CORNERS.into_iter().zip(face_corners(&face)) {
                list.push(Mark { owner: name.to_owned(), part: part.to_owned(), at });
            }
        }
    };
    let walls = yard.walls.iter().map(|wall| &wall.name);
    let openings = yard.houses.iter().flat_map(|h| &h.openings).chain(yard.walls.iter().flat_map(|w| &w.openings));
    for name in walls.chain(openings.map(|opening| opening.name())) {
        faced(&name.0, &mut list);
    }
    for thing in yard.things.iter().filter(|thing| !yard.is_hidden(&thing.name().0)) {
        for (part, at) in on_thing(thing) {
            list.push(Mark { owner: thing.name().0.clone(), part: part.to_owned(), at });
        }
        if matches!(thing, Thing::Block(_)) {
            faced(&thing.name().0, &mut list);
        }
    }
    list
}

fn on_thing(thing: &Thing) -> Vec<(&'static str, DVec3)> {
    let up = |m: f64| m * DVec3::Y;
    match thing {
        Thing::Post(post) => vec![("top, middle", point(&post.at) + up(post.height.0.m))],
        Thing::Fence(fence) => {
            let ends = [("one end, top", &fence.from), ("other end, top", &fence.to)];
            ends.map(|(part, at)| (part, point(at) + up(fence.height.0.m))).to_vec()
        }
        Thing::Steps(steps) => {
            let half = 0.5 * steps.width.0.m * axes(steps.turn_deg.0).0;
            let edge = point(&steps.at) + up(steps.rise.0.m);
            vec![
                ("lowest step, left end of its edge", edge - half),
                ("lowest step, right end of its edge", edge + half),
            ]
        }
        Thing::Pergola(pergola) => {
            let (along, out) = axes(pergola.turn_deg.0);
            let (half, deep) = (0.5 * pergola.width.0.m * along, 0.5 * pergola.depth.0.m * out);
            let foot = point(&pergola.at);
            let parts = [
                ("front left post, outer corner, foot", deep - half),
                ("front right post, outer corner, foot", deep + half),
                ("back left post, outer corner, foot", -deep - half),
                ("back right post, outer corner, foot", half - deep),
            ];
            parts.map(|(part, way)| (part, foot + way)).to_vec()
        }
        Thing::Porch(porch) => {
            let (along, out) = axes(porch.turn_deg.0);
            let half = 0.5 * porch.width.0.m * along;
            let edge = point(&porch.at) + porch.depth.0.m * out + up(porch.deck.0.m);
            vec![("deck, front left corner", edge - half), ("deck, front right corner", edge + half)]
        }
        Thing::Block(_) | Thing::Bench(_) => Vec::new(),
    }
}

/// The marks that pages use, with the numbers that they have on paper.
pub(super) struct Listed<'a> {
    known: &'a [Mark],
    used: Vec<usize>,
}

impl<'a> Listed<'a> {
    /// Those of the known marks that are used, by ascending index.
    pub fn of(known: &'a [Mark], used: Vec<usize>) -> Self {
        Self { known, used }
    }

    /// What a mark is called on paper, by its index: M1 is the first.
    pub fn sign(&self, mark: usize) -> String {
        format!("M{}", self.used.binary_search(&mark).map_or(0, |at| at + 1))
    }

    /// A mark by its index.
    pub fn mark(&self, mark: usize) -> &'a Mark {
        &self.known[mark]
    }

    /// Each with its sign.
    pub fn each(&self) -> impl Iterator<Item = (String, &'a Mark)> {
        self.used.iter().map(|mark| (self.sign(*mark), &self.known[*mark]))
    }
}
