//! The veil that all bright things of a picture draw over it inside the eye.

use crate::{
    light::{Rgb, eye, luma},
    picture::{Camera, Still},
};
use glam::Vec3;
use rayon::prelude::*;

/// Cells across a picture: light is gathered by cell, and the veil is drawn smoothly between their middles.
const ACROSS: u32 = 200;

/// Nearer than this, degrees, light is a thing's own or its ground's, which do not veil themselves: half of the foveal field of 1.5° of
/// P. Moon and D. Spencer, "The visual effect of non-uniform surrounds", 1945 (from memory).
const FOVEA: f64 = 0.75;

/// The same at least in cells: what is smoother than that is drawn between their middles without a trace of them.
const SMOOTH: f64 = 2.5;

/// Values of the law that are kept, evenly over the chord between two directions, 0 to 2.
const KEPT: usize = 8192;

/// Cells that send together less than this part of all the light draw no veil that anybody would tell.
const LEAST: f32 = 1e-3;

/// Illuminance by one pixel, lx, that weighs nothing beside any light, but whose square is still a number.
const DARK: f32 = 1e-12;

/// One cell.
struct Cell {
    /// Its middle.
    middle: Vec3,
    /// The middle of its light.
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
    let law = Law::of((SMOOTH * f64::from(size as f32 * camera.pixel(still.height)).to_degrees()).max(FOVEA), age);
    let veils: Vec<Rgb> = cells.par_iter().map(|cell| law.over(cell.middle, bright)).collect();
    let width = still.width as usize;
    let (last_x, last_y) = (columns as isize - 1, rows as isize - 1);
    let at = |x: isize, y: isize| veils[(y.clamp(0, last_y) * columns as isize + x.clamp(0, last_x)) as usize];
    // Between cells by quadratic B-splines, whose slope has no steps.
    let spline = |pixel: usize| {
        let place = (pixel as f32 + 0.5) / size as f32 - 0.5;
        let off = place - place.round();
        let weights = [0.5 * (0.5 - off).powi(2), 0.75 - off * off, 0.5 * (0.5 + off).powi(2)];
        (-1..).zip(weights).map(move |(step, weight)| (place.round() as isize + step, weight))
    };
    still.luminance.par_chunks_mut(width).enumerate().for_each(|(y, row)| {
        for (x, pixel) in row.iter_mut().enumerate() {
            for (j, down) in spline(y) {
                *pixel += spline(x).map(|(i, across)| down * across * at(i, j)).sum::<Rgb>();
            }
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
        let half = 0.5 * size as f32;
        let middle = camera.ray(x0 as f32 + half, y0 as f32 + half, width, height).along;
        let mut cell = Cell { middle, along: Vec3::ZERO, lx: Rgb::ZERO };
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

/// The law of the veil by the chord between two directions, `2 sin(θ/2)`, times cos θ; nearer than a thing's own field it goes on as a
/// bell, `exp(−c θ²)`, that meets it with the same slope.
struct Law(Vec<f32>);

impl Law {
    fn of(own: f64, age: f64) -> Self {
        let at = |degrees: f64| eye::veil(degrees, age).ln();
        let slope = (at(1.01 * own) - at(0.99 * own)) / (0.02 * own);
        let law = |degrees: f64| {
            if degrees < own {
                (at(own) + slope * (degrees * degrees - own * own) / (2.0 * own)).exp()
            } else {
                eye::veil(degrees, age)
            }
        };
        let kept = |i: usize| {
            let angle = 2.0 * (i as f64 / KEPT as f64).min(1.0).asin();
            (law(angle.to_degrees()) * angle.cos().max(0.0)) as f32
        };
        Self((0..=KEPT + 1).map(kept).collect())
    }

    /// Veil over a place, cd/m² per channel.
    fn over(&self, place: Vec3, bright: &[&Cell]) -> Rgb {
        let one = |cell: &&Cell| {
            let at = 0.5 * KEPT as f32 * (place - cell.along).length().min(2.0);
            let (i, between) = (at as usize, at.fract());
            (self.0[i] + between * (self.0[i + 1] - self.0[i])) * cell.lx
        };
        bright.iter().map(one).sum()
    }
}
