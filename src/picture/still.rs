//! A still: the luminance of every pixel, by the core.

use super::Camera;
use crate::light::{Night, Rgb};
use rayon::prelude::*;

/// Luminance of every pixel, cd/m² per channel, row by row from the left upper corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Still {
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
    /// `width × height` values.
    pub luminance: Vec<Rgb>,
}

/// Computes a still with `samples` × `samples` rays a pixel on an even grid; the same scene gives the same bits.
/// `done` hears the share of rows that are finished, from any thread.
pub fn expose(night: &Night, camera: &Camera, size: (u32, u32), samples: u32, done: impl Fn(f32) + Sync) -> Still {
    let (width, height) = size;
    let finished = std::sync::atomic::AtomicU32::new(0);
    let mut luminance = vec![Rgb::ZERO; (width * height) as usize];
    luminance.par_chunks_mut(width.max(1) as usize).enumerate().for_each(|(y, row)| {
        for (x, pixel) in row.iter_mut().enumerate() {
            let mut sum = Rgb::ZERO;
            for i in 0..samples * samples {
                let within = |k: u32| (k as f32 + 0.5) / samples as f32;
                let (dx, dy) = (within(i % samples), within(i / samples));
                sum += night.luminance(camera.ray(x as f32 + dx, y as f32 + dy, width, height));
            }
            *pixel = sum / (samples * samples) as f32;
        }
        let rows = finished.fetch_add(1, std::sync::atomic::Ordering::Relaxed) + 1;
        done(rows as f32 / height as f32);
    });
    Still { width, height, luminance }
}
