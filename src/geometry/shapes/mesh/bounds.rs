//! Boxes along the axes of a frame.

use glam::Vec3;

/// A box between two corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Least coordinates.
    pub lo: Vec3,
    /// Greatest coordinates.
    pub hi: Vec3,
}

impl Bounds {
    /// The box with these two opposite corners, in whichever order.
    pub fn between(a: Vec3, b: Vec3) -> Self {
        Self { lo: a.min(b), hi: a.max(b) }
    }

    /// The smallest box around points; None without any.
    pub fn around(points: impl IntoIterator<Item = Vec3>) -> Option<Self> {
        points.into_iter().map(|p| Self { lo: p, hi: p }).reduce(Self::with)
    }

    /// The smallest box around both.
    pub fn with(self, other: Self) -> Self {
        Self { lo: self.lo.min(other.lo), hi: self.hi.max(other.hi) }
    }

    /// Grown by the same amount on all six sides.
    pub fn grown(self, by: f32) -> Self {
        Self { lo: self.lo - by, hi: self.hi + by }
    }

    /// Its eight corners.
    pub fn corners(&self) -> [Vec3; 8] {
        let side = |i: usize, axis: usize| if i >> axis & 1 == 0 { self.lo[axis] } else { self.hi[axis] };
        std::array::from_fn(|i| Vec3::new(side(i, 0), side(i, 1), side(i, 2)))
    }

    /// Whether a point lies inside or on the border.
    pub fn contains(&self, p: Vec3) -> bool {
        self.lo.cmple(p).all() && p.cmple(self.hi).all()
    }

    /// Whether the insides of two boxes have points in common.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.lo.cmplt(other.hi).all() && other.lo.cmplt(self.hi).all()
    }
}
