//! Blow-up bags.

use super::globe::unit_ball;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::loft::points_around;
use crate::geometry::{Built, Mesh};
use crate::scene::Bag;
use glam::Vec3;

/// Exponent of the rounded box `|x|ⁿ + |y|ⁿ + |z|ⁿ = 1`: 2 is a ball, large ones are boxes with sharp edges.
const ROUNDNESS: f32 = 4.0;

/// Builds a rounded upright box.
pub fn build(bag: &Bag, built: &mut Built) {
    let frame = Frame::turned(bag.at.vec3(), bag.turn_deg);
    let half = 0.5 * Vec3::new(bag.width.f32(), bag.height.f32(), bag.depth.f32());
    let owner = built.enter(&bag.name, frame.point(half.y * Vec3::Y), None);
    let ball = unit_ball(points_around(half.x.max(half.z)));
    let blown = |p: Vec3| {
        let reach = p.abs().powf(ROUNDNESS).element_sum().powf(-1.0 / ROUNDNESS);
        half * (reach * p + Vec3::Y)
    };
    let mesh = Mesh { points: ball.points.iter().map(|&p| blown(p)).collect(), ..ball };
    built.solid(owner, refine(frame.place(mesh), OUTDOORS), &bag.surface);
}
