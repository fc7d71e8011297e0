//! Pergolas.

use super::add_box;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::{Built, Mesh};
use crate::scene::Pergola;
use glam::Vec3;

/// Width and height of a rafter, m.
const RAFTER: [f32; 2] = [0.05, 0.12];

/// Height of a beam, m.
const BEAM: f32 = 0.14;

/// How far beams and rafters reach beyond the posts, m.
const REACH: f32 = 0.15;

/// Builds four posts, a beam over the front ones and one over the back ones, and rafters across them.
pub fn build(pergola: &Pergola, built: &mut Built) {
    let frame = Frame::turned(pergola.at.vec3(), pergola.turn_deg);
    let (x, z, top) = (0.5 * pergola.width.f32(), 0.5 * pergola.depth.f32(), pergola.height.f32());
    let owner = built.enter(&pergola.name, frame.point(0.5 * top * Vec3::Y), None);
    let post = pergola.post.f32().min(x).min(z);
    let rafters_foot = top - RAFTER[1].min(0.1 * top);
    let beams_foot = rafters_foot - BEAM.min(0.1 * top);
    let mut mesh = Mesh::default();
    for front in [z - post, -z] {
        for left in [-x, x - post] {
            add_box(&mut mesh, [left, 0.0, front], [left + post, beams_foot, front + post]);
        }
        add_box(&mut mesh, [-x - REACH, beams_foot, front], [x + REACH, rafters_foot, front + post]);
    }
    // Side by side at most: more would lie in each other.
    let wide = RAFTER[0].min(x);
    let count = pergola.rafters.0.min((2.0 * x / wide) as u32).max(1);
    for i in 0..count {
        let share = if count > 1 { i as f32 / (count - 1) as f32 } else { 0.5 };
        let left = -x + share * (2.0 * x - wide);
        add_box(&mut mesh, [left, rafters_foot, -z - REACH], [left + wide, top, z + REACH]);
    }
    built.solid(owner, frame.place(mesh), &pergola.surface);
}
