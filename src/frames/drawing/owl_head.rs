//! The head of a barn owl in flight, small enough that its feathers are hairs.

use glam::{Vec2, Vec3, vec2, vec3};

use super::canvas::Canvas;
use super::curve::Curve;
use super::field::Field;
use super::seed::Seed;
use super::tone::{bump, ramp};

const WHITE: Vec3 = Vec3::new(0.985, 0.965, 0.92);
const BUFF: Vec3 = Vec3::new(0.92, 0.72, 0.45);
const RUST: Vec3 = Vec3::new(0.58, 0.34, 0.16);
const UMBER: Vec3 = Vec3::new(0.15, 0.09, 0.06);

/// The raster the head is worked out on before it is placed: its own space from -150 to 150.
const PATCH: (u32, u32) = (300, 300);
const EYE: Vec2 = Vec2::new(46.0, -16.0);

/// Draws a head, some 250 units wide in its own space, that looks out of the picture.
pub(super) fn draw(canvas: &mut Canvas, seed: &mut Seed, centre: Vec2, scale: f32, tilt: f32) {
    let pose = |at: Vec2| centre + Vec2::from_angle(tilt).rotate(at) * scale;
    crown(canvas, seed, &pose, scale);
    disc(canvas, seed, &pose, scale);
    features(canvas, seed, &pose, scale);
}

fn heart() -> Curve {
    let half = [
        [0.0, -62.0],
        [26.0, -88.0],
        [66.0, -92.0],
        [102.0, -58.0],
        [108.0, -4.0],
        [88.0, 50.0],
        [48.0, 96.0],
        [0.0, 122.0],
    ];
    Curve::mirrored(0.0, &half)
}

/// Light from the upper left of the head's own space.
fn light(at: Vec2) -> f32 {
    let dish = (vec2(at.x.abs() - 54.0, at.y) / 62.0).length_squared();
    let lean = if at.x < 0.0 { at.x + 54.0 } else { at.x - 54.0 };
    let hollow = 0.16 * bump(dish * 0.6) * (lean / 40.0);
    let ball = 0.86 - 0.0019 * (at.x + 0.7 * at.y);
    (ball + hollow).clamp(0.2, 1.08)
}

/// The round of the head behind the face, gold and pearled.
fn crown(canvas: &mut Canvas, seed: &mut Seed, pose: &dyn Fn(Vec2) -> Vec2, scale: f32) {
    let skull = Curve::mirrored(
        0.0,
        &[[0.0, -124.0], [66.0, -122.0], [120.0, -80.0], [134.0, -6.0], [116.0, 66.0], [64.0, 124.0], [0.0, 146.0]],
    );
    canvas.fill(&skull.moved(|at| pose(at * 0.93)), RUST * 0.45, 1.0);
    for _ in 0..5200 {
        let angle = seed.between(0.0, std::f32::consts::TAU);
        let out = Vec2::from_angle(angle);
        let root = out * vec2(122.0, 124.0) * seed.between(0.72, 1.0) + vec2(0.0, 6.0);
        let tip = root + (out + vec2(0.0, 0.3)) * seed.between(8.0, 20.0);
        let colour = BUFF.lerp(RUST, seed.unit() * 0.8).lerp(WHITE, 0.6 * ramp(10.0, 90.0, root.y))
            * light(root)
            * seed.between(0.6, 1.0);
        canvas.hair([root, (root + tip) * 0.5, tip].map(pose), 2.6 * scale.max(0.45), colour, 0.7);
    }
}

