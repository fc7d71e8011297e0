//! How much sky a flat see-through thing sees, on a grid over each side.

use super::Night;
use crate::geometry::{Outline, Quad};
use glam::Vec3;

/// Values along each edge of a flat thing.
pub const SKY_GRID: usize = 9;

/// Where the value of a number is asked for.
fn place(quad: &Quad, i: usize) -> Vec3 {
    let inside = |k: usize| (k as f32 / (SKY_GRID - 1) as f32).clamp(0.02, 0.98);
    quad.point(inside(i % SKY_GRID), inside(i / SKY_GRID))
}

/// Sky shares over both sides of something see-through.
#[derive(Clone, Debug, PartialEq)]
pub enum SkyGrid {
    /// Front and back of a flat thing, row by row from its corner, interpolated between.
    Flat(Box<[[f32; SKY_GRID * SKY_GRID]; 2]>),
    /// A crown stands mostly in the open: what an unobstructed slope of its normal sees, (1 + n·y) / 2.
    Open,
}

impl SkyGrid {
    /// The share at `(s, t)` of the edges, or by the normal alone.
    #[inline]
    pub fn at(&self, front: bool, place: [f32; 2], normal: Vec3) -> f32 {
        match self {
            Self::Open => 0.5 + 0.5 * normal.y,
            Self::Flat(sides) => {
                let values = &sides[usize::from(!front)];
                let last = (SKY_GRID - 1) as f32;
                let (x, y) = (place[0].clamp(0.0, 1.0) * last, place[1].clamp(0.0, 1.0) * last);
                let (i, j) = ((x as usize).min(SKY_GRID - 2), (y as usize).min(SKY_GRID - 2));
                let (fx, fy) = (x - i as f32, y - j as f32);
                let row = |j: usize| {
                    let (a, b) = (values[j * SKY_GRID + i], values[j * SKY_GRID + i + 1]);
                    a + (b - a) * fx
                };
                let (a, b) = (row(j), row(j + 1));
                a + (b - a) * fy
            }
        }
    }

    /// The values of front and back, where there are any.
    pub fn sides(&self) -> Option<&[[f32; SKY_GRID * SKY_GRID]; 2]> {
        match self {
            Self::Flat(sides) => Some(sides),
            Self::Open => None,
        }
    }

    /// Asks the night for a veil's values; a hair inside the edges, so that a frame around it does not count.
    pub fn of(night: &Night, outline: &Outline) -> Self {
        let Outline::Flat(quad) = outline else { return Self::Open };
        let side =
            |sign: f32| std::array::from_fn(|i| super::luma(night.sky_share(place(quad, i), sign * quad.normal())));
        Self::Flat(Box::new([side(1.0), side(-1.0)]))
    }

    /// Every place that is asked, with its side; none of what is not flat.
    pub(super) fn places(outline: &Outline) -> impl Iterator<Item = (Vec3, Vec3)> {
        let quad = if let Outline::Flat(quad) = outline { Some(*quad) } else { None };
        let at = move |i| quad.map(|quad| [1.0, -1.0].map(|sign| (place(&quad, i), sign * quad.normal())));
        (0..SKY_GRID * SKY_GRID).filter_map(at).flatten()
    }
}
