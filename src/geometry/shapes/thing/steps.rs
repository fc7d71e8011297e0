//! Flights of steps.

use crate::geometry::Built;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::lattice::Lattice;
use crate::scene::Steps;
use glam::Vec3;

/// The longest flight that is built: higher than any house.
const MOST: u32 = 200;

/// Builds a flight as one body, solid down to the ground.
pub fn build(steps: &Steps, built: &mut Built) {
    let frame = Frame::turned(steps.at.vec3(), steps.turn_deg);
    let (half, rise, run) = (0.5 * steps.width.f32(), steps.rise.f32(), steps.run.f32());
    let count = steps.count.0.min(MOST);
    let (top, back) = (count as f32 * rise, count as f32 * run);
    let owner = built.enter(&steps.name, frame.point(0.5 * Vec3::new(0.0, top, -back)), None);
    let rises: Vec<f32> = (1..count).map(|i| i as f32 * rise).collect();
    let runs: Vec<f32> = (1..count).map(|i| -(i as f32) * run).collect();
    let bounds = Bounds { lo: Vec3::new(-half, 0.0, -back), hi: Vec3::new(half, top, 0.0) };
    let flight = Lattice::new(bounds, [&[], &rises, &runs], OUTDOORS)
        .keep(|p| (p.y / rise).floor() <= (-p.z / run).floor())
        .surface();
    built.solid(owner, frame.place(flight), &steps.surface);
}
