//! Porches.

use super::add_box;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Mesh};
use crate::scene::Porch;
use glam::Vec3;

/// Thickness of the roof, m, and how far it reaches beyond deck and posts.
const ROOF: f32 = 0.12;
const OVERHANG: f32 = 0.15;

/// Builds a deck, two posts at its front corners and a flat roof.
pub fn build(porch: &Porch, built: &mut Built) {
    let frame = Frame::turned(porch.at.vec3(), porch.turn_deg);
    let (x, z) = (0.5 * porch.width.f32(), porch.depth.f32());
    let (deck, height) = (porch.deck.f32(), porch.height.f32().max(porch.deck.f32()));
    let owner = built.enter(&porch.name, frame.point(0.5 * Vec3::new(0.0, height, z)), None);
    let post = porch.post.f32().min(x).min(z);
    let mut mesh = Mesh::default();
    add_box(&mut mesh, [-x, 0.0, 0.0], [x, deck, z]);
    for left in [-x, x - post] {
        add_box(&mut mesh, [left, deck, z - post], [left + post, height, z]);
    }
    add_box(&mut mesh, [-x - OVERHANG, height, 0.0], [x + OVERHANG, height + ROOF, z + OVERHANG]);
    built.solid(owner, frame.place(mesh), &porch.surface);
}
