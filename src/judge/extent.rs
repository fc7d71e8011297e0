//! How large a picture is on its target, and where its corners land.

use super::{
    Landing,
    landing::{RASTER, Touch, leave},
};
use crate::{
    light::{Beam, Night},
    units::border,
};
use glam::Vec3;
use serde::Serialize;

/// A size on the target and the heights it spans above the ground, m.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Extent {
    /// Across.
    #[serde(serialize_with = "border::lengths")]
    pub width_m: f64,
    /// Along the target upwards.
    #[serde(serialize_with = "border::lengths")]
    pub height_m: f64,
    /// Lowest point above the ground.
    #[serde(serialize_with = "border::lengths")]
    pub bottom_m: f64,
    /// Highest point above the ground.
    #[serde(serialize_with = "border::lengths")]
    pub top_m: f64,
}

/// Mean distance from the lens along the light to the target, by way of the mirrors.
pub(super) fn throw(beam: &Beam, landings: &[Landing]) -> f64 {
    // A mirrored lens is as far from what it lights as the light has come.
    let middle = landings
        .iter()
        .filter_map(|l| l.target.map(|t| ((l.uv[0] - 0.5).powi(2) + (l.uv[1] - 0.5).powi(2), t.point)))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    middle.map_or(0.0, |(_, point)| f64::from((point - beam.lens.at).dot(beam.lens.forward)))
}

/// Extent of points on the target: across and along it, and the heights they span; half a raster step is added at each
/// edge, as points stand in the middle of their cells.
pub(super) fn extent(points: impl Iterator<Item = Vec3>, beam: &Beam, landings: &[Landing]) -> Extent {
    let points: Vec<Vec3> = points.collect();
    let Some(first) = points.first() else { return Extent::default() };
    let normal = landings.iter().find_map(|l| l.target).map_or(Vec3::Z, |t| t.normal);
    let across = normal.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
    let along = across.cross(normal);
    let span = |axis: Vec3| {
        let (low, high) =
            points.iter().map(|p| p.dot(axis)).fold((f32::MAX, f32::MIN), |(a, b), v| (a.min(v), b.max(v)));
        f64::from(high - low)
    };
    let depth = (*first - beam.lens.at).dot(beam.lens.forward);
    // A cell of the raster as it lies on the target.
    let (wide, tall) = (beam.lens.w1 * depth / RASTER.0 as f32, beam.lens.h1 * depth / RASTER.1 as f32);
    let cell = |axis: Vec3| f64::from(wide * beam.lens.right.dot(axis).abs() + tall * beam.lens.up.dot(axis).abs());
    let (low, high) = points.iter().map(|p| p.y).fold((f32::MAX, f32::MIN), |(a, b), v| (a.min(v), b.max(v)));
    Extent {
        width_m: span(across) + cell(across),
        height_m: span(along) + cell(along),
        bottom_m: f64::from(low) - 0.5 * cell(Vec3::Y),
        top_m: f64::from(high) + 0.5 * cell(Vec3::Y),
    }
}

/// Where a corner of the raster would land on the plane of the target.
pub(super) fn corner_point(night: &Night, beam: &Beam, uv: [f32; 2], landings: &[Landing]) -> Option<Vec3> {
    let touch = landings.iter().filter_map(|l| l.target).min_by(|a, b| {
        let off = |t: &Touch| (t.along - beam.lens.forward).length_squared();
        off(a).total_cmp(&off(b))
    })?;
    let (from, along) = leave(night, beam, uv).or_else(|| Some((beam.lens.at, beam.lens.direction(uv[0], uv[1]))))?;
    let steep = along.dot(touch.normal);
    let t = (touch.point - from).dot(touch.normal) / steep;
    (steep < 0.0 && t > 0.0 && t < 1e3).then(|| from + t * along)
}
