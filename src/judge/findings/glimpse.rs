//! What an eye sees of light that lies beside a figure or behind it.

use super::Case;
use crate::{
    geometry::Sight as Ray,
    judge::{
        Landing, Sight, Touch,
        landing::{fineness, open},
        spot::thinned,
    },
    light::{Beam, EyeRay, VeilSort, luma},
};
use glam::Vec3;
use std::collections::BTreeMap;

/// Points of a raster that are looked at.
const POINTS: usize = 64;
/// Of these, as many on one thing are more than an edge of it.
const LEAST: usize = 2;

/// A place of a patch as an eye sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seen {
    /// Where the raster landed, and what its light crossed before on its way.
    pub landing: Landing,
    /// Unit vector to it from the eye.
    along: Vec3,
    /// Solid angle of its cell of the raster, sr.
    open: f64,
}

/// Part of a station's light as it lies on a thing, seen by an eye; means are by solid angle.
pub(super) struct Patch {
    /// The thing.
    pub owner: u32,
    /// Mean luminance by the station there, cd/m².
    pub own: f64,
    /// Mean luminance by all else there, cd/m².
    pub rest: f64,
    /// Its places, one at least.
    pub seen: Vec<Seen>,
}

/// Luminance that nothing out of doors falls below, cd/m²: about that of a wall under a moonless sky, from memory.
const DARK: f64 = 5e-4;

impl Patch {
    /// How many times as bright as without the station a patch on the target itself is: of the figure beside it the target takes no
    /// veil.
    pub fn times_on_target(&self, sight: &Sight) -> f64 {
        self.times(sight.veil)
    }

    /// The same beside the target, as the eye has it that looks there: what the figure scatters inside it hides the faintest.
    pub fn times_beside(&self, sight: &Sight) -> f64 {
        self.times(sight.veil + self.mean(|seen| sight.halo(seen.along)))
    }

    fn times(&self, veil: f64) -> f64 {
        1.0 + self.own / (self.rest + veil).max(DARK)
    }

    /// Mean over its places by solid angle.
    pub fn mean(&self, of: impl Fn(&Seen) -> f64) -> f64 {
        mean(self.seen.iter().map(|seen| (seen.open, of(seen))))
    }
}

/// Mean of values, each with the solid angle that it stands for; 0 where there is none.
fn mean(values: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (open, sum) = values.fold((0.0, 0.0), |(all, sum), (open, value)| (all + open, sum + open * value));
    if open > 0.0 { sum / open } else { 0.0 }
}

/// How far before a place a ray sets out to it, m: so near that nothing else stands between, and no glass mirrors.
const BEFORE: f32 = 5e-3;

/// A ray that an eye sees a place by, from just before it, and what is left of that light at the eye; `None` where the place is out
/// of sight. A beam's picture is read there as finely as its cells are.
pub(super) fn ray(case: &Case, beam: &Beam, eye: Vec3, touch: &Touch) -> Option<(EyeRay, f32)> {
    let along = (touch.point - eye).normalize_or_zero();
    let steep = touch.normal.dot(along);
    if touch.veil.is_none() && steep >= 0.0 {
        return None;
    }
    let side = if steep > 0.0 { -touch.normal } else { touch.normal };
    if case.night.blocked(Ray::between(eye, touch.point + 4e-3 * side)) {
        return None;
    }
    let from = touch.point - BEFORE * along;
    let left = luma(case.night.through(Ray::between(eye, from), [u32::MAX; 2]));
    let depth = (touch.point - beam.lens.at).dot(beam.lens.forward).max(1e-3);
    (left > 0.0).then_some((EyeRay { from, along, width: fineness(beam, depth) / BEFORE }, left))
}

/// Some of these landings, evenly taken, whose place on the target an eye sees.
pub(super) fn in_sight<'a>(case: &Case, station: usize, eye: Vec3, landings: &[&'a Landing]) -> Vec<&'a Landing> {
    let Some(beam) = case.beam(station) else { return Vec::new() };
    let seen = |landing: &&Landing| landing.target.is_some_and(|touch| ray(case, beam, eye, &touch).is_some());
    thinned(landings, POINTS).into_iter().filter(seen).collect()
}

/// What an eye sees of some landings of a station, by the thing that each meets at `at`; only what mirrors nothing.
pub(super) fn patches(
    case: &Case,
    station: usize,
    eye: Vec3,
    landings: &[&Landing],
    at: impl Fn(&Landing) -> Option<Touch>,
) -> Vec<Patch> {
    let Some(beam) = case.beam(station) else { return Vec::new() };
    // Of each place the station's luminance and all else's.
    let mut things: BTreeMap<u32, Vec<(Seen, [f64; 2])>> = BTreeMap::new();
    for landing in thinned(landings, POINTS) {
        let Some(touch) = at(landing) else { continue };
        let beam = landing.sent_by(case.night, beam);
        if touch.veil.is_some_and(|veil| case.night.veils[veil as usize].sort == VeilSort::Mirror) {
            continue;
        }
        let Some((ray, left)) = ray(case, beam, eye, &touch) else { continue };
        let lights = case.night.surfaces_by_source(ray);
        let all: f32 = lights.iter().sum();
        let light = [lights[station], (all - lights[station]).max(0.0)].map(|light| f64::from(left * light));
        let seen = Seen { landing: *landing, along: ray.along, open: open(beam, eye, &touch) };
        things.entry(touch.owner).or_default().push((seen, light));
    }
    let patch = |(owner, places): (u32, Vec<(Seen, [f64; 2])>)| {
        let [own, rest] = [0, 1].map(|i| mean(places.iter().map(|(seen, light)| (seen.open, light[i]))));
        Patch { owner, own, rest, seen: places.into_iter().map(|(seen, _)| seen).collect() }
    };
    things.into_iter().filter(|(_, places)| places.len() >= LEAST).map(patch).collect()
}

/// Mean luminance by solid angle of a see-through target by the station, where the light of a patch has crossed it, without what
/// shows through it, cd/m²; 0 where none is in sight.
pub(super) fn alone(case: &Case, station: usize, eye: Vec3, patch: &Patch) -> f64 {
    let Some(beam) = case.beam(station) else { return 0.0 };
    let lit = |touch: Touch| {
        let (ray, left) = ray(case, beam, eye, &touch)?;
        let past = EyeRay { from: touch.point + BEFORE * ray.along, ..ray };
        let light = |ray| luma(case.night.surfaces_of(ray, station as u32));
        let shown = luma(case.night.through(Ray::between(ray.from, past.from), [u32::MAX; 2]));
        Some((open(beam, eye, &touch), f64::from(left * (light(ray) - shown * light(past)).max(0.0))))
    };
    mean(patch.seen.iter().filter_map(|seen| seen.landing.target).filter_map(lit))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn means_are_by_solid_angle() {
        // Three small places of 8 and a large one of 2: by count 6.5, as seen 3.5.
        let values = [(1.0, 8.0), (1.0, 8.0), (1.0, 8.0), (9.0, 2.0)];
        assert!((mean(values.into_iter()) - 3.5).abs() < 1e-12);
        assert_eq!(mean(std::iter::empty()), 0.0);
    }
}
