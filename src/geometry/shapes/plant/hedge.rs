//! Clipped hedges.

use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Outline, Veil, VeilKind};
use crate::scene::Hedge;
use glam::Vec3;

/// How far its crate reaches into the ground, m: a face on the ground itself would be met before or after it by chance.
const ROOTS: f32 = 0.1;

/// Builds a hedge as one crate of leaves.
pub fn build(hedge: &Hedge, built: &mut Built) {
    let (from, to) = (hedge.from.vec3(), hedge.to.vec3());
    let height = hedge.height.f32();
    let middle = 0.5 * (from + to) + 0.5 * height * Vec3::Y;
    let owner = built.enter(&hedge.name, middle, None);
    let Some(frame) = Frame::along(from, to) else { return };
    let half = 0.5 * Vec3::new((to - from).dot(frame.right), height + ROOTS, hedge.depth.f32());
    let kind = VeilKind::Crown { gap: hedge.gap.0 as f32, surface: hedge.surface.0.clone() };
    built.veils.push(Veil {
        owner,
        outline: Outline::Crate { middle: middle - 0.5 * ROOTS * Vec3::Y, half, turn: frame.turn() },
        kind,
    });
}
