//! A number for every texel: masks, distances and the heights of carved things.

use glam::{Vec2, Vec3};
use rayon::prelude::*;
use tiny_skia::{FillRule, Mask, Stroke, Transform};

use super::curve::Curve;

/// A number for every texel of a picture.
#[derive(Clone)]
pub(super) struct Field {
    width: usize,
    height: usize,
    cells: Vec<f32>,
}

impl Field {
    /// The field of a function of the texel's centre.
    pub fn new((width, height): (u32, u32), value: impl Fn(Vec2) -> f32 + Sync) -> Self {
        let (width, height) = (width as usize, height as usize);
        let cells = (0..width * height)
            .into_par_iter()
            .map(|at| value(Vec2::new((at % width) as f32, (at / width) as f32) + 0.5))
            .collect();
        Self { width, height, cells }
    }

    /// One inside a closed curve, zero outside, and between on its edge.
    pub fn inside(size: (u32, u32), curve: &Curve) -> Self {
        Self::masked(size, curve.path())
    }

    /// One on a line of even width along a curve, zero elsewhere.
    pub fn along(size: (u32, u32), curve: &Curve, width: f32) -> Self {
        let stroke = Stroke { width, line_cap: tiny_skia::LineCap::Round, ..Stroke::default() };
        Self::masked(size, curve.path().and_then(|path| path.stroke(&stroke, 1.0)))
    }

    fn masked((width, height): (u32, u32), path: Option<tiny_skia::Path>) -> Self {
        let mut cells = vec![0.0; width as usize * height as usize];
        if let (Some(path), Some(mut mask)) = (path, Mask::new(width, height)) {
            mask.fill_path(&path, FillRule::Winding, true, Transform::identity());
            for (cell, code) in cells.iter_mut().zip(mask.data()) {
                *cell = f32::from(*code) / 255.0;
            }
        }
        Self { width: width as usize, height: height as usize, cells }
    }

    /// The number at a point, from the four nearest texels.
    pub fn at(&self, point: Vec2) -> f32 {
        let at = point - 0.5;
        let corner = at.floor();
        let part = at - corner;
        let (x, y) = (corner.x as i64, corner.y as i64);
        let top = self.cell(x, y) * (1.0 - part.x) + self.cell(x + 1, y) * part.x;
        let bottom = self.cell(x, y + 1) * (1.0 - part.x) + self.cell(x + 1, y + 1) * part.x;
        top + (bottom - top) * part.y
    }

    fn cell(&self, x: i64, y: i64) -> f32 {
        let x = x.clamp(0, self.width as i64 - 1) as usize;
        let y = y.clamp(0, self.height as i64 - 1) as usize;
        self.cells[y * self.width + x]
    }

    /// The way a surface of these heights faces; z points at the viewer.
    pub fn normal(&self, point: Vec2) -> Vec3 {
        let across = self.at(point + Vec2::X) - self.at(point - Vec2::X);
        let down = self.at(point + Vec2::Y) - self.at(point - Vec2::Y);
        Vec3::new(-across, -down, 2.0).normalize()
    }

    /// Changes each number by the one another field has there.
    pub fn merge(&mut self, other: &Field, change: impl Fn(f32, f32) -> f32 + Sync) {
        self.cells.par_iter_mut().zip(&other.cells).for_each(|(cell, by)| *cell = change(*cell, *by));
    }

    /// The field with each number changed by itself.
    pub fn map(mut self, change: impl Fn(f32) -> f32 + Sync) -> Self {
        self.cells.par_iter_mut().for_each(|cell| *cell = change(*cell));
        self
    }

    /// The field smoothed over about this many texels each way.
    pub fn blurred(mut self, radius: f32) -> Self {
        // Three running means come close to a bell and cost the same for any radius.
        let reach = (radius * 0.6).round().max(1.0) as usize;
        for _ in 0..3 {
            self.cells.par_chunks_mut(self.width).for_each(|row| running_mean(row, reach));
            self = self.turned();
            self.cells.par_chunks_mut(self.width).for_each(|row| running_mean(row, reach));
            self = self.turned();
        }
        self
    }

