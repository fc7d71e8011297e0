//! A barn owl's face, turned to the dormer's glass and coming out of the dark.

mod features;

use glam::{Vec2, Vec3, vec2, vec3};
use tiny_skia::Pixmap;

use super::canvas::Canvas;
use super::curve::Curve;
use super::field::Field;
use super::noise;
use super::plume::Plume;
use super::seed::Seed;
use super::tone::{bump, ramp};

const SIZE: (u32, u32) = (1280, 720);
/// Centre of the right eye (the viewer's right), the face's middle being the origin; the left one mirrors it.
const EYE: Vec2 = Vec2::new(96.0, -42.0);

const CREAM: Vec3 = Vec3::new(0.985, 0.945, 0.875);
const BUFF: Vec3 = Vec3::new(0.93, 0.76, 0.52);
const GOLD: Vec3 = Vec3::new(0.84, 0.60, 0.31);
const RUST: Vec3 = Vec3::new(0.62, 0.35, 0.16);
const UMBER: Vec3 = Vec3::new(0.20, 0.115, 0.06);
const SLATE: Vec3 = Vec3::new(0.48, 0.45, 0.43);

/// The face, full size, on black.
pub fn draw() -> Pixmap {
    let mut owl = Face::new();
    let mut seed = Seed::new(0x0B1);
    owl.coat(&mut seed);
    owl.down(&mut seed);
    owl.ruff(&mut seed);
    owl.disc(&mut seed);
    owl.beak(&mut seed);
    for side in [-1.0, 1.0] {
        owl.eye(&mut seed, side);
    }
    owl.bridge(&mut seed);
    // The breast sinks into the dark above the sill, so that the raster's edge cuts nothing.
    owl.canvas.rework(|at, colour| colour * ramp(717.0, 680.0, at.y));
    owl.canvas.finish()
}

/// From the face's own space to the raster: larger, and with the head a little to one side over a still breast.
fn pose(at: Vec2) -> Vec2 {
    let tilt = -0.085 * ramp(330.0, 120.0, at.y);
    Vec2::from_angle(tilt).rotate(at) * 1.14 + vec2(640.0, 356.0)
}

/// The heart that bounds the face.
fn heart() -> Curve {
    let half = [
        [0.0, -140.0],
        [40.0, -186.0],
        [112.0, -210.0],
        [184.0, -178.0],
        [224.0, -95.0],
        [221.0, 8.0],
        [184.0, 108.0],
        [112.0, 188.0],
        [44.0, 232.0],
        [0.0, 244.0],
    ];
    Curve::mirrored(0.0, &half)
}

/// Head, neck and shoulders.
fn outline() -> Curve {
    let half = [
        [0.0, -252.0],
        [110.0, -254.0],
        [212.0, -206.0],
        [268.0, -100.0],
        [268.0, 20.0],
        [244.0, 120.0],
        [262.0, 190.0],
        [350.0, 236.0],
        [432.0, 330.0],
        [0.0, 334.0],
    ];
    Curve::mirrored(0.0, &half)
}

/// The shape of the head towards the viewer, in the face's own space.
fn height(at: Vec2) -> f32 {
    let skull = 235.0 * bump((at / vec2(350.0, 365.0)).length());
    let dish = 62.0 * bump((at.x.abs() - 118.0) / 88.0) * bump((at.y + 8.0) / 128.0);
    let ridge = 46.0 * bump(at.x / 33.0) * ramp(-190.0, -60.0, at.y) * ramp(190.0, 60.0, at.y);
    skull - dish + ridge
}

/// The face while it is drawn.
struct Face {
    canvas: Canvas,
    /// How far inside the heart, or (negative) outside, in the raster.
    within: Field,
    /// How far inside the outline, in the raster.
    body: Field,
}

impl Face {
    fn new() -> Self {
        let heart = heart().moved(pose);
        let mut within = Field::inside(SIZE, &heart).depth();
        within.merge(&Field::inside(SIZE, &heart).map(|mask| 1.0 - mask).depth(), |inside, outside| inside - outside);
        Self { canvas: Canvas::new(SIZE), within, body: Field::inside(SIZE, &outline().moved(pose)).depth() }
    }

    /// The light that falls on a place: the moon from the upper left, a lantern far below, and the dark behind.
    fn light(&self, at: Vec2) -> Vec3 {
        let step = 3.0;
        let across = height(at + Vec2::X * step) - height(at - Vec2::X * step);
        let down = height(at + Vec2::Y * step) - height(at - Vec2::Y * step);
        let normal = vec3(-across, -down, 2.0 * step).normalize();
        let moon = normal.dot(vec3(-0.50, -0.52, 0.69)).max(0.0);
        let lantern = normal.dot(vec3(0.62, 0.62, 0.48)).max(0.0);
        let sum = vec3(1.0, 0.985, 0.96) * (0.10 + 1.22 * moon.powf(1.35)) + vec3(1.0, 0.60, 0.28) * (0.42 * lantern);
        let away = ramp(304.0, 222.0, at.y) * ramp(450.0, 240.0, at.x.abs());
        let gloom = 0.45 + 0.55 * ramp(330.0, -60.0, at.x + 0.35 * at.y);
        sum * (away * gloom)
    }

