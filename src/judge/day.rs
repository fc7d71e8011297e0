//! Giving itself away: how something unlit stands out from what is behind it. One rule for comparing and for findings, by day and by
//! lamplight.
//!
//! At places spread over it an eye sees its luminance, and that of what is behind it; neither counts as darker than what looks
//! black. It stands out by the geometric mean of their ratios, the brighter over the darker, weighted by solid angle. By day a
//! white overcast sky shines alone, even over the dome, whatever the evening: readings at noon need no noon in the yard.

use crate::{
    geometry::{Quad, Sight},
    light::{EyeRay, Night, Rgb, SKIN, luma},
};
use glam::Vec3;
use std::f64::consts::PI;

/// Illuminance of open level ground under the day's sky, lx: common practice, no source. The ratios are the same under any other.
const OVERCAST_LX: f32 = 10_000.0;

/// What is as dark as this part of the sky looks black by day: common practice, no source.
const BLACK: f64 = 1e-3;

/// Places looked at, across and down.
const PLACES: (usize, usize) = (6, 5);

/// What is seen at one place.
pub(super) struct Glance {
    /// Luminance, cd/m².
    pub seen: f64,
    /// Luminance of what is behind it, cd/m².
    pub behind: f64,
    /// How much it counts: its solid angle, up to a factor.
    pub weight: f64,
}

/// How many times brighter or darker than what is behind it something looks: at least 1, which it is where it cannot be told from that.
/// `black` is the luminance that looks black, cd/m². `None` where no more than half of the `places` is in sight.
pub(super) fn stands_out(glances: &[Glance], places: usize, black: f64) -> Option<f64> {
    if 2 * glances.len() <= places {
        return None;
    }
    let step = |glance: &Glance| (glance.seen.max(black) / glance.behind.max(black)).ln().abs();
    let sum: f64 = glances.iter().map(|glance| glance.weight * step(glance)).sum();
    let weight: f64 = glances.iter().map(|glance| glance.weight).sum();
    Some((sum / weight).exp())
}

/// Luminance that looks black by day, cd/m².
pub(super) fn black_by_day() -> f64 {
    BLACK * f64::from(OVERCAST_LX) / PI
}

/// Luminance along a ray by the day's sky alone, cd/m²; without the see-through things of a name, by its index, where one is given.
pub(super) fn by_day(night: &Night, ray: EyeRay, without: Option<u32>) -> f64 {
    f64::from(luma(night.under_the_sky(ray, Rgb::splat(OVERCAST_LX), without)))
}

/// The middles of equal parts of a face that an eye has in sight, each with the ray to it and its weight, and how many parts there are.
pub(super) fn places(night: &Night, face: &Quad, eye: Vec3) -> (Vec<(EyeRay, f64)>, usize) {
    let (columns, rows) = PLACES;
    let part = |k: usize, of: usize| (k as f32 + 0.5) / of as f32;
    let normal = face.normal().normalize_or_zero();
    let look = |i: usize| {
        let at = face.point(part(i % columns, columns), part(i / columns, rows));
        let (along, distance) = ((at - eye).normalize_or_zero(), (at - eye).length());
        let weight = f64::from(normal.dot(along).abs() / (distance * distance).max(1e-6));
        let free = !night.blocked(Sight::between(eye, at - 4.0 * SKIN * along));
        free.then_some((EyeRay { from: eye, along, width: 0.0 }, weight))
    };
    ((0..columns * rows).filter_map(look).collect(), columns * rows)
}

/// How a see-through thing, by the index of its name, stands out by day to an eye; `None` out of sight, and where it has no flat face.
pub(super) fn contrast(night: &Night, owner: u32, eye: Vec3) -> Option<f64> {
    let face = night.places.get(owner as usize)?.face?;
    let (rays, places) = places(night, &face, eye);
    let glance = |(ray, weight): &(EyeRay, f64)| Glance {
        seen: by_day(night, *ray, None),
        behind: by_day(night, *ray, Some(owner)),
        weight: *weight,
    };
    let glances: Vec<Glance> = rays.iter().map(glance).collect();
    stands_out(&glances, places, black_by_day())
}
