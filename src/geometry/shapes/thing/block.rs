//! Plain boxes.

use super::add_box;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Mesh};
use crate::scene::Block;
use glam::Vec2;

/// Builds a plain box; its face is its front.
pub fn build(block: &Block, built: &mut Built) {
    let frame = Frame::turned(block.at.vec3(), block.turn_deg);
    let (x, y, z) = (0.5 * block.width.f32(), block.height.f32(), 0.5 * block.depth.f32());
    let front = frame.upright(Vec2::new(-x, 0.0), Vec2::new(x, y), z);
    let owner = built.enter(&block.name, front.middle(), Some(front));
    let mut mesh = Mesh::default();
    add_box(&mut mesh, [-x, 0.0, -z], [x, y, z]);
    built.solid(owner, frame.place(mesh), &block.surface);
}
