//! What is seen just beside a figure that leaves no ground on its target.

use crate::{
    geometry::Sight,
    judge::landings::Part,
    light::{Beam, EyeRay, Night},
};
use glam::Vec3;

/// Rays across and down the figure's box and what lies round it.
const GRID: usize = 16;

/// Share of the figure's size that counts as beside it, on each side.
const MARGIN: f32 = 1.0 / 6.0;

/// Least of that, rad.
const LEAST: f32 = 1.7e-3;

/// Eye rays, each with its solid angle, sr, over the box around a figure as seen and a sixth more on each side; what is figure
/// itself is left out.
pub(super) fn rays(
    night: &Night,
    beam: &Beam,
    eye: Vec3,
    ahead: Vec3,
    figure: &[&Part],
    targets: &[u32],
) -> Vec<(EyeRay, f64)> {
    let side = ahead.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
    let up = side.cross(ahead);
    let mut span = [[f32::MAX, f32::MIN]; 2];
    for way in figure.iter().filter_map(|part| part.landing.target).map(|touch| touch.point - eye) {
        let before = way.dot(ahead);
        if before > 1e-3 {
            for (reach, axis) in span.iter_mut().zip([side, up]) {
                let at = way.dot(axis) / before;
                *reach = [reach[0].min(at), reach[1].max(at)];
            }
        }
    }
    if span.iter().any(|[low, high]| low > high) {
        return Vec::new();
    }
    let span = span.map(|[low, high]| {
        let margin = (MARGIN * (high - low)).max(LEAST);
        [low - margin, high + margin]
    });
    let step = span.map(|[low, high]| (high - low) / GRID as f32);
    let rays = (0..GRID * GRID).filter_map(|i| {
        let at = |axis: usize, k: usize| span[axis][0] + (k as f32 + 0.5) * step[axis];
        let (x, y) = (at(0, i % GRID), at(1, i / GRID));
        let way = ahead + x * side + y * up;
        let length = way.length();
        // The tangents' own square, and the cosine three times: twice for the distance, once for the slant.
        let open = step[0] * step[1] / length.powi(3);
        let ray = EyeRay { from: eye, along: way / length, width: open.sqrt() };
        (!meets_figure(night, beam, targets, &ray)).then_some((ray, f64::from(open)))
    });
    rays.collect()
}

/// Whether a ray meets a target where the figure is.
fn meets_figure(night: &Night, beam: &Beam, targets: &[u32], ray: &EyeRay) -> bool {
    let touches = night.touches(Sight::endless(ray.from, ray.along));
    let Some(touch) = touches.iter().find(|touch| targets.contains(&touch.owner)) else { return false };
    beam.lens.project(touch.point).is_some_and(|(u, v, _)| beam.is_figure([u, v]))
}
