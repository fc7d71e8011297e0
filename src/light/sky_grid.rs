//! Where a flat see-through thing asks how much sky it sees: on a grid over each side.

use crate::geometry::Quad;
use glam::Vec3;

/// Values along each edge of a flat thing.
const SKY_GRID: usize = 9;
/// Values over each of its sides, row by row from its corner.
pub const SKY_VALUES: usize = SKY_GRID * SKY_GRID;

/// Where a value is asked for, and on which side: those of the back follow those of the front. A hair inside the edges, so that a
/// frame around it does not count.
pub(super) fn place(quad: &Quad, value: usize) -> (Vec3, Vec3) {
    let inside = |k: usize| (k as f32 / (SKY_GRID - 1) as f32).clamp(0.02, 0.98);
    let (sign, i) = if value < SKY_VALUES { (1.0, value) } else { (-1.0, value - SKY_VALUES) };
    (quad.point(inside(i % SKY_GRID), inside(i / SKY_GRID)), sign * quad.normal())
}

/// Between the values of a side, at `(s, t)` of the edges.
#[inline]
pub(super) fn between(place: [f32; 2], value: impl Fn(usize) -> f32) -> f32 {
    let last = (SKY_GRID - 1) as f32;
    let (x, y) = (place[0].clamp(0.0, 1.0) * last, place[1].clamp(0.0, 1.0) * last);
    let (i, j) = ((x as usize).min(SKY_GRID - 2), (y as usize).min(SKY_GRID - 2));
    let (fx, fy) = (x - i as f32, y - j as f32);
    let row = |j: usize| {
        let (a, b) = (value(j * SKY_GRID + i), value(j * SKY_GRID + i + 1));
        a + (b - a) * fx
    };
    let (a, b) = (row(j), row(j + 1));
    a + (b - a) * fy
}
