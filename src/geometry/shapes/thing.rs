//! What else is built in a yard, all from boxes.

mod bench;
mod block;
mod fence;
mod pergola;
mod porch;
mod post;
mod steps;

use super::OUTDOORS;
use super::mesh::lattice;
use crate::geometry::{Built, Mesh};
use crate::scene::Thing;
use glam::Vec3;

/// Builds a thing.
pub fn build(thing: &Thing, built: &mut Built) {
    match thing {
        Thing::Block(block) => block::build(block, built),
        Thing::Steps(steps) => steps::build(steps, built),
        Thing::Fence(fence) => fence::build(fence, built),
        Thing::Post(post) => post::build(post, built),
        Thing::Pergola(pergola) => pergola::build(pergola, built),
        Thing::Porch(porch) => porch::build(porch, built),
        Thing::Bench(bench) => bench::build(bench, built),
    }
}

/// Adds a box between two corners.
fn add_box(mesh: &mut Mesh, lo: [f32; 3], hi: [f32; 3]) {
    mesh.append(&lattice::block(Vec3::from(lo), Vec3::from(hi), OUTDOORS));
}
