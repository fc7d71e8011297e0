//! Smooth curves through points.

use glam::Vec2;
use tiny_skia::{Path, PathBuilder};

/// A smooth curve that passes through all its points, open or closed.
pub(super) struct Curve {
    points: Vec<Vec2>,
    closed: bool,
}

impl Curve {
    pub fn open(points: &[[f32; 2]]) -> Self {
        Self { points: points.iter().copied().map(Vec2::from).collect(), closed: false }
    }

    pub fn closed(points: &[[f32; 2]]) -> Self {
        Self { closed: true, ..Self::open(points) }
    }

    /// The closed curve through the points and, bottom to top, their mirror images across a vertical axis.
    /// A point on the axis is not doubled.
    pub fn mirrored(axis: f32, points: &[[f32; 2]]) -> Self {
        let other = points.iter().rev().filter(|[x, _]| *x != axis).map(|[x, y]| [2.0 * axis - x, *y]);
        let all: Vec<[f32; 2]> = points.iter().copied().chain(other).collect();
        Self::closed(&all)
    }

    /// The same curve with every point moved.
    pub fn moved(mut self, place: impl Fn(Vec2) -> Vec2) -> Self {
        for point in &mut self.points {
            *point = place(*point);
        }
        self
    }

    fn segments(&self) -> usize {
        if self.closed { self.points.len() } else { self.points.len() - 1 }
    }

    fn point(&self, index: isize) -> Vec2 {
        let count = self.points.len() as isize;
        let index = if self.closed { index.rem_euclid(count) } else { index.clamp(0, count - 1) };
        self.points[index as usize]
    }

    /// The cubic between one point and the next.
    fn cubic(&self, segment: usize) -> [Vec2; 4] {
        let at = segment as isize;
        let (before, start, end, after) = (self.point(at - 1), self.point(at), self.point(at + 1), self.point(at + 2));
        [start, start + (end - before) / 6.0, end - (after - start) / 6.0, end]
    }

    /// The point a share of the way along, counted in points.
    pub fn at(&self, share: f32) -> Vec2 {
        let along = share.clamp(0.0, 1.0) * self.segments() as f32;
        let segment = (along as usize).min(self.segments() - 1);
        let [a, b, c, d] = self.cubic(segment);
        let t = along - segment as f32;
        let s = 1.0 - t;
        a * (s * s * s) + b * (3.0 * s * s * t) + c * (3.0 * s * t * t) + d * (t * t * t)
    }

    /// Points and unit tangents at even steps along the curve.
    pub fn walk(&self, step: f32) -> Vec<(Vec2, Vec2)> {
        let fine = self.segments() * 64;
        let mut steps = Vec::new();
        let (mut last, mut due) = (self.at(0.0), 0.0);
        for index in 1..=fine {
            let next = self.at(index as f32 / fine as f32);
            let length = last.distance(next);
            while due < length {
                steps.push((last.lerp(next, due / length), (next - last) / length));
                due += step;
            }
            due -= length;
            last = next;
        }
        steps
    }

    /// The curve as something to fill or stroke.
    pub fn path(&self) -> Option<Path> {
        let mut builder = PathBuilder::new();
        let start = self.point(0);
        builder.move_to(start.x, start.y);
        for segment in 0..self.segments() {
            let [_, b, c, d] = self.cubic(segment);
            builder.cubic_to(b.x, b.y, c.x, c.y, d.x, d.y);
        }
        if self.closed {
            builder.close();
        }
        builder.finish()
    }
}
