//! Trees.

use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::lattice;
use crate::geometry::shapes::mesh::loft::{bearing, closed, ring};
use crate::geometry::{Built, Outline, Veil, VeilKind};
use crate::scene::{Ref, Tree};
use glam::Vec3;
use std::f32::consts::FRAC_1_SQRT_2;

/// Covering of every trunk.
const BARK: &str = "bark";

/// Sides of a trunk.
const SIDES: u32 = 12;

/// Builds a trunk, a third of the way into the crown, and an egg of leaves.
pub fn build(tree: &Tree, built: &mut Built) {
    let foot = tree.at.vec3();
    let (clear, height) = (tree.clear.f32(), tree.height.f32().max(tree.clear.f32()));
    let middle = foot + 0.5 * (clear + height) * Vec3::Y;
    let owner = built.enter(&tree.name, middle, None);
    let levels = lattice::lines(0.0, clear + (height - clear) / 3.0, &[], OUTDOORS * FRAC_1_SQRT_2);
    let circle = |y: &f32| ring(SIDES, |angle| foot + tree.trunk.f32() * bearing(angle) + *y * Vec3::Y);
    let rings: Vec<Vec<Vec3>> = levels.iter().map(circle).collect();
    let top = levels.last().map_or(foot, |&y| foot + y * Vec3::Y);
    let trunk = refine(closed(&rings, foot, top), OUTDOORS);
    built.solid(owner, trunk, &Ref::to(BARK));
    if height > clear {
        let radii = Vec3::new(tree.crown.f32(), 0.5 * (height - clear), tree.crown.f32());
        let kind = VeilKind::Crown { gap: tree.gap.0 as f32, surface: tree.surface.0.clone() };
        built.veils.push(Veil { owner, outline: Outline::Egg { middle, radii }, kind });
    }
}
