//! Giving itself away by day: how an unlit cloth stands out from what is behind it.

use crate::{
    geometry::Sight,
    judge::spot,
    light::{EyeRay, Night, SKIN, luma},
    scene::Yard,
};

/// Illuminance of open level ground under an overcast sky, lx: common practice, no source. As the sky alone shines, the ratio is
/// the same under any other.
pub(in crate::judge) const OVERCAST_LX: f32 = 10_000.0;

/// Places looked at, across and down.
const PLACES: (usize, usize) = (6, 5);

/// What is as dark as this part of the sky looks black by day: common practice, no source.
const BLACK: f64 = 1e-3;

/// Luminance that looks black by day, cd/m².
pub(in crate::judge) fn black_by_day() -> f64 {
    BLACK * f64::from(OVERCAST_LX) / std::f64::consts::PI
}

/// What the spots see by day where a cloth would hang.
pub(super) struct Day {
    /// For each spot its rays, each with the luminance where nothing hangs, cd/m².
    bare: Vec<Vec<(EyeRay, f64)>>,
}

impl Day {
    /// Looks past a thing, by the index of its name; without a flat face there is nothing to look at.
    pub fn of(night: &Night, yard: &Yard, owner: u32) -> Self {
        let face = night.places.get(owner as usize).and_then(|place| place.face);
        let mut bare = night.without(owner);
        bare.set_sky(OVERCAST_LX);
        let rays = |eye: glam::Vec3| -> Vec<(EyeRay, f64)> {
            let Some(face) = face else { return Vec::new() };
            let (columns, rows) = PLACES;
            let place = |i: usize| {
                let part = |k: usize, of: usize| (k as f32 + 0.5) / of as f32;
                face.point(part(i % columns, columns), part(i / columns, rows))
            };
            let ray = |at: glam::Vec3| {
                let along = (at - eye).normalize_or_zero();
                let free = !night.blocked(Sight::between(eye, at - 4.0 * SKIN * along));
                free.then_some(EyeRay { from: eye, along, width: 0.0 })
            };
            let rays = (0..columns * rows).filter_map(|i| ray(place(i)));
            rays.map(|ray| (ray, by_the_sky(&bare, ray))).collect()
        };
        Self { bare: yard.spots.iter().map(|spot| rays(spot::eye(spot))).collect() }
    }

    /// From each spot how many times brighter or darker than what is behind it the cloth looks, place by place: the
    /// geometric mean, 1 where it cannot be told from it. `None` out of sight.
    pub fn contrast(&self, night: &mut Night) -> Vec<Option<f64>> {
        let evening = night.sky_lx;
        night.set_sky(OVERCAST_LX);
        let all = self.bare.iter().map(|rays| {
            let steps = rays.iter().map(|(ray, bare)| (by_the_sky(night, *ray) / bare).ln().abs());
            (!rays.is_empty()).then(|| (steps.sum::<f64>() / rays.len() as f64).exp())
        });
        let all = all.collect();
        night.sky_lx = evening;
        all
    }
}

/// Luminance by the sky alone, cd/m², never below black.
fn by_the_sky(night: &Night, ray: EyeRay) -> f64 {
    f64::from(luma(night.surfaces_of(ray, night.sky_source))).max(black_by_day())
}
