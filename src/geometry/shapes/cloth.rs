//! Hanging cloths.

use super::frame::Frame;
use crate::geometry::{Built, Outline, Quad, Veil, VeilKind};
use crate::scene::Cloth;

/// A hanging cloth as one parallelogram from the middle of its top edge down.
pub fn face(cloth: &Cloth) -> Quad {
    let frame = Frame::turned(cloth.at.vec3(), cloth.turn_deg);
    let u = cloth.width.f32() * frame.right;
    let v = cloth.height.f32() * frame.leaning(cloth.tilt_deg);
    Quad { corner: frame.at - 0.5 * u - v, u, v }
}

/// Builds a hanging cloth.
pub fn build(index: usize, cloth: &Cloth, built: &mut Built) {
    let quad = face(cloth);
    let owner = built.enter(&cloth.name, quad.middle(), Some(quad));
    built.veils.push(Veil { owner, outline: Outline::Flat(quad), kind: VeilKind::Cloth(index) });
}