fn disc(canvas: &mut Canvas, seed: &mut Seed, pose: &dyn Fn(Vec2) -> Vec2, scale: f32) {
    let within = Field::inside(PATCH, &heart().moved(|at| at + 150.0)).depth();
    canvas.fill(&heart().moved(|at| pose(at * 1.06)), UMBER, 0.75);
    canvas.fill(&heart().moved(pose), WHITE * 0.6, 1.0);
    let eye = |at: Vec2| vec2(at.x.abs(), at.y).distance(EYE);
    let mut roots: Vec<Vec2> = (0..9000)
        .map(|_| vec2(seed.between(-112.0, 112.0), seed.between(-96.0, 124.0)))
        .filter(|at| within.at(*at + 150.0) > 1.0)
        .collect();
    roots.sort_by(|one, two| eye(*two).total_cmp(&eye(*one)));
    for root in roots {
        let side = if root.x < 0.0 { -1.0 } else { 1.0 };
        let flow = (root - EYE * vec2(side, 1.0)).normalize_or_zero() + root.normalize_or_zero() * 0.5;
        let tip = root + flow.normalize_or_zero() * seed.between(8.0, 20.0) + vec2(0.0, 1.0);
        let rim = 0.75 * bump(within.at(root + 150.0) / 7.0);
        let folded = vec2(root.x.abs(), root.y);
        let smudge = 0.85 * bump((folded - vec2(22.0, 14.0)).length() / 17.0);
        let halo = 0.55 * bump((eye(root) - 20.0) / 10.0);
        let colour =
            WHITE.lerp(BUFF, 0.12).lerp(RUST, rim.max(smudge).max(halo)) * light(root) * (1.0 + 0.12 * seed.bell());
        canvas.hair([root, (root + tip) * 0.5, tip].map(pose), 2.2 * scale.max(0.45), colour, 0.7);
    }
}

/// Eyes, the ridge between them and the beak.
fn features(canvas: &mut Canvas, seed: &mut Seed, pose: &dyn Fn(Vec2) -> Vec2, scale: f32) {
    let beak = Curve::mirrored(0.0, &[[0.0, 26.0], [8.0, 38.0], [8.5, 60.0], [3.0, 76.0], [0.0, 80.0]]);
    canvas.fade(
        &beak.moved(pose),
        pose(vec2(-9.0, 50.0)),
        pose(vec2(9.0, 50.0)),
        &[(0.0, vec3(0.98, 0.88, 0.78), 1.0), (0.5, vec3(0.86, 0.68, 0.56), 1.0), (1.0, vec3(0.34, 0.22, 0.16), 1.0)],
    );
    for _ in 0..620 {
        let y = seed.between(-66.0, 44.0);
        let x = (4.0 + 7.0 * ramp(-66.0, 20.0, y)) * seed.bell();
        let root = vec2(x, y);
        let tip = root + vec2(x * 0.5, seed.between(8.0, 16.0));
        let colour = WHITE.lerp(RUST, 0.6 * ramp(5.0, 12.0, x.abs())) * (0.96 - 0.028 * x);
        canvas.hair([root, (root + tip) * 0.5, tip].map(pose), 2.0 * scale.max(0.45), colour, 0.7);
    }
    for side in [-1.0, 1.0] {
        let centre = vec2(EYE.x * side, EYE.y);
        let globe = |grow: f32| {
            let rim = [
                [-17.0, 10.0],
                [-15.0, -7.0],
                [-4.0, -16.0],
                [9.0, -15.0],
                [17.0, -4.0],
                [16.0, 9.0],
                [6.0, 17.0],
                [-8.0, 17.0],
            ];
            Curve::closed(&rim).moved(|at| pose(centre + at * vec2(side, 1.0) * grow))
        };
        canvas.fill(&globe(1.14), UMBER, 0.75);
        canvas.fill(&globe(0.9), vec3(0.012, 0.01, 0.01), 1.0);
        let eye = pose(centre);
        canvas.patch(
            eye + vec2(2.0, 7.0) * scale,
            13.0 * scale,
            &[(0.0, vec3(0.42, 0.24, 0.10), 0.8), (1.0, Vec3::ZERO, 0.0)],
        );
        canvas.patch(eye, 9.0 * scale, &[(0.0, Vec3::ZERO, 1.0), (0.8, Vec3::ZERO, 0.9), (1.0, Vec3::ZERO, 0.0)]);
        let gleam = eye + vec2(-6.0, -7.0) * scale;
        canvas.patch(gleam, 5.6 * scale, &[(0.0, Vec3::ONE, 1.0), (0.7, Vec3::ONE, 1.0), (1.0, Vec3::ONE, 0.0)]);
        canvas.patch(eye + vec2(7.0, 8.0) * scale, 2.6 * scale, &[(0.0, vec3(1.0, 0.8, 0.5), 0.9), (1.0, BUFF, 0.0)]);
    }
}
