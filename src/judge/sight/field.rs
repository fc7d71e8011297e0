//! The field around a figure that an eye is adapted to.

use crate::{
    geometry::Sight,
    light::{EyeRay, Night},
};
use glam::Vec3;

/// Rays over the field.
const RAYS: usize = 96;
/// Fewer than this past the target's edge would be chance: the field is then taken wider.
const LEAST: usize = 16;
/// How much wider, one after the other.
const WIDER: [f32; 3] = [1.0, 2.0, 4.0];

/// Eye rays over a round field `degrees` across about `ahead`, the target left out; over a wider one where the target fills
/// it, and none where it fills all.
pub(super) fn rays(night: &Night, eye: Vec3, ahead: Vec3, target: u32, degrees: f32) -> Vec<EyeRay> {
    let (side, up) = ahead.any_orthonormal_pair();
    for wider in WIDER {
        let radius = (0.5 * degrees * wider).min(80.0).to_radians();
        // Evenly over a disc, without chance: each ray a golden angle on from the last.
        let golden = std::f32::consts::PI * (3.0 - 5_f32.sqrt());
        let ray = |i: usize| {
            let (sin, cos) = (radius * ((i as f32 + 0.5) / RAYS as f32).sqrt()).sin_cos();
            let (across, along) = (golden * i as f32).sin_cos();
            let along = cos * ahead + sin * (along * side + across * up);
            EyeRay { from: eye, along, width: 2.0 * radius / (RAYS as f32).sqrt() }
        };
        let misses =
            |ray: &EyeRay| !night.touches(Sight::endless(eye, ray.along)).iter().any(|touch| touch.owner == target);
        let rays: Vec<EyeRay> = (0..RAYS).map(ray).filter(misses).collect();
        if rays.len() >= LEAST {
            return rays;
        }
    }
    Vec::new()
}
