//! Bodies with flat faces, given by their corners.

use super::cut::refine;
use crate::geometry::Mesh;
use glam::{Vec2, Vec3};

/// A body with flat convex faces, each counter-clockwise from outside, cut so that no edge is longer than `edge`.
/// A corner named twice in a row counts once, so that an edge of length zero may be written as one.
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

/// A convex outline, counter-clockwise as seen against its own x and y, drawn along its own z from `from` to `to`.
pub fn prism(outline: &[Vec2], from: f32, to: f32, edge: f32) -> Mesh {
    let n = outline.len() as u32;
    let points = [from, to].into_iter().flat_map(|z| outline.iter().map(move |p| p.extend(z))).collect();
    let mut faces: Vec<Vec<u32>> = vec![(0..n).rev().collect(), (n..2 * n).collect()];
    faces.extend((0..n).map(|i| vec![i, (i + 1) % n, (i + 1) % n + n, i + n]));
    let faces: Vec<&[u32]> = faces.iter().map(Vec::as_slice).collect();
    polyhedron(points, &faces, edge)
}

/// The corners of a regular outline around the origin, counter-clockwise.
pub fn round(radius: f32, corners: u32) -> Vec<Vec2> {
    (0..corners).map(|i| radius * Vec2::from_angle(std::f32::consts::TAU * i as f32 / corners as f32)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_prism_is_closed_and_has_its_volume() {
        let outline = [Vec2::ZERO, Vec2::X, Vec2::new(0.0, 1.0)];
        let mesh = prism(&outline, -1.0, 1.0, 0.25);
        assert!(mesh.is_closed());
        assert!((mesh.volume() - 1.0).abs() < 1e-5);
    }
}
