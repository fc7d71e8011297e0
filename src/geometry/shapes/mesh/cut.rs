//! Cutting a mesh until no edge is too long.

use super::bounds::Bounds;
use crate::geometry::Mesh;
use std::collections::HashMap;

/// Most edges from end to end of a body; one so large that this tells stays coarser, rather than too large to hold.
const MOST_PARTS: f32 = 200.0;

/// Cuts triangles in half across their longest edge, over and over, until no edge is longer than `edge`.
///
/// An edge that one of its triangles asks to cut is cut for both, so a closed mesh stays closed; each triangle is
/// divided by which of its edges are cut, in its own plane, so areas stay what they were.
pub fn refine(mut mesh: Mesh, edge: f32) -> Mesh {
    let across = Bounds::around(mesh.points.iter().copied()).map_or(0.0, |b| b.lo.distance(b.hi));
    let limit = edge.max(across / MOST_PARTS);
    loop {
        let middles = middles(&mut mesh, limit);
        if middles.is_empty() {
            return mesh;
        }
        divide(&mut mesh, &middles);
    }
}

/// An edge, whichever way it runs.
fn key(p: u32, q: u32) -> [u32; 2] {
    [p.min(q), p.max(q)]
}

/// A new point in the middle of each edge that is too long and the longest of a triangle.
fn middles(mesh: &mut Mesh, limit: f32) -> HashMap<[u32; 2], u32> {
    let mut middles = HashMap::new();
    for &[a, b, c] in &mesh.triangles {
        let length = |[p, q]: [u32; 2]| mesh.points[p as usize].distance(mesh.points[q as usize]);
        let edges = [key(a, b), key(b, c), key(c, a)];
        let longest = edges.into_iter().reduce(|e, f| if length(f) > length(e) { f } else { e });
        if let Some([p, q]) = longest.filter(|&e| length(e) > limit) {
            middles.entry([p, q]).or_insert_with(|| {
                mesh.points.push(0.5 * (mesh.points[p as usize] + mesh.points[q as usize]));
                mesh.points.len() as u32 - 1
            });
        }
    }
    middles
}

/// Divides each triangle by which of its edges are cut.
fn divide(mesh: &mut Mesh, middles: &HashMap<[u32; 2], u32>) {
    let old = std::mem::take(&mut mesh.triangles);
    let points = &mesh.points;
    let apart = |p: u32, q: u32| points[p as usize].distance(points[q as usize]);
    for [a, b, c] in old {
        let [ab, bc, ca] = [(a, b), (b, c), (c, a)].map(|(p, q)| middles.get(&key(p, q)).copied());
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
