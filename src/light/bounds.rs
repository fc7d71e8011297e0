//! Box and normal of a triangle.

use crate::geometry::crossing::Corners;
use glam::Vec3;

/// Lower and upper corner of its box.
pub fn of(corners: &Corners) -> (Vec3, Vec3) {
    let [a, b, c] = *corners;
    (a.min(b).min(c), a.max(b).max(c))
}

/// Unit normal outwards; zero for a triangle without area.
pub fn normal(corners: &Corners) -> Vec3 {
    let [a, b, c] = *corners;
    (b - a).cross(c - a).normalize_or_zero()
}
