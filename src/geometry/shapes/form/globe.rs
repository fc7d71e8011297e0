//! Balls.

use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::loft::{bearing, closed, points_around, ring};
use crate::geometry::{Built, Mesh};
use crate::scene::Globe;
use glam::Vec3;
use std::f32::consts::PI;

/// Builds a ball that stands on its lowest point.
pub fn build(globe: &Globe, built: &mut Built) {
    let radius = 0.5 * globe.diameter.f32();
    let middle = globe.at.vec3() + radius * Vec3::Y;
    let owner = built.enter(&globe.name, middle, None);
    let ball = unit_ball(points_around(radius));
    let points = ball.points.iter().map(|&p| middle + radius * p).collect();
    built.solid(owner, refine(Mesh { points, ..ball }, OUTDOORS), &globe.surface);
}

/// A ball of radius 1 around the origin, with so many points on its equator.
pub fn unit_ball(around: u32) -> Mesh {
    let bands = around / 2;
    let rings: Vec<Vec<Vec3>> = (1..bands)
        .map(|i| {
            let (radius, height) = (PI * i as f32 / bands as f32).sin_cos();
            ring(around, |angle| radius * bearing(angle) - height * Vec3::Y)
        })
        .collect();
    closed(&rings, Vec3::NEG_Y, Vec3::Y)
}
