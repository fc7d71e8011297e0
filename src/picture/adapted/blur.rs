//! Detail that an eye cannot tell in the dark.

use crate::{
    light::{Rgb, eye},
    picture::{Camera, Still},
};
use rayon::prelude::*;

/// What a grating of full contrast keeps of it at the finest that an eye tells: ours, no source. A tenth is hardly a grating.
const KEPT: f64 = 0.1;

/// A blur narrower than this is not worth its time, pixels.
const LEAST: f64 = 0.3;

/// Softens a still as an eye adapted to a luminance, cd/m², sees it: by a bell-shaped blur, of which a grating as fine as
/// [`eye::acuity`] keeps a tenth of its contrast.
pub(super) fn soften(still: &mut Still, camera: &Camera, adaptation: f64) {
    // exp(−2 π² σ² f²) = KEPT
    let degrees = (-KEPT.ln() / 2.0).sqrt() / std::f64::consts::PI / eye::acuity(adaptation);
    let sigma = degrees.to_radians() / f64::from(camera.pixel(still.height));
    if still.luminance.is_empty() || sigma < LEAST {
        return;
    }
    let reach = (3.0 * sigma).ceil() as usize;
    let mut weights: Vec<f32> = (0..=reach).map(|i| (-0.5 * (i as f64 / sigma).powi(2)).exp() as f32).collect();
    let sum = weights[0] + 2.0 * weights[1..].iter().sum::<f32>();
    weights.iter_mut().for_each(|weight| *weight /= sum);
    let (width, height) = (still.width as usize, still.height as usize);
    let across = pass(&still.luminance, &weights, width, |x, y, step| y * width + shifted(x, step, width));
    still.luminance = pass(&across, &weights, width, |x, y, step| shifted(y, step, height) * width + x);
}

/// A place some steps on, held within the picture.
fn shifted(at: usize, step: isize, size: usize) -> usize {
    at.saturating_add_signed(step).min(size - 1)
}

fn pass(from: &[Rgb], weights: &[f32], width: usize, place: impl Fn(usize, usize, isize) -> usize + Sync) -> Vec<Rgb> {
    let mut to = vec![Rgb::ZERO; from.len()];
    to.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        for (x, pixel) in row.iter_mut().enumerate() {
            let both = |i: usize| from[place(x, y, i as isize)] + from[place(x, y, -(i as isize))];
            let beside = (1..weights.len()).map(|i| weights[i] * both(i)).sum::<Rgb>();
            *pixel = weights[0] * from[place(x, y, 0)] + beside;
        }
    });
    to
}
