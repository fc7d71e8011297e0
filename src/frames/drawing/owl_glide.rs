//! A barn owl banking overhead in a glide, its wings from corner to corner of an upright frame.

use glam::{Vec2, Vec3, vec2, vec3};
use tiny_skia::Pixmap;

use super::canvas::Canvas;
use super::curve::Curve;
use super::down::Barrel;
use super::plume::Plume;
use super::seed::Seed;
use super::tone::{bump, ramp};
use super::wing::{Dress, Wing};

const SIZE: (u32, u32) = (720, 1280);

const WHITE: Vec3 = Vec3::new(0.97, 0.965, 0.95);
const MOON: Vec3 = Vec3::new(0.80, 0.86, 0.96);
const BUFF: Vec3 = Vec3::new(0.93, 0.74, 0.48);
const ASH: Vec3 = Vec3::new(0.40, 0.38, 0.40);

/// The owl, full size, on black.
pub fn draw() -> Pixmap {
    let mut canvas = Canvas::new(SIZE);
    let mut seed = Seed::new(0x611DE);
    tail(&mut canvas, &mut seed);
    for wing in [&FAR, &NEAR] {
        wing.draw(&mut canvas, &mut seed);
    }
    body(&mut canvas, &mut seed);
    super::owl_head::draw(&mut canvas, &mut seed, vec2(286.0, 492.0), 0.60, -0.42);
    canvas.rework(|at, colour| colour * moonlight(at));
    canvas.finish()
}

/// How the moon falls on the whole bird: full on breast and near wrist, thinner towards what is far.
fn moonlight(at: Vec2) -> Vec3 {
    let near = bump(at.distance(vec2(250.0, 640.0)) / 520.0);
    let cold = vec3(0.90, 0.95, 1.06);
    cold.lerp(vec3(1.06, 1.03, 0.98), near) * (0.86 + 0.36 * near)
}

/// The upper wing, reaching away from the viewer.
const FAR: Wing = Wing {
    arm: [[338.0, 520.0], [392.0, 356.0], [470.0, 250.0], [560.0, 150.0]],
    hem: [
        [470.0, 640.0],
        [560.0, 560.0],
        [632.0, 452.0],
        [676.0, 330.0],
        [694.0, 210.0],
        [690.0, 108.0],
        [660.0, 44.0],
    ],
    light: 0.92,
    hand: -1.0,
    dress: Dress::Under,
};

/// The lower wing, nearer and so larger.
const NEAR: Wing = Wing {
    arm: [[300.0, 590.0], [178.0, 640.0], [112.0, 800.0], [66.0, 985.0]],
    hem: [
        [392.0, 800.0],
        [372.0, 930.0],
        [318.0, 1040.0],
        [244.0, 1130.0],
        [166.0, 1196.0],
        [98.0, 1234.0],
        [44.0, 1244.0],
    ],
    light: 1.0,
    hand: 1.0,
    dress: Dress::Under,
};

/// The fanned tail beyond the body, barred like the wings.
fn tail(canvas: &mut Canvas, seed: &mut Seed) {
    let root = vec2(424.0, 742.0);
    for index in [0, 11, 1, 10, 2, 9, 3, 8, 4, 7, 5, 6] {
        let spread = (index as f32 - 5.5) / 5.5;
        let along = Vec2::from_angle(0.98 - 0.42 * spread);
        let tip = root + along * (236.0 - 18.0 * spread * spread);
        let plume = Plume { bend: -0.03 * spread, widest: 0.8, ..Plume::new(root + along * 20.0, tip, 20.0) };
        let tone = |t: f32, s: f32| {
            let bar = ramp(0.3, 0.95, ((t - 0.02 * s.abs()) * 4.4 * std::f32::consts::TAU).cos()) * ramp(0.3, 0.5, t);
            let web = WHITE.lerp(MOON, 0.5).lerp(BUFF, 0.12);
            web.lerp(ASH, bar * 0.8) * (0.48 + 0.36 * ramp(0.2, 0.9, t) - 0.06 * s)
        };
        plume.draw(canvas, seed, 1.8, &tone);
    }
}

/// Breast and belly, white with a few dark drops, on a spine that runs from the throat to the tail.
fn body(canvas: &mut Canvas, seed: &mut Seed) {
    let spine = Curve::open(&[[300.0, 500.0], [340.0, 590.0], [388.0, 680.0], [432.0, 762.0], [476.0, 846.0]]);
    let girth = |share: f32| 8.0 + 84.0 * ramp(-0.30, 0.22, share) * ramp(1.12, 0.25, share);
    let tone = |across: f32, lock: f32| {
        let lit = ramp(-1.25, 0.30, across) * (1.0 - 0.22 * ramp(0.45, 1.0, across));
        let tint = MOON.lerp(WHITE, lit).lerp(BUFF, 0.22 * lock + 0.10 * (1.0 - lit));
        tint * ((0.34 + 0.74 * lit) * (0.80 + 0.34 * lock))
    };
    Barrel { spine, girth: &girth, tone: &tone, hairs: 15000 }.draw(canvas, seed);
}
