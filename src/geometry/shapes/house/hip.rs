//! Hip roofs.

use super::roof::Plan;
use crate::geometry::Mesh;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::mesh::polyhedron::polyhedron;
use glam::Vec3;

/// The slab of a hip roof: four slopes above, four below, and the edges between.
pub fn slab(plan: &Plan) -> Mesh {
    let (a, c) = (plan.along + plan.overhang, plan.across + plan.overhang);
    let ridge = plan.along - plan.across;
    let low = plan.eaves - plan.overhang * plan.slope;
    let high = low + c * plan.slope;
    let mut points = Vec::new();
    for lift in [0.0, plan.thick] {
        points.extend([[-a, c], [a, c], [a, -c], [-a, -c]].map(|[x, z]| Vec3::new(x, low + lift, z)));
        points.extend([-ridge, ridge].map(|x| Vec3::new(x, high + lift, 0.0)));
    }
    // Over a square all four slopes meet in one point.
    let (left, right) = if ridge < 1e-3 { (4, 4) } else { (4, 5) };
    let (upper_left, upper_right) = (left + 6, right + 6);
    let faces: [&[u32]; 12] = [
        &[6, 7, upper_right, upper_left],
        &[7, 8, upper_right],
        &[8, 9, upper_left, upper_right],
        &[9, 6, upper_left],
        &[0, left, right, 1],
        &[1, right, 2],
        &[2, right, left, 3],
        &[3, left, 0],
        &[0, 1, 7, 6],
        &[1, 2, 8, 7],
        &[2, 3, 9, 8],
        &[3, 0, 6, 9],
    ];
    polyhedron(points, &faces, OUTDOORS)
}
