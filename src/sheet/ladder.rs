//! Where a ladder stands: its foot on firm ground one out for every four up, clear of the beam and of what is in the way.

use crate::{
    craft::is_outdoors,
    geometry::Sight,
    light::{Beam, Night},
    scene::{Catalogue, Mount, Station, Yard, limits},
};
use glam::{DVec3, Vec3};

/// A ladder as it leans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ladder {
    /// Its foot on the ground, m.
    pub foot: DVec3,
    /// What is reached from it, m.
    pub reaches: DVec3,
}

/// How far out a foot stands for each metre up: the usual rule for leaning ladders (one in four; HSE INDG455, from memory).
pub const OUT: f64 = 0.25;
/// Ways round that are tried.
const WAYS: u32 = 16;
/// Ground is what lies lower than this above or below the yard's zero, m.
const GROUND_M: f64 = 0.35;
/// A ladder so near to the way of the light stands in it: cosine of the angle between them.
const IN_BEAM: f64 = 0.5;

/// The ladders of a station: at its lens, and at the upper corners of the cloth that it lights, where these are higher than work from
/// the ground.
pub fn ladders(yard: &Yard, catalogue: &Catalogue, night: &Night, index: usize, beam: Option<&Beam>) -> Vec<Ladder> {
    let Some(station) = yard.stations.get(index) else { return Vec::new() };
    let above = yard.limit(catalogue, limits::LADDER).map_or(f64::INFINITY, |limit| limit.value);
    let mut list = Vec::new();
    let lens = station.at.vec3().as_dvec3();
    if lens.y > above && is_outdoors(yard, station) && station.mount != Mount::Shelf {
        let light = beam.map(|beam| beam.lens.forward.as_dvec3().with_y(0.0).normalize_or_zero());
        list.extend(leaning(night, lens, light.unwrap_or_default()));
    }
    list.extend(lit_cloth(yard, night, station).into_iter().flatten().filter(|at| at.y > above).filter_map(|at| {
        // Nobody stands between the cloth and its light while it hangs, so that no way is barred.
        leaning(night, at, DVec3::ZERO)
    }));
    list
}

/// The upper corners of the cloth that a station lights.
fn lit_cloth(yard: &Yard, night: &Night, station: &Station) -> Option<[DVec3; 2]> {
    let cloth = yard.cloths.iter().find(|cloth| station.lights(&cloth.name.0))?;
    let face = night.place(&cloth.name.0)?.face?;
    Some([0.0, 1.0].map(|s| face.point(s, 1.0).as_dvec3()))
}

/// A ladder up to a point, where there is free ground for one: the way round that is farthest from the light.
fn leaning(night: &Night, reaches: DVec3, light: DVec3) -> Option<Ladder> {
    let ways = (0..WAYS).map(|i| f64::from(i) * std::f64::consts::TAU / f64::from(WAYS));
    // From the street side on, where nothing else tells them apart.
    let ways = ways.map(|turn| DVec3::new(turn.sin(), 0.0, turn.cos()));
    let free = ways.filter(|way| way.dot(light) < IN_BEAM).filter_map(|way| {
        let foot = (reaches + OUT * reaches.y * way).with_y(0.0);
        is_free(night, reaches, foot).then_some((way.dot(light), Ladder { foot, reaches }))
    });
    free.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, ladder)| ladder)
}

/// Whether a ladder's foot stands on the ground, and nothing solid is in its way up.
fn is_free(night: &Night, reaches: DVec3, foot: DVec3) -> bool {
    let over = Vec3::new(foot.x as f32, reaches.y as f32, foot.z as f32);
    let ground = night.nearest_solid(Sight::endless(over, Vec3::NEG_Y));
    let stands = ground.is_some_and(|hit| (reaches.y - f64::from(hit.t)).abs() < GROUND_M);
    let up = (reaches - foot).as_vec3();
    let along = up.normalize_or_zero();
    // From above the foot to below what it leans on.
    let from = foot.as_vec3() + 0.15 * up;
    stands && night.nearest_solid(Sight { reach: 0.75 * up.length(), ..Sight::endless(from, along) }).is_none()
}
