//! A place known on the photo and on the wall, and whether a handful of them can settle a map.

use super::{SquareUpFault, Where};
use glam::DVec2;

/// The most marks that are taken; all their triples are looked at.
const MOST_MARKS: usize = 64;
/// Marks nearer than this on the photo, px, are one.
const NEAREST_PHOTO: f64 = 1.0;
/// Marks nearer than this on the wall, m, are one.
const NEAREST_WALL: f64 = 1e-3;
/// No photo has as many pixels on a side.
const FURTHEST_PHOTO: f64 = 1e6;
/// No wall is as long, m.
const FURTHEST_WALL: f64 = 1e4;
/// A triangle whose height is less than this part of its longest side counts as a line. Chosen, no source: at this, a
/// click one pixel off moves the map by some hundred pixels across the line.
const FLAT: f64 = 0.01;

/// A place that is known on both sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark {
    /// On the photo, px: to the right and down from the upper left corner.
    pub photo: DVec2,
    /// On the wall, m: along it from its left end, up from its foot.
    pub wall: DVec2,
}

impl Mark {
    fn place(&self, side: Where) -> DVec2 {
        match side {
            Where::Photo => self.photo,
            Where::Wall => self.wall,
        }
    }
}

/// Whether a camera before the wall can have seen the marks so, and whether they settle where it stood.
pub(super) fn check(marks: &[Mark]) -> Result<(), SquareUpFault> {
    for place in [Where::Photo, Where::Wall] {
        let furthest = if place == Where::Photo { FURTHEST_PHOTO } else { FURTHEST_WALL };
        for (mark, at) in marks.iter().map(|mark| mark.place(place)).enumerate() {
            if !at.is_finite() {
                return Err(SquareUpFault::NotFinite { mark, place });
            } else if at.abs().max_element() > furthest {
                return Err(SquareUpFault::FarOff { mark, place });
            }
        }
    }
    match marks.len() {
        given @ 0..4 => return Err(SquareUpFault::TooFew { given }),
        given if given > MOST_MARKS => return Err(SquareUpFault::TooMany { given, most: MOST_MARKS }),
        _ => (),
    }
    for place in [Where::Photo, Where::Wall] {
        let places: Vec<DVec2> = marks.iter().map(|mark| mark.place(place)).collect();
        let nearest = if place == Where::Photo { NEAREST_PHOTO } else { NEAREST_WALL };
        if let Some(marks) = pairs(places.len()).find(|[a, b]| places[*a].distance(places[*b]) < nearest) {
            return Err(SquareUpFault::Coincide { marks, place });
        }
        if let Some(marks) = line(&places) {
            return Err(SquareUpFault::OnALine { marks, place });
        }
    }
    match sense(marks) {
        Sense::Front => Ok(()),
        Sense::Back => Err(SquareUpFault::Mirrored),
        Sense::Mixed => Err(SquareUpFault::Crossed { swapped: swapped(marks) }),
    }
}

/// The marks that lie on one line if they are so many that the rest cannot settle a map: a map needs four of which no
/// three are on a line, and there are such four unless one line holds all places but one.
fn line(places: &[DVec2]) -> Option<Vec<usize>> {
    pairs(places.len()).find_map(|[a, b]| {
        let on = |c: &usize| [a, b].contains(c) || turn(places[a], places[b], places[*c]).abs() < FLAT;
        let on: Vec<usize> = (0..places.len()).filter(on).collect();
        (on.len() + 1 >= places.len()).then_some(on)
    })
}

/// How triangles of marks run round on the photo, against the wall.
#[derive(PartialEq)]
enum Sense {
    /// All as seen from before the wall.
    Front,
    /// All the other way.
    Back,
    /// Some so, some so.
    Mixed,
}

/// A projective map that has all places before the camera keeps the sense of every triangle or turns that of every one;
/// down on the photo is up on the wall, so seen from the front it turns them.
fn sense(marks: &[Mark]) -> Sense {
    let (mut front, mut back) = (false, false);
    for [a, b] in pairs(marks.len()) {
        for c in b + 1..marks.len() {
            let [photo, wall] = [Where::Photo, Where::Wall]
                .map(|side| turn(marks[a].place(side), marks[b].place(side), marks[c].place(side)));
            if photo.abs() >= FLAT && wall.abs() >= FLAT {
                front |= photo * wall < 0.0;
                back |= photo * wall > 0.0;
            }
        }
    }
    match (front, back) {
        (true, true) => Sense::Mixed,
        (false, true) => Sense::Back,
        _ => Sense::Front,
    }
}

/// The two marks that would all be well with if they were swapped on the photo, where only one pair would.
fn swapped(marks: &[Mark]) -> Option<[usize; 2]> {
    let mut mending = pairs(marks.len()).filter(|[a, b]| {
        let mut tried = marks.to_vec();
        (tried[*a].photo, tried[*b].photo) = (marks[*b].photo, marks[*a].photo);
        sense(&tried) == Sense::Front
    });
    mending.next().filter(|_| mending.next().is_none())
}

/// The height of a triangle over its longest side, as a part of that side; its sign is the way the corners run round.
fn turn(a: DVec2, b: DVec2, c: DVec2) -> f64 {
    let longest = a.distance_squared(b).max(b.distance_squared(c)).max(c.distance_squared(a));
    (b - a).perp_dot(c - a) / longest
}

/// All pairs of `count` things.
fn pairs(count: usize) -> impl Iterator<Item = [usize; 2]> {
    (0..count).flat_map(move |a| (a + 1..count).map(move |b| [a, b]))
}
