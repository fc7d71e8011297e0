//! A ray against every triangle, one after the other.

use gauzelight::geometry::{Built, Solid};
use glam::Vec3;

/// What a ray meets first.
#[derive(Clone, Copy, Debug)]
pub struct Met {
    /// Way to it in lengths of the direction.
    pub t: f32,
    /// Index of the solid.
    pub solid: usize,
    /// Whether its front was met.
    pub front: bool,
}

/// Two-sided ray against triangle after Möller and Trumbore 1997.
fn meet([a, b, c]: [Vec3; 3], from: Vec3, along: Vec3) -> Option<(f32, bool)> {
    let (e1, e2) = (b - a, c - a);
    let p = along.cross(e2);
    let det = e1.dot(p);
    if det.abs() < 1e-12 {
        return None;
    }
    let s = from - a;
    let u = s.dot(p) / det;
    let q = s.cross(e1);
    let v = along.dot(q) / det;
    let t = e2.dot(q) / det;
    (u >= 0.0 && v >= 0.0 && u + v <= 1.0 && t > 1e-5).then_some((t, det > 0.0))
}

/// Neighbouring triangles of one solid, with a sphere around them so that most are passed over quickly.
struct Group {
    triangles: Vec<[Vec3; 3]>,
    middle: Vec3,
    radius_squared: f32,
    solid: usize,
}

impl Group {
    fn new(triangles: &[[Vec3; 3]], solid: usize) -> Self {
        let corners = triangles.as_flattened();
        let middle = corners.iter().sum::<Vec3>() / corners.len() as f32;
        let radius_squared = corners.iter().map(|p| p.distance_squared(middle)).fold(0.0, f32::max) * 1.01;
        Self { triangles: triangles.to_vec(), middle, radius_squared, solid }
    }
}

/// All triangles of a yard.
pub struct Probe(Vec<Group>);

impl Probe {
    /// Over all solids.
    pub fn new(built: &Built) -> Self {
        let groups = |(index, solid): (usize, &Solid)| {
            let triangles: Vec<_> = solid.mesh.corners().collect();
            triangles.chunks(16).map(|t| Group::new(t, index)).collect::<Vec<_>>()
        };
        Self(built.solids.iter().enumerate().flat_map(groups).collect())
    }

    /// The first thing met.
    pub fn first(&self, from: Vec3, along: Vec3) -> Option<Met> {
        let unit = along.normalize();
        let mut best: Option<Met> = None;
        for group in &self.0 {
            let d = group.middle - from;
            if d.length_squared() - d.dot(unit).powi(2) > group.radius_squared {
                continue;
            }
            for &triangle in &group.triangles {
                if let Some((t, front)) = meet(triangle, from, along)
                    && best.is_none_or(|b| t < b.t)
                {
                    best = Some(Met { t, solid: group.solid, front });
                }
            }
        }
        best
    }
}
