//! Smooth noise over the plane, for mottling, grain and wear.

use glam::Vec2;

/// A number from 0 to 1 for a lattice point.
fn lattice(x: i32, y: i32, seed: u32) -> f32 {
    let mut mixed = (x as u32).wrapping_mul(0x9E37_79B1) ^ (y as u32).wrapping_mul(0x85EB_CA77) ^ seed;
    mixed = (mixed ^ (mixed >> 15)).wrapping_mul(0x2C1B_3C6D);
    mixed = (mixed ^ (mixed >> 12)).wrapping_mul(0x297A_2D39);
    ((mixed ^ (mixed >> 15)) >> 8) as f32 / (1u32 << 24) as f32
}

/// Noise from 0 to 1 with features about one unit wide.
pub(super) fn smooth(at: Vec2, seed: u32) -> f32 {
    let corner = at.floor();
    let part = at - corner;
    let ease = part * part * (3.0 - 2.0 * part);
    let (x, y) = (corner.x as i32, corner.y as i32);
    let row = |y| {
        let (left, right) = (lattice(x, y, seed), lattice(x + 1, y, seed));
        left + (right - left) * ease.x
    };
    let (top, bottom) = (row(y), row(y + 1));
    top + (bottom - top) * ease.y
}

/// Noise from 0 to 1 with finer and finer features, the widest about one unit wide.
pub(super) fn cloudy(at: Vec2, seed: u32) -> f32 {
    let mut sum = 0.0;
    for octave in 0..4u32 {
        let scale = (1 << octave) as f32;
        sum += smooth(at * scale, seed.wrapping_add(octave)) / scale;
    }
    sum / 1.875
}
