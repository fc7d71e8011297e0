//! Plants: crowns of leaves, and the trunks that carry them.

mod hedge;
mod tree;

use crate::geometry::Built;
use crate::scene::Plant;

/// Builds a plant.
pub fn build(plant: &Plant, built: &mut Built) {
    match plant {
        Plant::Hedge(hedge) => hedge::build(hedge, built),
        Plant::Tree(tree) => tree::build(tree, built),
    }
}
