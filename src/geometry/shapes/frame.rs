//! Upright frames: where a noun stands and which way it faces.

use crate::geometry::{Mesh, Quad};
use crate::scene::Angle;
use glam::{Vec2, Vec3};

/// An upright frame. Its own x runs to the right as seen by somebody who looks at the front, y up, z out of the front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Its origin.
    pub at: Vec3,
    /// Unit vector along its own x.
    pub right: Vec3,
    /// Unit vector along its own z.
    pub out: Vec3,
}

impl Frame {
    /// At a point, turned about the vertical, counter-clockwise from above; unturned it faces the street (z).
    pub fn turned(at: Vec3, turn: Angle) -> Self {
        let (sin, cos) = turn.0.to_radians().sin_cos();
        let (sin, cos) = (sin as f32, cos as f32);
        Self { at, right: Vec3::new(cos, 0.0, -sin), out: Vec3::new(sin, 0.0, cos) }
    }

    /// From one point on the ground towards another: its own x runs along, and `at` is the first point.
    /// None where the two stand above each other.
    pub fn along(from: Vec3, to: Vec3) -> Option<Self> {
        let right = Vec3::new(to.x - from.x, 0.0, to.z - from.z).try_normalize()?;
        Some(Self { at: from, right, out: right.cross(Vec3::Y) })
    }

    /// A point of this frame in the frame that this one stands in.
    #[inline]
    pub fn point(&self, p: Vec3) -> Vec3 {
        self.at + p.x * self.right + p.y * Vec3::Y + p.z * self.out
    }

    /// A point of the frame that this one stands in, as seen from this one.
    #[inline]
    pub fn local(&self, p: Vec3) -> Vec3 {
        let d = p - self.at;
        Vec3::new(d.dot(self.right), d.y, d.dot(self.out))
    }

    /// A direction of the frame that this one stands in, as seen from this one.
    #[inline]
    pub fn local_way(&self, way: Vec3) -> Vec3 {
        Vec3::new(way.dot(self.right), way.y, way.dot(self.out))
    }

    /// A frame that stands in this one, in the frame that this one stands in.
    pub fn nest(&self, inner: &Self) -> Self {
        let turn = |v: Vec3| self.point(v) - self.at;
        Self { at: self.point(inner.at), right: turn(inner.right), out: turn(inner.out) }
    }

    /// A mesh of this frame in the frame that this one stands in.
    pub fn place(&self, mut mesh: Mesh) -> Mesh {
        for p in &mut mesh.points {
            *p = self.point(*p);
        }
        mesh
    }

    /// The upright rectangle between two corners at depth `z`, its front towards the frame's front.
    pub fn upright(&self, lo: Vec2, hi: Vec2, z: f32) -> Quad {
        Quad { corner: self.point(lo.extend(z)), u: (hi.x - lo.x) * self.right, v: (hi.y - lo.y) * Vec3::Y }
    }

    /// The direction of a sheet's upward edge when the sheet's top leans by `tilt` towards the front.
    pub fn leaning(&self, tilt: Angle) -> Vec3 {
        let (sin, cos) = tilt.0.to_radians().sin_cos();
        cos as f32 * Vec3::Y + sin as f32 * self.out
    }

    /// Cosine and sine of its turn about the vertical.
    pub fn turn(&self) -> [f32; 2] {
        [self.right.x, -self.right.z]
    }
}
