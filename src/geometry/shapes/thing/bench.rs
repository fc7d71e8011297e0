//! Benches.

use super::add_box;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Mesh};
use crate::scene::Bench;
use glam::Vec3;

/// Depth and height of the seat, its thickness, and height and thickness of the back, m.
const SEAT: [f32; 2] = [0.42, 0.45];
const PLANK: f32 = 0.04;
const BACK: [f32; 2] = [0.85, 0.03];

/// Width of a leg, and how far it stands in from the end, m.
const LEG: [f32; 2] = [0.06, 0.1];

/// Builds a seat on two legs, and a back.
pub fn build(bench: &Bench, built: &mut Built) {
    let frame = Frame::turned(bench.at.vec3(), bench.turn_deg);
    let (x, [deep, seat]) = (0.5 * bench.width.f32(), SEAT);
    let z = 0.5 * deep;
    let owner = built.enter(&bench.name, frame.point(seat * Vec3::Y), None);
    let mut mesh = Mesh::default();
    add_box(&mut mesh, [-x, seat - PLANK, -z], [x, seat, z]);
    let wide = LEG[0].min(0.4 * x);
    let foot = (x - LEG[1]).max(0.5 * x);
    for left in [-foot, foot - wide] {
        add_box(&mut mesh, [left, 0.0, -z], [left + wide, seat - PLANK, z]);
    }
    add_box(&mut mesh, [-x, seat, -z], [x, BACK[0], -z + BACK[1]]);
    built.solid(owner, frame.place(mesh), &bench.surface);
}
