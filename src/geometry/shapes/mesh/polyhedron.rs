//! Bodies with flat faces, given by their corners.

use super::cut::refine;
use crate::geometry::Mesh;
use glam::Vec3;

/// A body with flat convex faces, each counter-clockwise from outside, cut so that no edge is longer than `edge`.
/// A corner named twice in a row counts once, so that an edge of length zero may be written as one. Each face is
/// divided from its first corner, which is best the one opposite its longest edge.
pub fn polyhedron(points: Vec<Vec3>, faces: &[&[u32]], edge: f32) -> Mesh {
    let mut triangles = Vec::new();
    for face in faces {
        let mut face = face.to_vec();
        face.dedup();
        if face.len() > 1 && face.first() == face.last() {
            face.pop();
        }
        triangles.extend((1..face.len().saturating_sub(1)).map(|i| [face[0], face[i], face[i + 1]]));
    }
    refine(Mesh { points, triangles }, edge)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_of_length_zero_leaves_a_closed_body() {
        let points = vec![Vec3::ZERO, Vec3::X, Vec3::Y, Vec3::Z];
        let mesh = polyhedron(points, &[&[0, 2, 1], &[0, 1, 1, 3], &[1, 2, 3, 3], &[2, 0, 3, 2]], 0.25);
        assert!(mesh.is_closed());
        assert!((mesh.volume() - 1.0 / 6.0).abs() < 1e-5);
    }
}
