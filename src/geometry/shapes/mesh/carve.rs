//! Cutting a box-shaped hollow out of a mesh that runs through it.

use super::bounds::Bounds;
use crate::geometry::Mesh;
use crate::geometry::shapes::frame::Frame;
use glam::Vec3;
use std::collections::HashMap;

/// Points nearer than this to a plane lie on it, m.
const ON: f32 = 1e-5;

/// What remains of a mesh outside a box that stands in a frame. The rim of the hole stays open: the box is meant to
/// be lined by a body of its own.
///
/// Each plane cuts every edge that it meets, whichever triangle asks first, so no T-junction arises.
pub fn carve(mesh: &Mesh, frame: &Frame, hollow: &Bounds) -> Mesh {
    let local: Vec<Vec3> = mesh.points.iter().map(|&p| frame.local(p)).collect();
    if !Bounds::around(local.iter().copied()).is_some_and(|b| b.overlaps(hollow)) {
        return mesh.clone();
    }
    let mut carver = Carver { world: mesh.points.clone(), local, cuts: HashMap::new(), kept: Vec::new() };
    for triangle in &mesh.triangles {
        let mut inside = triangle.to_vec();
        for plane in 0..6 {
            inside = carver.split(&inside, plane, hollow);
        }
    }
    compact(carver.world, carver.kept)
}

struct Carver {
    world: Vec<Vec3>,
    local: Vec<Vec3>,
    /// Where a plane cuts an edge.
    cuts: HashMap<(u32, u32, usize), u32>,
    kept: Vec<[u32; 3]>,
}

impl Carver {
    /// How far a point lies outside a plane of the box; 0 for one on it.
    fn outside(&self, point: u32, plane: usize, hollow: &Bounds) -> f32 {
        let (axis, p) = (plane / 2, self.local[point as usize]);
        let d = if plane.is_multiple_of(2) { hollow.lo[axis] - p[axis] } else { p[axis] - hollow.hi[axis] };
        if d.abs() < ON { 0.0 } else { d }
    }

    /// Keeps the part of a convex outline outside a plane and answers the part inside.
    fn split(&mut self, outline: &[u32], plane: usize, hollow: &Bounds) -> Vec<u32> {
        let (mut out, mut inside) = (Vec::new(), Vec::new());
        for (i, &p) in outline.iter().enumerate() {
            let q = outline[(i + 1) % outline.len()];
            let (dp, dq) = (self.outside(p, plane, hollow), self.outside(q, plane, hollow));
            if dp >= 0.0 {
                out.push(p);
            }
            if dp <= 0.0 {
                inside.push(p);
            }
            if dp * dq < 0.0 {
                let cut = self.cut(p, q, plane, dp / (dp - dq));
                out.push(cut);
                inside.push(cut);
            }
        }
        let any = |sign: f32| outline.iter().any(|&p| sign * self.outside(p, plane, hollow) > 0.0);
        let (some_outside, some_inside) = (any(1.0), any(-1.0));
        // An outline that lies wholly on the plane counts as outside: it bounds the hollow and hides nothing in it.
        if some_outside || !some_inside {
            self.kept.extend((2..out.len()).map(|i| [out[0], out[i - 1], out[i]]));
        }
        if some_inside { inside } else { Vec::new() }
    }

    fn cut(&mut self, p: u32, q: u32, plane: usize, t: f32) -> u32 {
        let key = (p.min(q), p.max(q), plane);
        if let Some(&known) = self.cuts.get(&key) {
            return known;
        }
        let new = self.world.len() as u32;
        let (p, q) = (p as usize, q as usize);
        self.world.push(self.world[p].lerp(self.world[q], t));
        self.local.push(self.local[p].lerp(self.local[q], t));
        self.cuts.insert(key, new);
        new
    }
}

/// Drops the points that no triangle uses.
fn compact(points: Vec<Vec3>, triangles: Vec<[u32; 3]>) -> Mesh {
    let mut mesh = Mesh::default();
    let mut moved = vec![u32::MAX; points.len()];
    for triangle in triangles {
        mesh.triangles.push(triangle.map(|p| {
            let new = &mut moved[p as usize];
            if *new == u32::MAX {
                *new = mesh.points.len() as u32;
                mesh.points.push(points[p as usize]);
            }
            *new
        }));
    }
    mesh
}

#[cfg(test)]
mod tests {
    use super::super::lattice::block;
    use super::*;
    use crate::scene::Angle;

    #[test]
    fn a_corner_is_taken_out() {
        let mesh = block(Vec3::ZERO, Vec3::ONE, 0.4);
        let frame = Frame::turned(Vec3::ZERO, Angle(0.0));
        let left = carve(&mesh, &frame, &Bounds::between(Vec3::splat(0.5), Vec3::splat(2.0)));
        // Three faces of the cube lose a quarter each.
        assert!((left.area() - (6.0 - 3.0 * 0.25)).abs() < 1e-4);
        assert!((carve(&mesh, &frame, &Bounds::between(Vec3::splat(2.0), Vec3::splat(3.0))).area() - 6.0).abs() < 1e-4);
    }

    #[test]
    fn a_hole_in_the_middle_of_a_face_has_a_closed_rest() {
        let mesh = block(Vec3::ZERO, Vec3::ONE, 5.0);
        let frame = Frame::turned(Vec3::ZERO, Angle(0.0));
        let hollow = Bounds::between(Vec3::new(0.3, 0.3, 0.9), Vec3::new(0.7, 0.6, 1.1));
        assert!((carve(&mesh, &frame, &hollow).area() - (6.0 - 0.12)).abs() < 1e-4);
    }
}
