//! Free-standing walls.

use super::body::{Body, Inside};
use crate::geometry::Built;
use crate::geometry::shapes::frame::Frame;
use crate::scene::Wall;
use glam::Vec2;

/// Builds a free-standing wall. A window with glass in it has its room behind the wall, in a case of its own.
pub fn build(wall: &Wall, built: &mut Built) {
    let frame = Frame::turned(wall.at.vec3(), wall.turn_deg);
    let thick = wall.thickness.f32();
    let (width, height) = (wall.width.f32(), wall.height.f32());
    let body = Body { width, depth: thick, height, wall: thick, inside: Inside::Sheet };
    let face = frame.upright(Vec2::new(-0.5 * width, 0.0), Vec2::new(0.5 * width, height), 0.0);
    let owner = built.enter(&wall.name, face.middle(), Some(face));
    body.build(owner, &frame, &wall.openings, &wall.surface, built);
}
