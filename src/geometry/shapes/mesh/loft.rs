//! Closed surfaces through a stack of rings.

use crate::geometry::Mesh;
use glam::Vec3;

/// The surface through rings of equally many points, foot first, each counter-clockwise as seen from above, closed
/// below by a fan to `foot` and above by one to `crown`.
pub fn closed(rings: &[Vec<Vec3>], foot: Vec3, crown: Vec3) -> Mesh {
    let around = rings.first().map_or(0, Vec::len) as u32;
    let mut points: Vec<Vec3> = rings.iter().flatten().copied().collect();
    let last = points.len() as u32;
    points.extend([foot, crown]);
    let mut triangles = Vec::new();
    for i in 0..around {
        let j = (i + 1) % around;
        triangles.push([last, j, i]);
        for ring in 1..rings.len() as u32 {
            let (low, high) = ((ring - 1) * around, ring * around);
            triangles.extend([[low + i, low + j, high + j], [low + i, high + j, high + i]]);
        }
        let top = last - around;
        triangles.push([last + 1, top + i, top + j]);
    }
    Mesh { points, triangles }
}

/// A ring of `around` points at bearings counter-clockwise from above, the first at the front (z).
pub fn ring(around: u32, point: impl Fn(f32) -> Vec3) -> Vec<Vec3> {
    (0..around).map(|i| point(std::f32::consts::TAU * i as f32 / around as f32)).collect()
}

/// The unit vector at a bearing counter-clockwise from above, 0 at the front (z).
pub fn bearing(angle: f32) -> Vec3 {
    Vec3::new(angle.sin(), 0.0, angle.cos())
}

/// How many points a ring needs so that they stand about 2.5 cm apart, within what makes a round body round and
/// what can still be told apart.
pub fn points_around(radius: f32) -> u32 {
    (std::f32::consts::TAU * radius / 0.025).ceil().clamp(24.0, 96.0) as u32
}
