//! Frames that show how a picture lies: a card for a picture that is missing, and one that marks the corners.

use super::Frame;
use super::level::Plane;
use glam::{Vec2, Vec3};

/// Size of both cards in texels.
const SIZE: (u32, u32) = (1280, 720);
/// Side of a grid cell in texels; both sides of the card are whole multiples of it.
const CELL: f32 = 80.0;
/// Side of a solid corner mark as a part of the card's height.
const MARK: f32 = 0.25;

const RED: Vec3 = Vec3::new(1.0, 0.0, 0.0);
const GREEN: Vec3 = Vec3::new(0.0, 1.0, 0.0);
const BLUE: Vec3 = Vec3::new(0.0, 0.0, 1.0);
const WHITE: Vec3 = Vec3::ONE;

/// The card that stands in for a picture that could not be had.
///
/// A grid and a circle show stretching, the cross shows the middle, and the corners, which carry one to four
/// dots clockwise from the upper left in colours of their own, show turning and mirroring.
pub fn missing() -> Frame {
    let card = painted(|at, size| {
        let middle = size * 0.5;
        let from_middle = at - middle;
        let grid = (at / CELL - (at / CELL).round()).abs() * CELL;
        let mut light = Vec3::splat(0.006);
        light = light.max(Vec3::splat(0.10 * line(grid.min_element(), 1.0)));
        light = light.max(Vec3::splat(0.35 * line(from_middle.length() - size.y * 0.45, 1.5)));
        if from_middle.abs().max_element() < CELL {
            light = light.max(WHITE * line(from_middle.abs().min_element(), 1.5));
        }
        let edge = at.min(size - at).min_element();
        light = light.max(WHITE * line(edge - 1.5, 1.5));
        for (corner, colour) in [RED, GREEN, WHITE, BLUE].into_iter().enumerate() {
            for dot in 0..=corner {
                let inward = Vec2::new(64.0 + 40.0 * dot as f32, 64.0);
                let centre = match corner {
                    0 => inward,
                    1 => Vec2::new(size.x - inward.x, inward.y),
                    2 => size - inward,
                    _ => Vec2::new(inward.x, size.y - inward.y),
                };
                light = light.lerp(colour, disc(at.distance(centre), 14.0));
            }
        }
        light
    });
    Frame { stand_in: true, ..card }
}

/// A black frame with a solid square in each corner: red upper left, green upper right, blue lower left and
/// white lower right.
pub fn corners() -> Frame {
    painted(|at, size| {
        let mark = size.y * MARK;
        let (left, right) = (at.x < mark, at.x > size.x - mark);
        let (top, bottom) = (at.y < mark, at.y > size.y - mark);
        match (left, right, top, bottom) {
            (true, _, true, _) => RED,
            (_, true, true, _) => GREEN,
            (true, _, _, true) => BLUE,
            (_, true, _, true) => WHITE,
            _ => Vec3::ZERO,
        }
    })
}

/// A frame whose light is a function of the texel's centre and the card's size.
fn painted(light: impl Fn(Vec2, Vec2) -> Vec3) -> Frame {
    let (width, height) = SIZE;
    let size = Vec2::new(width as f32, height as f32);
    let light = (0..height)
        .flat_map(|row| (0..width).map(move |column| Vec2::new(column as f32, row as f32) + 0.5))
        .map(|at| light(at, size))
        .collect();
    Frame::assemble(Plane { width, height, light })
}

/// How much of a texel a line covers, from the texel's distance to its middle.
fn line(distance: f32, half_width: f32) -> f32 {
    disc(distance.abs(), half_width)
}

/// How much of a texel a disc covers, from the texel's distance to its centre.
fn disc(distance: f32, radius: f32) -> f32 {
    (radius + 0.5 - distance).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_corners_are_four_different_colours() {
        let card = corners();
        let at = |u, v| card.sample(u, v, 0.0);
        assert_eq!(at(0.05, 0.05), RED);
        assert_eq!(at(0.95, 0.05), GREEN);
        assert_eq!(at(0.05, 0.95), BLUE);
        assert_eq!(at(0.95, 0.95), WHITE);
        assert_eq!(at(0.5, 0.5), Vec3::ZERO);
    }

    #[test]
    fn no_flip_or_half_turn_of_the_card_looks_like_the_card() {
        let card = missing();
        let (red, other) = (64.0 / 1280.0, 64.0 / 720.0);
        assert_eq!(card.sample(red, other, 0.0), RED);
        for (u, v) in [(1.0 - red, other), (red, 1.0 - other), (1.0 - red, 1.0 - other)] {
            assert_ne!(card.sample(u, v, 0.0), RED);
        }
    }
}