    /// Crown, cheeks, breast and shoulders: feathers that point away from the face, the nearest to it on top.
    fn coat(&mut self, seed: &mut Seed) {
        let mut roots: Vec<(f32, Vec2)> = Vec::new();
        let (low, high) = (vec2(-440.0, -260.0), vec2(440.0, 340.0));
        for _ in 0..26000 {
            let at = vec2(seed.between(low.x, high.x), seed.between(low.y, high.y));
            let place = pose(at);
            let outside = -self.within.at(place);
            // Small feathers stand closer together.
            let keep = 1.0 / (1.0 + outside.max(0.0) * 0.025);
            if outside > -6.0 && self.body.at(place) > 2.0 && seed.unit() < keep {
                roots.push((outside, at));
            }
        }
        roots.sort_by(|one, two| two.0.total_cmp(&one.0));
        for (_, root) in &roots {
            // Down under the feathers, so that no gap between them shows the night behind.
            let colour = GOLD * self.light(*root) * 0.5;
            self.canvas.patch(pose(*root), 13.0, &[(0.0, colour, 0.5), (1.0, colour, 0.0)]);
        }
        for (outside, root) in roots {
            let breast = ramp(120.0, 210.0, root.y) * ramp(300.0, 200.0, root.x.abs());
            // Swept back along the head rather than on end, so that the outline is smooth.
            let flank = ramp(-215.0, -90.0, root.y);
            let sweep = vec2((root.x / 90.0).clamp(-1.1, 1.1), 0.75 * flank) * ramp(4.0, 34.0, outside);
            let out = ((root - vec2(0.0, 20.0)).normalize() + sweep).normalize();
            let wing = vec2(root.x.signum() * 0.45, 1.0).normalize();
            let down = ramp(130.0, 240.0, root.y);
            let along = Vec2::from_angle(0.16 * seed.bell()).rotate(out.lerp(wing, down).normalize());
            let half = (3.6 + (outside * 0.045).min(5.5)) * seed.between(0.8, 1.2);
            let tip = root + along * half * seed.between(3.6, 5.2);
            self.coat_plume(seed, root, tip, half, breast);
        }
    }

    fn coat_plume(&mut self, seed: &mut Seed, root: Vec2, tip: Vec2, half: f32, breast: f32) {
        let light = self.light(root.lerp(tip, 0.5)) * (1.0 + 0.45 * breast);
        if light.max_element() < 0.015 {
            return;
        }
        let veil = ramp(0.38, 0.66, noise::cloudy(root / 46.0, 11));
        let back = GOLD.lerp(SLATE, veil * 0.75);
        let base = back.lerp(CREAM.lerp(BUFF, 0.15), breast);
        let edge = back.lerp(BUFF, 0.55).lerp(CREAM, breast);
        let pearl = seed.unit() < 0.42;
        let spot = if breast > 0.5 { 0.55 } else { 0.9 };
        let mut plume = Plume::new(pose(root), pose(tip), half);
        plume.bend = 0.08 * seed.bell();
        plume.widest = 0.5;
        let tone = move |t: f32, s: f32| {
            let mut colour = base.lerp(edge, ramp(0.35, 1.0, t)) * (0.55 + 0.45 * ramp(0.0, 0.55, t));
            if pearl {
                // A pale drop with a dark one above it, strung on the shaft.
                let dark = bump((t - 0.62) / 0.15) * bump(s / 0.42);
                let pale = bump((t - 0.82) / 0.09) * bump(s / 0.36);
                colour = colour.lerp(UMBER, dark * spot).lerp(CREAM, pale * 0.95);
            }
            colour * light
        };
        plume.draw(&mut self.canvas, seed, 1.3, &tone);
    }

    /// Down along the outline, too fine to be feathers, that lets the head end softly.
    fn down(&mut self, seed: &mut Seed) {
        for (at, tangent) in outline().walk(0.5) {
            let outward = -tangent.perp();
            let root = at - outward * seed.between(0.0, 14.0);
            let sweep = (outward + vec2(root.x.signum() * 0.5, 1.1)).normalize();
            let tip = root + sweep * seed.between(10.0, 22.0) + outward * (3.0 * seed.bell());
            let colour = GOLD.lerp(CREAM, seed.unit() * 0.7) * self.light(root) * 0.85;
            self.canvas.hair([root, root.lerp(tip, 0.5), tip].map(pose), 1.2, colour, 0.5);
        }
    }

