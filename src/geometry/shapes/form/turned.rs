//! Bodies turned about the vertical.

use crate::geometry::Built;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::loft::{bearing, closed, points_around, ring};
use crate::scene::Turned;
use glam::{Vec2, Vec3};

/// Radius below which a point of the profile lies on the axis, m.
const ON_AXIS: f32 = 1e-4;

/// Distance between rings, m, and the most rings in one body.
const APART: f32 = 0.025;
const MOST_RINGS: f32 = 160.0;

/// Builds a turned form; its open ends are closed flat. A profile that encloses nothing enters its name only.
pub fn build(turned: &Turned, built: &mut Built) {
    let foot = turned.at.vec3();
    let profile: Vec<Vec2> = turned.profile.iter().map(|p| Vec2::new(p.radius.f32(), p.height.f32())).collect();
    let heights = || profile.iter().map(|p| p.y);
    let (low, high) = (heights().fold(f32::MAX, f32::min), heights().fold(f32::MIN, f32::max));
    let widest = profile.iter().map(|p| p.x).fold(0.0, f32::max);
    let encloses = high - low > ON_AXIS && widest > ON_AXIS;
    let middle = if encloses { 0.5 * (low + high) } else { 0.0 };
    let owner = built.enter(&turned.name, foot + middle * Vec3::Y, None);
    if !encloses {
        return;
    }
    let around = points_around(widest);
    let rings: Vec<Vec<Vec3>> = radii(&profile)
        .into_iter()
        .map(|p| ring(around, |angle| foot + p.x * bearing(angle) + p.y * Vec3::Y))
        .collect();
    let end = |p: Option<&Vec2>| foot + p.map_or(0.0, |p| p.y) * Vec3::Y;
    let body = closed(&rings, end(profile.first()), end(profile.last()));
    built.solid(owner, refine(body, OUTDOORS), &turned.surface);
}

/// The rings of a profile, foot first; ends on the axis are left to the closing fans.
fn radii(profile: &[Vec2]) -> Vec<Vec2> {
    let length: f32 = profile.windows(2).map(|w| w[0].distance(w[1])).sum();
    let apart = APART.max(length / MOST_RINGS);
    let mut rings: Vec<Vec2> = profile.first().copied().into_iter().collect();
    for pair in profile.windows(2) {
        let parts = (pair[0].distance(pair[1]) / apart).ceil() as u32;
        rings.extend((1..=parts).map(|i| pair[0].lerp(pair[1], i as f32 / parts as f32)));
    }
    let last = rings.len().saturating_sub(1);
    let inner = |i: usize| i > 0 && i < last;
    let rings = rings.into_iter().enumerate();
    rings
        .filter(|&(i, p)| inner(i) || p.x > ON_AXIS)
        // A waist on the axis keeps a thread, so that the body stays one.
        .map(|(_, p)| p.with_x(p.x.max(ON_AXIS)))
        .collect()
}