    /// For a mask: how far each texel inside lies from the nearest outside.
    pub fn depth(self) -> Self {
        // Squared distance along columns and then along rows; a lower envelope of parabolas makes each exact.
        let far = (self.width + self.height) as f32;
        let mut squared = self.map(|mask| if mask > 0.5 { far * far } else { 0.0 });
        for _ in 0..2 {
            squared.cells.par_chunks_mut(squared.width).for_each(lower_envelope);
            squared = squared.turned();
        }
        squared.map(f32::sqrt)
    }

    /// For a mask: a rounded bulge inside it that rises from the edge over `radius` texels to a height of one.
    pub fn bulge(self, radius: f32) -> Self {
        self.depth().map(|depth| {
            let rest = 1.0 - (depth / radius).min(1.0);
            (1.0 - rest * rest).sqrt()
        })
    }

    fn turned(&self) -> Self {
        let (width, height) = (self.height, self.width);
        let cells = (0..width * height).into_par_iter().map(|at| self.cells[at % width * self.width + at / width]);
        Self { width, height, cells: cells.collect() }
    }
}

/// Each number of a row replaced by the mean of those within reach; the ends count on beyond the row.
fn running_mean(row: &mut [f32], reach: usize) {
    let old = row.to_vec();
    let last = old.len() - 1;
    let share = 1.0 / (2 * reach + 1) as f32;
    let mut sum: f32 = (0..=2 * reach).map(|at| old[at.saturating_sub(reach).min(last)]).sum();
    for (at, cell) in row.iter_mut().enumerate() {
        *cell = sum * share;
        sum += old[(at + reach + 1).min(last)] - old[at.saturating_sub(reach)];
    }
}

/// Each number replaced by the least, over the row, of a number there plus the squared distance to it.
fn lower_envelope(row: &mut [f32]) {
    let old = row.to_vec();
    let meet = |left: usize, right: usize| {
        let rise = old[right] + (right * right) as f32 - old[left] - (left * left) as f32;
        rise / (2 * (right - left)) as f32
    };
    let mut hull: Vec<(usize, f32)> = vec![(0, f32::NEG_INFINITY)];
    for at in 1..old.len() {
        while let Some((top, from)) = hull.last().copied() {
            if meet(top, at) > from {
                break;
            }
            hull.pop();
        }
        let from = hull.last().map_or(f32::NEG_INFINITY, |(top, _)| meet(*top, at));
        hull.push((at, from));
    }
    let mut holder = 0;
    for (at, cell) in row.iter_mut().enumerate() {
        while hull.get(holder + 1).is_some_and(|(_, from)| *from < at as f32) {
            holder += 1;
        }
        let from = hull[holder].0;
        *cell = old[from] + (from.abs_diff(at) as f32).powi(2);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SIZE: (u32, u32) = (40, 30);

    #[test]
    fn depth_grows_from_the_edge_inwards() {
        let depth = Field::new(SIZE, |at| if at.distance(Vec2::new(20.0, 15.0)) < 10.0 { 1.0 } else { 0.0 }).depth();
        assert_eq!(depth.at(Vec2::new(2.5, 2.5)), 0.0);
        assert!((depth.at(Vec2::new(20.0, 15.0)) - 10.0).abs() < 1.0);
        assert!((depth.at(Vec2::new(14.5, 15.5)) - 4.7).abs() < 1.0);
    }

    #[test]
    fn blurring_keeps_an_even_field_and_spreads_a_spot() {
        let even = Field::new(SIZE, |_| 0.7).blurred(5.0);
        assert!((even.at(Vec2::new(1.0, 29.0)) - 0.7).abs() < 1e-4);
        let spot = Field::new(SIZE, |at| if at.distance(Vec2::new(20.0, 15.0)) < 2.0 { 1.0 } else { 0.0 });
        let spread = spot.blurred(4.0);
        assert!(spread.at(Vec2::new(20.0, 15.0)) < 0.5 && spread.at(Vec2::new(24.0, 15.0)) > 0.0);
    }

    #[test]
    fn a_slope_faces_down_the_hill() {
        let slope = Field::new(SIZE, |at| at.x);
        let normal = slope.normal(Vec2::new(20.0, 15.0));
        assert!(normal.x < -0.7 && normal.y.abs() < 1e-4 && normal.z > 0.7);
    }
}
