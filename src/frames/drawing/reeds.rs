//! Winter reeds and bare twigs in a low arc, and snow in the air above them.

use glam::{Vec2, Vec3, vec2, vec3};

use super::canvas::Canvas;
use super::curve::Curve;
use super::seed::Seed;
use super::tone::{bump, ramp};

const STRAW: Vec3 = Vec3::new(0.74, 0.60, 0.38);
const FROST: Vec3 = Vec3::new(0.84, 0.90, 0.98);
const BARK: Vec3 = Vec3::new(0.34, 0.30, 0.30);

/// Where the ground lies: a shallow hollow whose ends rise.
fn ground(x: f32) -> f32 {
    let out = (x - 640.0) / 600.0;
    692.0 - 44.0 * out * out
}

/// How tall reeds grow at a place: low in the hollow, high at its ends, none at the raster's edge.
fn growth(x: f32) -> f32 {
    let out = ((x - 640.0) / 600.0).abs();
    (40.0 + 210.0 * out.powf(1.7)) * ramp(1.03, 0.88, out)
}

/// Flakes and far stars: mostly points, a few soft discs that are near.
pub(super) fn snow(canvas: &mut Canvas, seed: &mut Seed) {
    for _ in 0..210 {
        let at = vec2(seed.between(30.0, 1250.0), seed.between(24.0, 640.0));
        let near = seed.unit().powi(5);
        let radius = 1.1 + 3.4 * near;
        let light = seed.between(0.35, 1.0) * (1.0 - 0.5 * near);
        canvas.glow(at, radius * 2.6, &[(0.0, FROST * 0.5, 0.5 * light), (1.0, Vec3::ZERO, 0.0)]);
        canvas.patch(at, radius, &[(0.0, FROST, light), (0.5, FROST, light * 0.8), (1.0, FROST, 0.0)]);
    }
}

/// The reeds, from the back to the front, with the twigs among them.
pub(super) fn draw(canvas: &mut Canvas, seed: &mut Seed) {
    for layer in 0..3 {
        let near = (layer as f32 + 1.0) / 3.0;
        for (x, lean, size) in [(118.0, 0.35, 0.95), (1176.0, -0.4, 1.05), (248.0, 0.2, 0.6), (1046.0, -0.2, 0.55)] {
            if layer == 1 {
                let root = vec2(x, ground(x));
                twig(canvas, seed, root, Vec2::from_angle(lean - 1.571), 74.0 * size, 6.5 * size, 5);
            }
        }
        for _ in 0..[420, 420, 340][layer] {
            let x = seed.between(34.0, 1246.0);
            let height = growth(x) * seed.between(0.35, 1.0) * (1.16 - 0.34 * near);
            let root = vec2(x, ground(x) - 5.0 * seed.unit());
            reed(canvas, seed, root, height, near);
        }
    }
    bank(canvas, seed);
}

/// One stalk, bent by the owl's wind, some with a plume of seed.
fn reed(canvas: &mut Canvas, seed: &mut Seed, root: Vec2, height: f32, near: f32) {
    let wind = 0.22 * bump((root.x - 640.0) / 420.0) + 0.10 + 0.12 * seed.bell();
    let bend = height * wind;
    let tip = root + vec2(bend, -height);
    let middle = root + vec2(bend * 0.2, -height * 0.6);
    let colour = STRAW.lerp(FROST, 0.25 + 0.45 * seed.unit()) * ((0.22 + 0.62 * near) * seed.between(0.6, 1.0));
    let width = 1.3 + 1.9 * near;
    canvas.hair([root, middle, tip], width, colour * 0.8, 0.95);
    canvas.hair([root, middle, tip].map(|at| at - vec2(width * 0.3, 0.0)), width * 0.4, colour.lerp(FROST, 0.5), 0.8);
    if seed.unit() < 0.5 {
        let from = root.lerp(tip, seed.between(0.25, 0.6));
        let side = if seed.unit() < 0.5 { -1.0 } else { 1.0 };
        let reach = vec2(side * height * 0.24 + bend * 0.3, -height * seed.between(0.05, 0.22));
        canvas.hair(
            [from, from + reach * 0.5 + vec2(0.0, -7.0), from + reach + vec2(0.0, 9.0)],
            width * 1.3,
            colour * 0.85,
            0.9,
        );
    }
    if height > 70.0 && seed.unit() < 0.42 {
        head(canvas, seed, middle, tip, colour, near);
    }
}

/// A feathery head of seed that hangs over to the lee side.
fn head(canvas: &mut Canvas, seed: &mut Seed, middle: Vec2, tip: Vec2, colour: Vec3, near: f32) {
    let along = (tip - middle).normalize_or_zero();
    let length = 26.0 + 20.0 * near;
    for _ in 0..46 {
        let share = seed.unit();
        let root = tip - along * (length * share) + vec2(3.0 * (1.0 - share), 0.0);
        let spread = bump((share - 0.55) / 0.45);
        let out =
            along * seed.between(5.0, 13.0) + along.perp() * (9.0 * spread * seed.bell()) + vec2(5.0 * spread, 3.0);
        let light = colour.lerp(FROST, 0.55 * seed.unit()) * 1.12;
        canvas.hair([root, root + out * 0.5, root + out + vec2(1.0, 2.0)], 1.7, light, 0.75);
    }
}

/// A bare branch that forks, frosted along its upper side.
fn twig(canvas: &mut Canvas, seed: &mut Seed, root: Vec2, along: Vec2, length: f32, width: f32, forks: u32) {
    let tip = root + along * length;
    let bow = root.lerp(tip, 0.5) + along.perp() * (length * 0.07 * seed.bell());
    let limb = Curve::open(&[root.to_array(), bow.to_array(), tip.to_array()]);
    canvas.line(&limb, width, BARK * 0.75, 1.0);
    let lit = limb.moved(|at| at - vec2(width * 0.22, width * 0.25));
    canvas.line(&lit, (width * 0.36).max(0.7), FROST * 0.85, 0.75);
    if forks == 0 {
        canvas.patch(tip, 3.2, &[(0.0, FROST, 0.9), (1.0, FROST, 0.0)]);
        return;
    }
    let turn = seed.between(0.28, 0.55);
    for (angle, share) in [(-turn, 0.78), (turn * 0.9, 0.72)] {
        let way = Vec2::from_angle(angle + 0.1 * seed.bell()).rotate(along).lerp(vec2(0.0, -1.0), 0.08).normalize();
        let next = length * share * seed.between(0.85, 1.1);
        twig(canvas, seed, tip, way, next, width * 0.68, forks - 1);
    }
    if seed.unit() < 0.5 {
        let way = Vec2::from_angle(turn * 1.8).rotate(along);
        twig(canvas, seed, bow, way, length * 0.45, width * 0.45, forks.saturating_sub(2));
    }
}

/// Snow along the ground, a low bright line that fades downwards.
fn bank(canvas: &mut Canvas, seed: &mut Seed) {
    for _ in 0..5200 {
        let x = seed.between(50.0, 1230.0);
        let ends = ramp(50.0, 190.0, x) * ramp(1230.0, 1090.0, x);
        let below = seed.unit();
        let at = vec2(x, ground(x) - 6.0 + 19.0 * below * below);
        let light = (1.0 - below) * ends * seed.between(0.6, 1.0);
        if light < 0.12 {
            continue;
        }
        let reach = seed.between(5.0, 16.0);
        let colour = FROST.lerp(vec3(0.45, 0.56, 0.74), below) * light;
        canvas.hair([at, at + vec2(reach * 0.5, -1.5), at + vec2(reach, 0.5)], 2.4, colour, 0.6);
    }
}
