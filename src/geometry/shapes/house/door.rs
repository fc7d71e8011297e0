//! Doors: the leaf of a closed one.

use super::body::Body;
use super::hole::Hole;
use crate::geometry::Built;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::lattice::block;
use crate::scene::Door;
use glam::Vec2;

/// How far the leaf reaches into the wall around it, m, so that no light passes between the two.
const LET_IN: f32 = 0.01;

/// Front and back of the leaf behind the outer face: 5 and 9 cm, less in a thin wall.
fn leaf(wall: f32) -> [f32; 2] {
    let front = 0.05f32.min(0.4 * wall);
    [front, front + 0.04f32.min(0.4 * wall)]
}

/// How deep a filled wall is cut for a closed door: to the middle of the leaf.
pub fn leaf_depth(wall: f32) -> f32 {
    let [front, back] = leaf(wall);
    0.5 * (front + back)
}

/// Builds a door into its hole; the answer is its owner.
pub fn build(door: &Door, hole: &Hole, body: &Body, frame: &Frame, built: &mut Built) -> u32 {
    let wall = frame.nest(&hole.wall);
    let [front, back] = leaf(body.wall);
    let face = wall.upright(hole.lo, hole.hi, -front);
    let owner = built.enter(&door.name, face.middle(), Some(face));
    if hole.is_cut() && !door.open {
        let rim = Vec2::splat(LET_IN);
        let mesh = block((hole.lo - rim).extend(-back), (hole.hi + rim).extend(-front), OUTDOORS);
        built.solid(owner, wall.place(mesh), &door.surface);
    }
    owner
}
