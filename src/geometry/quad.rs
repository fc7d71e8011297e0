//! A flat parallelogram.

use glam::Vec3;

/// A flat parallelogram: one corner and two edges. Its front is the side that `u × v` points to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quad {
    /// One corner: the lower left as seen from the front.
    pub corner: Vec3,
    /// The edge to the right as seen from the front.
    pub u: Vec3,
    /// The edge upwards.
    pub v: Vec3,
}

impl Quad {
    /// Unit normal on the front.
    pub fn normal(&self) -> Vec3 {
        self.u.cross(self.v).normalize_or_zero()
    }

    /// The point at `(s, t)` of the edges.
    pub fn point(&self, s: f32, t: f32) -> Vec3 {
        self.corner + s * self.u + t * self.v
    }

    /// Its middle.
    pub fn middle(&self) -> Vec3 {
        self.point(0.5, 0.5)
    }

    /// Its area, m².
    pub fn area(&self) -> f32 {
        self.u.cross(self.v).length()
    }
}
