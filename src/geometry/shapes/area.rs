//! Drive, street, path or bed: slabs on the ground.

use super::ground::{Lines, level};
use super::mesh::lattice::{self, Lattice};
use crate::geometry::Built;
use crate::scene::Area;
use glam::Vec2;

/// Greatest distance between lines where an area reaches beyond the ground and shares none of its lines, m.
const BEYOND: f32 = 1.0;

/// Builds a slab with its top and sides along the lines of the ground.
pub fn build(area: &Area, lines: &Lines, built: &mut Built) {
    let a = Vec2::new(area.x.0.f32(), area.z.0.f32());
    let b = Vec2::new(area.x.1.f32(), area.z.1.f32());
    let (lo, hi) = (a.min(b), a.max(b));
    let top = level(lo, hi, area.rise.f32());
    let owner = built.enter(&area.name, top.middle(), Some(top));
    if (hi - lo).min_element() <= 0.0 {
        return;
    }
    let cells = Lattice::of([
        lattice::lines(lo.x, hi.x, &lines.x, BEYOND),
        lattice::lines(0.0, area.rise.f32(), &[], BEYOND),
        lattice::lines(lo.y, hi.y, &lines.z, BEYOND),
    ]);
    // Its underside lies on the ground.
    built.solid(owner, cells.surface_where(|_, normal| normal.y > -0.5), &area.surface);
}