    /// The ruff: rows of short stiff feathers along the heart, white where they start and burnt at the tip.
    fn ruff(&mut self, seed: &mut Seed) {
        let rim = heart().walk(3.4);
        for row in (0..4).rev() {
            for (at, tangent) in &rim {
                let outward = -tangent.perp();
                let down = vec2(0.0, 0.35) * ramp(-150.0, 60.0, at.y);
                let along = (outward + down + vec2(0.12, 0.12) * seed.bell()).normalize();
                let root = *at + outward * (row as f32 * 6.5 - 9.0 + 2.0 * seed.bell());
                let tip = root + along * (17.0 + 3.0 * row as f32 + 3.0 * seed.bell());
                let light = self.light(root) * (1.0 + 0.1 * seed.bell());
                let burnt = [0.2, 0.5, 1.0, 0.55][row];
                let ember = RUST.lerp(GOLD, seed.unit() * 0.8) * seed.between(0.75, 1.2);
                let tone = move |t: f32, _: f32| {
                    let pale = CREAM.lerp(BUFF, 0.25 * row as f32);
                    let mid = pale.lerp(ember, burnt * ramp(0.15, 0.55, t));
                    mid.lerp(UMBER, burnt * 0.85 * ramp(0.6, 0.95, t)) * light
                };
                Plume::new(pose(root), pose(tip), 3.7).draw(&mut self.canvas, seed, 2.2, &tone);
            }
        }
    }

    /// The heart's inside: thousands of loose filaments that stream from the eyes outwards.
    fn disc(&mut self, seed: &mut Seed) {
        let mut roots: Vec<(f32, Vec2)> = Vec::new();
        while roots.len() < 15000 {
            let at = vec2(seed.between(-232.0, 232.0), seed.between(-215.0, 250.0));
            let inside = self.within.at(pose(at));
            if inside > 2.0 {
                roots.push((inside, at));
            }
        }
        for (inside, root) in &roots {
            let light = self.light(*root);
            let colour = plumage(*root, *inside) * light * 0.8;
            self.canvas.patch(pose(*root), 9.0, &[(0.0, colour, 0.5), (1.0, colour, 0.0)]);
        }
        // What is nearer an eye lies on top of what is farther out.
        let eye = |at: Vec2| vec2(at.x.abs(), at.y).distance(EYE);
        roots.sort_by(|one, two| eye(two.1).total_cmp(&eye(one.1)));
        for (inside, root) in roots {
            let flow = stream(root);
            let length = seed.between(22.0, 46.0).min(12.0 + inside * 0.8);
            let middle = root + flow * (length * 0.5) + flow.perp() * (2.4 * seed.bell());
            let tip = root + flow * length + vec2(0.0, 2.0) + flow.perp() * (3.0 * seed.bell());
            let streak = 0.80 + 0.30 * noise::smooth(vec2(flow.to_angle() * 26.0, eye(root) * 0.012), 5);
            let colour = plumage(root, inside) * self.light(root) * (streak + 0.13 * seed.bell());
            let width = seed.between(1.0, 2.3);
            self.canvas.hair([root, middle, tip].map(pose), width, colour, 0.72);
        }
    }
}

/// Which way the filaments run.
fn stream(at: Vec2) -> Vec2 {
    let side = if at.x < 0.0 { -1.0 } else { 1.0 };
    let from_eye = (at - vec2(EYE.x * side, EYE.y)).normalize_or_zero();
    let from_bridge = (at - vec2(0.0, -10.0)).normalize_or_zero();
    (from_eye + from_bridge * 0.7 + vec2(0.0, 0.12)).normalize_or_zero()
}

/// The colour of the heart's inside under white light.
fn plumage(at: Vec2, inside: f32) -> Vec3 {
    let folded = vec2(at.x.abs(), at.y);
    let warm = noise::cloudy(at / 60.0, 3);
    let base = CREAM.lerp(BUFF, 0.10 + 0.22 * warm);
    // The smudge that runs from the eye's inner corner down beside the beak.
    let (from, to) = (vec2(62.0, -22.0), vec2(25.0, 92.0));
    let along = ((folded - from).dot(to - from) / (to - from).length_squared()).clamp(0.0, 1.0);
    let off = folded.distance(from.lerp(to, along));
    let smudge = bump(off / 24.0) * (1.0 - 0.55 * along);
    let halo = 0.40 * bump((folded.distance(EYE) - 44.0) / 22.0);
    let rim = 0.40 * bump(inside / 16.0);
    base.lerp(RUST, (smudge * 0.85).max(halo)).lerp(BUFF, rim)
}
