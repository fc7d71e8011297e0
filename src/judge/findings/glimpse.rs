//! What an eye sees of light that lies beside a figure or behind it.

use super::Case;
use crate::{
    geometry::Sight as Ray,
    judge::{Landing, Sight, Touch, spot::thinned},
    light::{EyeRay, LEAST_LX, VeilSort, luma},
};
use glam::Vec3;
use std::collections::BTreeMap;

/// Points of a raster that are looked at.
const POINTS: usize = 64;
/// Of these, as many on one thing are more than an edge of it.
const LEAST: usize = 2;

/// Part of a station's light as it lies on a thing, seen by an eye.
pub(super) struct Patch {
    /// The thing.
    pub owner: u32,
    /// Mean luminance by the station there, cd/m².
    pub own: f64,
    /// Mean luminance by all else there, cd/m².
    pub rest: f64,
    /// Where, and what the light crossed before on its way.
    pub landings: Vec<Landing>,
}

/// Share of a figure's luminance that an eye scatters over what is close beside it: about that of a figure 2° across at 1°
/// from its middle, by the veil of CIE 146 (`10 E / θ²`).
const HALO: f64 = 0.01;

impl Patch {
    /// How many times as bright as without the station, as the eye has it that looks at the figure beside: what is scattered
    /// inside it hides the faintest.
    pub fn times(&self, sight: &Sight) -> f64 {
        let without = self.rest + sight.veil + HALO * sight.mean.typical;
        1.0 + self.own / without.max(f64::from(LEAST_LX))
    }
}

/// A ray that an eye sees a place by, from just before it, and what is left of that light at the eye; `None` where the place is out
/// of sight.
pub(super) fn ray(case: &Case, eye: Vec3, touch: &Touch) -> Option<(EyeRay, f32)> {
    let along = (touch.point - eye).normalize_or_zero();
    let steep = touch.normal.dot(along);
    if touch.veil.is_none() && steep >= 0.0 {
        return None;
    }
    let side = if steep > 0.0 { -touch.normal } else { touch.normal };
    if case.night.blocked(Ray::between(eye, touch.point + 4e-3 * side)) {
        return None;
    }
    // So near that nothing else stands between, and no glass mirrors.
    let from = touch.point - 5e-3 * along;
    let left = luma(case.night.through(Ray::between(eye, from), [u32::MAX; 2]));
    (left > 0.0).then_some((EyeRay { from, along, width: 0.0 }, left))
}

/// What an eye sees of some landings of a station, by the thing that each meets at `at`; only what mirrors nothing.
pub(super) fn patches(
    case: &Case,
    station: usize,
    eye: Vec3,
    landings: &[&Landing],
    at: impl Fn(&Landing) -> Option<Touch>,
) -> Vec<Patch> {
    let mut things: BTreeMap<u32, Patch> = BTreeMap::new();
    for landing in thinned(landings, POINTS) {
        let Some(touch) = at(landing) else { continue };
        if touch.veil.is_some_and(|veil| case.night.veils[veil as usize].sort == VeilSort::Mirror) {
            continue;
        }
        let Some((ray, left)) = ray(case, eye, &touch) else { continue };
        let lights = case.night.surfaces_by_source(ray);
        let all: f32 = lights.iter().sum();
        let none = || Patch { owner: touch.owner, own: 0.0, rest: 0.0, landings: Vec::new() };
        let patch = things.entry(touch.owner).or_insert_with(none);
        patch.own += f64::from(left * lights[station]);
        patch.rest += f64::from(left * (all - lights[station]).max(0.0));
        patch.landings.push(*landing);
    }
    let mean = |mut patch: Patch| {
        let count = patch.landings.len() as f64;
        (patch.own, patch.rest) = (patch.own / count, patch.rest / count);
        patch
    };
    things.into_values().filter(|patch| patch.landings.len() >= LEAST).map(mean).collect()
}

/// Mean luminance of landings on a see-through target by the station, without what shows through it, cd/m²; 0 where none
/// is in sight.
pub(super) fn alone(case: &Case, station: usize, eye: Vec3, landings: &[&Landing]) -> f64 {
    let (mut sum, mut count) = (0.0, 0.0_f64);
    for touch in thinned(landings, POINTS).into_iter().filter_map(|landing| landing.target) {
        let Some((ray, left)) = ray(case, eye, &touch) else { continue };
        let past = EyeRay { from: touch.point + 5e-3 * ray.along, ..ray };
        let light = |ray| luma(case.night.surfaces_of(ray, station as u32));
        let shown = luma(case.night.through(Ray::between(ray.from, past.from), [u32::MAX; 2]));
        sum += f64::from(left * (light(ray) - shown * light(past)).max(0.0));
        count += 1.0;
    }
    sum / count.max(1.0)
}
