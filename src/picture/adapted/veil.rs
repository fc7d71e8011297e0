//! The veil that all bright things of a picture draw over it inside the eye.

use crate::{
    light::{Rgb, eye, luma},
    picture::{Camera, Still},
};
use glam::Vec3;
use rayon::prelude::*;

/// Cells across a picture: light is gathered by cell, and the veil is drawn evenly between their middles.
const ACROSS: u32 = 80;

/// Cells that send together less than this part of all the light draw no veil that anybody would tell.
const LEAST: f32 = 1e-3;

/// Illuminance by one pixel, lx, that weighs nothing beside any light, but whose square is still a number.
const DARK: f32 = 1e-12;

/// Light of one cell.
struct Cell {
    along: Vec3,
    /// Illuminance of a plane at the eye that is square to it, lx per channel.
    lx: Rgb,
}

/// Adds the veil to a still and returns its mean, cd/m².
pub(super) fn draw(still: &mut Still, camera: &Camera, age: f64) -> f64 {
    if still.luminance.is_empty() {
        return 0.0;
    }
    let size = still.width.div_ceil(ACROSS).max(1);
    let (columns, rows) = (still.width.div_ceil(size), still.height.div_ceil(size));
    let cells = gather(still, camera, size, columns, rows);
    let all: f32 = cells.iter().map(|cell| luma(cell.lx)).sum();
    let mut bright: Vec<&Cell> = cells.iter().collect();
    bright.sort_by(|a, b| luma(b.lx).total_cmp(&luma(a.lx)));
    let mut left = all;
    let counted = bright.iter().take_while(|cell| {
        let counts = left > LEAST * all;
        left -= luma(cell.lx);
        counts
    });
    let bright = &bright[..counted.count()];
    let own = 0.5 * f64::from(size as f32 * camera.pixel(still.height)).to_degrees();
    let veils: Vec<Rgb> = cells.par_iter().map(|cell| over(cell.along, bright, own, age)).collect();
    let width = still.width as usize;
    let at = |x: usize, y: usize| veils[y.min(rows as usize - 1) * columns as usize + x.min(columns as usize - 1)];
    still.luminance.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        let place = |pixel: usize| ((pixel as f32 + 0.5) / size as f32 - 0.5).max(0.0);
        let down = place(y);
        for (x, pixel) in row.iter_mut().enumerate() {
            let across = place(x);
            let (i, j) = (across as usize, down as usize);
            let (s, t) = (across - i as f32, down - j as f32);
            *pixel += at(i, j).lerp(at(i + 1, j), s).lerp(at(i, j + 1).lerp(at(i + 1, j + 1), s), t);
        }
    });
    veils.iter().map(|veil| f64::from(luma(*veil))).sum::<f64>() / veils.len() as f64
}

/// Light by cell: luminance times the solid angle of each pixel.
fn gather(still: &Still, camera: &Camera, size: u32, columns: u32, rows: u32) -> Vec<Cell> {
    let (width, height) = (still.width, still.height);
    let pixel = camera.pixel(height);
    let cell = |index: u32| {
        let (x0, y0) = (index % columns * size, index / columns * size);
        let mut cell = Cell { along: Vec3::ZERO, lx: Rgb::ZERO };
        for y in y0..(y0 + size).min(height) {
            for x in x0..(x0 + size).min(width) {
                let along = camera.ray(x as f32 + 0.5, y as f32 + 0.5, width, height).along;
                let lx = still.luminance[(y * width + x) as usize] * pixel * pixel * along.dot(camera.forward).powi(3);
                cell.lx += lx;
                // The middle of its light, or of the cell where it is dark.
                cell.along += along * (luma(lx) + DARK);
            }
        }
        Cell { along: cell.along.normalize_or(camera.forward), ..cell }
    };
    (0..columns * rows).into_par_iter().map(cell).collect()
}

/// Veil over a place, cd/m² per channel; a cell veils itself as from half its own width.
fn over(along: Vec3, bright: &[&Cell], own: f64, age: f64) -> Rgb {
    let one = |cell: &&Cell| {
        let cos = f64::from(along.dot(cell.along)).clamp(-1.0, 1.0);
        let degrees = cos.acos().to_degrees().max(own);
        (eye::veil(degrees, age) * cos.max(0.0)) as f32 * cell.lx
    };
    bright.iter().map(one).sum()
}
