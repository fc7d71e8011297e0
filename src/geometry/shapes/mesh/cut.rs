//! Cutting a mesh until no edge is too long.

use crate::geometry::Mesh;
use std::collections::HashMap;

/// Most parts that the longest edge is cut into; a body so large that this tells stays coarser.
const MOST_PARTS: f32 = 200.0;

/// Cuts every edge longer than `edge` in half, over and over, until none is left.
///
/// Whether an edge is cut depends on that edge alone, so both triangles at it cut it alike and a closed mesh stays
/// closed; each triangle is divided by which of its edges are cut, in its own plane, so areas stay what they were.
pub fn refine(mut mesh: Mesh, edge: f32) -> Mesh {
    let limit = edge.max(mesh.longest_edge() / MOST_PARTS);
    while pass(&mut mesh, limit) {}
    mesh
}

/// One pass; whether any edge was too long.
fn pass(mesh: &mut Mesh, limit: f32) -> bool {
    let mut middles = HashMap::new();
    let old = std::mem::take(&mut mesh.triangles);
    for [a, b, c] in old {
        let [ab, bc, ca] = [(a, b), (b, c), (c, a)].map(|(p, q)| middle(mesh, &mut middles, limit, p, q));
        let points = &mesh.points;
        let apart = |p: u32, q: u32| points[p as usize].distance(points[q as usize]);
        let mut add = |p, q, r| mesh.triangles.push([p, q, r]);
        match (ab, bc, ca) {
            (None, None, None) => add(a, b, c),
            (Some(m), None, None) => fan([a, m, b, c], &mut add, 1),
            (None, Some(m), None) => fan([b, m, c, a], &mut add, 1),
            (None, None, Some(m)) => fan([c, m, a, b], &mut add, 1),
            (Some(m), Some(n), None) => ear(m, b, n, [a, m, n, c], &apart, &mut add),
            (None, Some(m), Some(n)) => ear(m, c, n, [b, m, n, a], &apart, &mut add),
            (Some(n), None, Some(m)) => ear(m, a, n, [c, m, n, b], &apart, &mut add),
            (Some(p), Some(q), Some(r)) => {
                add(a, p, r);
                add(p, b, q);
                add(r, q, c);
                add(p, q, r);
            }
        }
    }
    !middles.is_empty()
}

/// The four-sided outline as two triangles; `from` picks the diagonal.
fn fan(outline: [u32; 4], add: &mut impl FnMut(u32, u32, u32), from: usize) {
    let [p, q, r, s] = std::array::from_fn(|i| outline[(i + from) % 4]);
    add(p, q, r);
    add(p, r, s);
}

/// A corner cut off between two middles, and what remains as two triangles along its shorter diagonal.
fn ear(
    m: u32,
    corner: u32,
    n: u32,
    rest: [u32; 4],
    apart: &impl Fn(u32, u32) -> f32,
    add: &mut impl FnMut(u32, u32, u32),
) {
    add(m, corner, n);
    fan(rest, add, usize::from(apart(rest[1], rest[3]) < apart(rest[0], rest[2])));
}

/// The middle of an edge that is too long; the same point for both triangles at it.
fn middle(mesh: &mut Mesh, middles: &mut HashMap<[u32; 2], u32>, limit: f32, p: u32, q: u32) -> Option<u32> {
    let (a, b) = (mesh.points[p as usize], mesh.points[q as usize]);
    if a.distance(b) <= limit {
        return None;
    }
    let key = [p.min(q), p.max(q)];
    Some(*middles.entry(key).or_insert_with(|| {
        mesh.points.push(0.5 * (a + b));
        mesh.points.len() as u32 - 1
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::Vec3;
    use proptest::prelude::*;

    fn tetrahedron(points: [Vec3; 4]) -> Mesh {
        let six = (points[1] - points[0]).cross(points[2] - points[0]).dot(points[3] - points[0]);
        let mut triangles = vec![[0, 2, 1], [0, 1, 3], [1, 2, 3], [2, 0, 3]];
        if six < 0.0 {
            triangles.iter_mut().for_each(|t| t.swap(1, 2));
        }
        Mesh { points: points.to_vec(), triangles }
    }

    proptest! {
        #[test]
        fn closed_stays_closed_and_area_and_volume_stay(
            c in prop::array::uniform12(-2.0f32..2.0), edge in 0.2f32..1.5
        ) {
            let p = std::array::from_fn(|i| Vec3::new(c[3 * i], c[3 * i + 1], c[3 * i + 2]));
            let before = tetrahedron(p);
            prop_assume!(before.volume() > 1e-2);
            let after = refine(before.clone(), edge);
            prop_assert!(after.is_closed());
            prop_assert!(after.longest_edge() <= edge);
            prop_assert!((after.volume() - before.volume()).abs() < 1e-3);
            prop_assert!((after.area() - before.area()).abs() < 1e-3 * before.area());
        }
    }

    #[test]
    fn what_is_fine_enough_is_left_alone() {
        let mesh = tetrahedron([Vec3::ZERO, Vec3::X, Vec3::Y, Vec3::Z]);
        assert_eq!(refine(mesh.clone(), 1.5), mesh);
    }
}
