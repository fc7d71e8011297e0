//! A barn owl crossing low over winter reeds, for the shed's long wall.

use glam::{Vec2, Vec3, vec2, vec3};
use tiny_skia::Pixmap;

use super::canvas::Canvas;
use super::curve::Curve;
use super::down::Barrel;
use super::owl_head;
use super::plume::Plume;
use super::reeds;
use super::seed::Seed;
use super::tone::ramp;
use super::wing::{Dress, Wing};

const SIZE: (u32, u32) = (1280, 720);

const WHITE: Vec3 = Vec3::new(0.98, 0.97, 0.95);
const MOON: Vec3 = Vec3::new(0.74, 0.82, 0.96);
const BUFF: Vec3 = Vec3::new(0.93, 0.74, 0.48);
const GOLD: Vec3 = Vec3::new(0.78, 0.56, 0.30);
const ASH: Vec3 = Vec3::new(0.40, 0.39, 0.42);

/// The wing beyond the body: its upper side, gold, in half light.
const FAR: Wing = Wing {
    arm: [[742.0, 300.0], [800.0, 218.0], [838.0, 140.0], [856.0, 80.0]],
    hem: [[662.0, 250.0], [662.0, 190.0], [676.0, 138.0], [704.0, 96.0], [742.0, 62.0], [788.0, 36.0], [840.0, 22.0]],
    light: 0.58,
    hand: 1.0,
    dress: Dress::Over,
};

/// The wing on this side, thrown up and back at the top of its stroke: the white underside.
const NEAR: Wing = Wing {
    arm: [[724.0, 352.0], [690.0, 254.0], [622.0, 166.0], [524.0, 96.0]],
    hem: [
        [560.0, 424.0],
        [480.0, 404.0],
        [398.0, 358.0],
        [324.0, 290.0],
        [276.0, 208.0],
        [264.0, 126.0],
        [300.0, 56.0],
    ],
    light: 1.0,
    hand: -1.0,
    dress: Dress::Under,
};

/// The owl and what it crosses, full size, on black.
pub fn draw() -> Pixmap {
    let mut canvas = Canvas::new(SIZE);
    let mut seed = Seed::new(0x5EED);
    reeds::snow(&mut canvas, &mut seed);
    FAR.draw(&mut canvas, &mut seed);
    tail(&mut canvas, &mut seed);
    body(&mut canvas, &mut seed);
    legs(&mut canvas, &mut seed);
    NEAR.draw(&mut canvas, &mut seed);
    shoulder(&mut canvas, &mut seed);
    owl_head::draw(&mut canvas, &mut seed, vec2(822.0, 356.0), 0.58, 0.16);
    canvas.rework(|at, colour| colour * moonlight(at));
    reeds::draw(&mut canvas, &mut seed);
    canvas.finish()
}

/// The moon stands high on the left: the wing is full in it, the belly is not.
fn moonlight(at: Vec2) -> Vec3 {
    let high = ramp(560.0, 120.0, at.y);
    vec3(0.90, 0.95, 1.06).lerp(vec3(1.06, 1.04, 1.0), high) * (0.94 + 0.24 * high)
}

/// The tail, seen from the side and a little from below.
fn tail(canvas: &mut Canvas, seed: &mut Seed) {
    let root = vec2(540.0, 420.0);
    for index in 0..9 {
        let spread = index as f32 / 8.0;
        let along = Vec2::from_angle(std::f32::consts::PI - 0.40 + 0.44 * spread);
        let tip = root + along * (212.0 - 24.0 * (spread - 0.5).abs());
        let plume = Plume { widest: 0.8, bend: 0.03, ..Plume::new(root, tip, 17.0) };
        let tone = |t: f32, s: f32| {
            let bar = ramp(0.3, 0.95, (t * 4.3 * std::f32::consts::TAU).cos()) * ramp(0.35, 0.55, t);
            let web = WHITE.lerp(MOON, 0.4).lerp(BUFF, 0.25 * spread);
            web.lerp(ASH, bar * 0.8) * (0.60 + 0.40 * t - 0.08 * s)
        };
        plume.draw(canvas, seed, 1.8, &tone);
    }
}

/// The body in side view, gold along the back and white below.
fn body(canvas: &mut Canvas, seed: &mut Seed) {
    let spine = Curve::open(&[[828.0, 376.0], [750.0, 398.0], [668.0, 420.0], [590.0, 430.0], [500.0, 426.0]]);
    let girth = |share: f32| 12.0 + 62.0 * ramp(-0.2, 0.25, share) * ramp(1.1, 0.3, share);
    let tone = |across: f32, lock: f32| {
        // Across runs from the belly at -1 to the back at 1, because the spine runs to the left.
        let back = ramp(0.25, 0.75, across + 0.3 * (lock - 0.5));
        let lit = 0.58 + 0.46 * ramp(-1.1, 0.5, across);
        let coat = WHITE.lerp(MOON, 0.4 * (1.0 - lit)).lerp(BUFF, 0.20 * lock);
        coat.lerp(GOLD.lerp(ASH, 0.5 * lock), back) * (lit * (0.78 + 0.34 * lock))
    };
    Barrel { spine, girth: &girth, tone: &tone, hairs: 15000 }.draw(canvas, seed);
}

/// Long feathered legs, trailing, and the toes they end in.
fn legs(canvas: &mut Canvas, seed: &mut Seed) {
    for (hip, foot, light) in
        [(vec2(640.0, 468.0), vec2(520.0, 520.0), 0.55), (vec2(664.0, 474.0), vec2(552.0, 538.0), 0.85)]
    {
        let girth = |share: f32| 3.5 + 17.0 * (1.0 - share);
        let knee = hip.lerp(foot, 0.5) + vec2(4.0, 7.0);
        let tone = |across: f32, lock: f32| {
            WHITE.lerp(BUFF, 0.3 * lock) * (light * (0.72 + 0.24 * across) * (0.8 + 0.3 * lock))
        };
        let spine = Curve::open(&[hip.to_array(), knee.to_array(), foot.to_array()]);
        Barrel { spine, girth: &girth, tone: &tone, hairs: 1500 }.draw(canvas, seed);
        for (turn, length) in [(-0.5, 22.0), (-0.1, 28.0), (0.3, 24.0)] {
            let along = Vec2::from_angle(std::f32::consts::PI - 0.25 - turn);
            let (knuckle, claw) = (foot + along * length * 0.6, foot + along * length + vec2(0.0, 6.0));
            let toe = Curve::open(&[(foot + vec2(6.0, -2.0)).to_array(), knuckle.to_array()]);
            canvas.line(&toe, 5.0, vec3(0.66, 0.54, 0.44) * light, 1.0);
            canvas.hair([knuckle, knuckle.lerp(claw, 0.5) + vec2(-3.0, -2.0), claw], 4.0, ASH * 0.6 * light, 1.0);
        }
    }
}

/// Loose down that closes the joint between wing and body.
fn shoulder(canvas: &mut Canvas, seed: &mut Seed) {
    let spine = Curve::open(&[[800.0, 376.0], [736.0, 386.0], [660.0, 398.0], [590.0, 410.0], [540.0, 418.0]]);
    let girth = |share: f32| 36.0 * ramp(-0.1, 0.25, share) * ramp(1.05, 0.5, share);
    let tone = |across: f32, lock: f32| {
        let lit = 0.72 + 0.26 * ramp(-1.0, 0.6, across);
        WHITE.lerp(BUFF, 0.28 * lock) * (lit * (0.80 + 0.32 * lock))
    };
    Barrel { spine, girth: &girth, tone: &tone, hairs: 5000 }.draw(canvas, seed);
}
