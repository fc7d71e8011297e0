//! Ribbed gourds.

use crate::geometry::Built;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::loft::{bearing, closed, ring};
use crate::scene::Gourd;
use glam::{Vec2, Vec3};
use std::f32::consts::PI;

/// Rings from foot to stem.
const RINGS: u32 = 40;

/// Points around, as near as whole ribs allow.
const AROUND: u32 = 64;

/// Most ribs that can be told apart.
const MOST_RIBS: u32 = 32;

/// How deep the groove between two ribs is, as a share of the radius.
const GROOVE: f32 = 0.1;

/// How deep the dips at foot and stem are, as shares of half the height, and how wide, as a share of the radius.
const DIPS: [f32; 2] = [0.12, 0.28];
const DIP_WIDTH: f32 = 0.35;

/// Radius and length of the stem as shares of the width, and its points around.
const STEM: [f32; 2] = [0.05, 0.16];
const STEM_AROUND: u32 = 12;

/// Builds a gourd, one of its ribs at the front, and its stem.
pub fn build(gourd: &Gourd, built: &mut Built) {
    let frame = Frame::turned(gourd.at.vec3(), gourd.turn_deg);
    let (radius, height) = (0.5 * gourd.width.f32(), gourd.height.f32());
    let owner = built.enter(&gourd.name, frame.point(0.5 * height * Vec3::Y), None);
    let ribs = gourd.ribs.0.min(MOST_RIBS);
    // Whole points to a rib, an even number of them, so that every groove is drawn alike and sharp.
    let around = ribs * (AROUND.div_ceil(2 * ribs)).max(2) * 2;
    let rib = |angle: f32| 1.0 - GROOVE * (1.0 - (0.5 * ribs as f32 * angle).cos().abs());
    let profile = profile(radius, height);
    let rings: Vec<Vec<Vec3>> = profile[1..profile.len() - 1]
        .iter()
        .map(|p| ring(around, |angle| p.x * rib(angle) * bearing(angle) + p.y * Vec3::Y))
        .collect();
    let mut body = closed(&rings, profile[0].y * Vec3::Y, height * Vec3::Y);
    let [thick, long] = STEM.map(|share| 2.0 * share * radius);
    // The stem begins within the body.
    let stem_rings: Vec<Vec<Vec3>> = [(height - 0.5 * long, 1.0), (height + long, 0.8)]
        .map(|(y, share)| ring(STEM_AROUND, |angle| share * thick * bearing(angle) + y * Vec3::Y))
        .into();
    body.append(&closed(&stem_rings, (height - 0.5 * long) * Vec3::Y, (height + long) * Vec3::Y));
    built.solid(owner, refine(frame.place(body), OUTDOORS), &gourd.surface);
}

/// Radius and height from the dip at the foot to the dip at the stem: a flattened ball, pressed in at both ends,
/// that stands on the ring around its foot and whose stem begins at `height`.
fn profile(radius: f32, height: f32) -> Vec<Vec2> {
    let unit: Vec<Vec2> = (0..=RINGS)
        .map(|i| {
            let (sin, cos) = (PI * i as f32 / RINGS as f32).sin_cos();
            let dip = DIPS[usize::from(cos < 0.0)] * (-(sin / DIP_WIDTH).powi(2)).exp();
            Vec2::new(sin, -cos * (1.0 - dip))
        })
        .collect();
    let lowest = unit.iter().map(|p| p.y).fold(f32::MAX, f32::min);
    let stem = unit.last().map_or(1.0, |p| p.y);
    unit.iter().map(|p| Vec2::new(radius * p.x, height * (p.y - lowest) / (stem - lowest))).collect()
}
