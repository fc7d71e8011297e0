//! Fold mirrors.

use super::frame::Frame;
use crate::geometry::{Built, Quad};
use crate::scene::FoldMirror;

/// Builds a fold mirror; its front is the silvered side.
pub fn build(mirror: &FoldMirror, built: &mut Built) {
    let frame = Frame::turned(mirror.at.vec3(), mirror.turn_deg);
    let u = mirror.width.f32() * frame.right;
    // The silvered side looks down where the top leans towards it.
    let v = mirror.height.f32() * frame.leaning(mirror.tilt_deg);
    let quad = Quad { corner: frame.at - 0.5 * (u + v), u, v };
    let owner = built.enter(&mirror.name, quad.middle(), Some(quad));
    built.mirrors.push((owner, quad));
}
