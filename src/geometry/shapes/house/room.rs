//! The room behind an opening: a box that faces inwards, joined to the opening's reveal.

use super::body::{Body, Inside};
use super::hole::Hole;
use crate::geometry::shapes::INDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::lattice::Lattice;
use crate::geometry::{Mesh, Solid};
use crate::scene::Room;
use glam::Vec3;

/// How much wider than its opening a room is at each side, m.
const SIDE: f32 = 0.6;

/// How far its floor lies below the sill, m, where the house is high enough and nobody says.
const BELOW: f32 = 0.9;

/// How far its ceiling lies above the opening's head, m.
const ABOVE: f32 = 0.3;

/// What stands between a room and the foot, the eaves or the next room at least, m.
const FLOOR: f32 = 0.02;
const CEILING: f32 = 0.05;
const PARTITION: f32 = 0.1;

/// Thickness of the case around a room behind a free-standing wall, m.
const CASE: f32 = 0.06;

/// Gives each hole that wants a room its place behind the wall. Where two rooms of one house would meet, both end
/// half-way between their openings.
pub fn allot(holes: &mut [Hole], body: &Body) {
    for hole in holes.iter_mut() {
        hole.chamber = hole.room.map(|room| chamber(hole, room, body));
    }
    for j in 1..holes.len() {
        let (before, rest) = holes.split_at_mut(j);
        for other in before {
            part(other, &mut rest[0], body.wall);
        }
    }
}

/// A room as large as its opening wants it and its house allows.
fn chamber(hole: &Hole, room: &Room, body: &Body) -> Bounds {
    let sheet = body.inside == Inside::Sheet;
    let margin = if sheet { CASE } else { body.wall };
    let (along, deep) = if hole.wall.out.z.abs() > 0.5 { (body.width, body.depth) } else { (body.depth, body.width) };
    let depth = if sheet { room.depth.f32() } else { room.depth.f32().min(deep - 2.0 * body.wall) };
    // The opening itself always fits, however near to a corner it is.
    let left = (hole.lo.x - SIDE).max(margin).min(hole.lo.x);
    let right = (hole.hi.x + SIDE).min(along - margin).max(hole.hi.x);
    let said = room.floor.as_ref().map_or(hole.lo.y - BELOW, |floor| floor.f32());
    let floor = said.clamp(FLOOR, hole.lo.y.max(FLOOR));
    let ceiling = (hole.hi.y + ABOVE).min(body.height - CEILING).max(hole.hi.y);
    let near = hole.wall.point(Vec3::new(left, floor, -body.wall));
    Bounds::between(near, hole.wall.point(Vec3::new(right, ceiling, -body.wall - depth)))
}

/// Draws a partition between two rooms that meet, across the axis that leaves most to the narrower
/// of them.
fn part(a: &mut Hole, b: &mut Hole, wall: f32) {
    let (Some(room_a), Some(room_b)) = (a.chamber, b.chamber) else { return };
    if !room_a.grown(0.5 * PARTITION).overlaps(&room_b.grown(0.5 * PARTITION)) {
        return;
    }
    let (inner_a, inner_b) = (a.between(wall, wall), b.between(wall, wall));
    let mut best = 0.0;
    for axis in 0..3 {
        let (mut left_a, mut left_b) = (room_a, room_b);
        if inner_a.hi[axis] < inner_b.lo[axis] {
            separate(axis, (inner_a, &mut left_a), (inner_b, &mut left_b));
        } else if inner_b.hi[axis] < inner_a.lo[axis] {
            separate(axis, (inner_b, &mut left_b), (inner_a, &mut left_a));
        } else {
            continue;
        }
        let least = (left_a.hi - left_a.lo)[axis].min((left_b.hi - left_b.lo)[axis]);
        if least > best {
            best = least;
            (a.chamber, b.chamber) = (Some(left_a), Some(left_b));
        }
    }
}

/// Ends two rooms, each given with its opening, half-way between the openings; one that ends earlier leaves the rest
/// to the other.
fn separate(axis: usize, (opening_low, low): (Bounds, &mut Bounds), (opening_high, high): (Bounds, &mut Bounds)) {
    let (from, to) = (opening_low.hi[axis], opening_high.lo[axis]);
    let thick = PARTITION.min(0.5 * (to - from));
    let middle = 0.5 * (from + to);
    let (end, start) = (low.hi[axis], high.lo[axis]);
    low.hi[axis] = end.min((middle - 0.5 * thick).max(start - thick));
    high.lo[axis] = start.max((middle + 0.5 * thick).min(end + thick));
}

/// The surfaces of a room and of the reveal from the wall's cut inwards, open only at the mouth.
pub fn lining(owner: u32, room: &Room, hole: &Hole, chamber: &Bounds, body: &Body, frame: &Frame) -> Solid {
    let reveal = hole.between(hole.deep, body.wall);
    let further: [[f32; 4]; 3] = std::array::from_fn(|a| [chamber.lo[a], chamber.hi[a], reveal.lo[a], reveal.hi[a]]);
    let mut mesh = Lattice::new(chamber.with(reveal), further.each_ref().map(<[f32; 4]>::as_slice), INDOORS)
        .keep(|p| chamber.contains(p) || reveal.contains(p))
        .surface_where(|middle, _| !hole.is_mouth(middle));
    face_inwards(&mut mesh);
    let reflectance = Some(room.reflectance.0 as f32);
    Solid { owner, mesh: frame.place(mesh), surface: String::new(), reflectance, indoors: true }
}

/// The case around a room behind a free-standing wall.
pub fn case(chamber: &Bounds, body: &Body) -> Bounds {
    let mut case = chamber.grown(CASE);
    case.lo.y = case.lo.y.max(0.0);
    case.hi.y = case.hi.y.min(body.height);
    // From within the wall, so that the two are one.
    case.hi.z = -0.5 * body.wall;
    case
}

fn face_inwards(mesh: &mut Mesh) {
    mesh.triangles.iter_mut().for_each(|t| t.swap(1, 2));
}
