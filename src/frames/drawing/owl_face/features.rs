//! The face's eyes, beak and bridge.

use glam::{Vec2, Vec3, vec2, vec3};

use super::{BUFF, CREAM, EYE, Face, RUST, UMBER, pose};
use crate::frames::drawing::curve::Curve;
use crate::frames::drawing::seed::Seed;
use crate::frames::drawing::tone::{bump, ramp};

impl Face {
    /// The beak, mostly hidden, ivory with a flush of pink.
    pub(super) fn beak(&mut self, seed: &mut Seed) {
        for (grow, opacity) in [(9.0, 0.10), (6.0, 0.15), (3.0, 0.22)] {
            let shadow = beak_outline(grow).moved(|at| pose(at + vec2(4.0, 5.0)));
            self.canvas.fill(&shadow, UMBER * 0.4, opacity);
        }
        let shape = beak_outline(0.0).moved(pose);
        let (left, right) = (pose(vec2(-17.0, 100.0)), pose(vec2(18.0, 104.0)));
        let stops = [
            (0.0, vec3(0.62, 0.48, 0.40), 1.0),
            (0.3, vec3(0.95, 0.85, 0.76), 1.0),
            (0.5, vec3(0.90, 0.74, 0.64), 1.0),
            (0.8, vec3(0.50, 0.34, 0.27), 1.0),
            (1.0, vec3(0.56, 0.36, 0.22), 1.0),
        ];
        self.canvas.fade(&shape, left, right, &stops);
        let (top, bottom) = (pose(vec2(0.0, 108.0)), pose(vec2(0.0, 162.0)));
        self.canvas.fade(&shape, top, bottom, &[(0.0, UMBER, 0.0), (0.7, UMBER, 0.35), (1.0, UMBER * 0.5, 0.85)]);
        let gleam = Curve::open(&[[-4.0, 84.0], [-6.0, 108.0], [-4.0, 134.0]]).moved(pose);
        self.canvas.line(&gleam, 3.4, vec3(1.0, 0.97, 0.92), 0.35);
        self.canvas.line(&gleam, 1.4, Vec3::ONE, 0.75);
        for _ in 0..40 {
            let x = seed.between(-12.0, 12.0);
            let y = seed.between(80.0, 140.0);
            let grain = [vec2(x, y), vec2(x * 0.95, y + 5.0), vec2(x * 0.88, y + 11.0)].map(pose);
            self.canvas.hair(grain, 0.8, UMBER, 0.16);
        }
    }

    /// An eye: a dark wet globe set in a rim of skin, with the moon and the lantern in it.
    pub(super) fn eye(&mut self, seed: &mut Seed, side: f32) {
        let centre = vec2(EYE.x * side, EYE.y);
        let place = |x: f32, y: f32| pose(centre + vec2(x * side, y));
        let around = pose(centre);
        let hollow = [(0.0, UMBER * 0.25, 0.95), (0.62, UMBER * 0.5, 0.8), (1.0, RUST * 0.5, 0.0)];
        self.canvas.patch(around, 72.0, &hollow);
        let almond = |grow: f32| eye_outline(grow).moved(|at| place(at.x, at.y));
        self.canvas.fill(&almond(6.0), vec3(0.10, 0.06, 0.045), 1.0);
        self.canvas.line(&almond(4.0), 2.4, vec3(0.58, 0.40, 0.34), 0.55);
        self.canvas.fill(&almond(1.0), vec3(0.012, 0.009, 0.008), 1.0);
        // The iris is all but black; only its lower half lets a little brown through.
        let pool = [(0.0, vec3(0.36, 0.19, 0.07), 0.85), (0.55, vec3(0.20, 0.10, 0.04), 0.5), (1.0, Vec3::ZERO, 0.0)];
        self.canvas.patch(place(4.0, 19.0), 27.0, &pool);
        for _ in 0..220 {
            let angle = seed.between(0.25, 2.9);
            let spoke = Vec2::from_angle(angle);
            let (near, far) = (spoke * seed.between(15.0, 22.0), spoke * seed.between(26.0, 33.0));
            let colour = vec3(0.62, 0.36, 0.13) * seed.between(0.3, 1.0);
            let middle = (near + far) * 0.5;
            self.canvas.hair([near, middle, far].map(|at| place(at.x, at.y)), 0.9, colour, 0.30);
        }
        self.canvas.patch(
            place(0.0, -1.0),
            21.0,
            &[(0.0, Vec3::ZERO, 1.0), (0.8, Vec3::ZERO, 0.95), (1.0, Vec3::ZERO, 0.0)],
        );
        self.canvas.line(&almond(-2.5), 1.6, vec3(0.42, 0.25, 0.13), 0.30);
        self.catch_lights(around);
        self.lashes(seed, centre, side);
    }

    /// The moonlit pane in the eye, its ghost below, and the lantern's warm point. They do not mirror: light is one.
    fn catch_lights(&mut self, eye: Vec2) {
        let at = |x: f32, y: f32| eye + vec2(x, y);
        self.canvas.glow(at(-13.0, -17.0), 24.0, &[(0.0, vec3(0.62, 0.72, 0.9), 0.55), (1.0, Vec3::ZERO, 0.0)]);
        let pane = Curve::closed(&[
            [-22.0, -18.0],
            [-16.0, -26.0],
            [-5.0, -28.0],
            [-3.0, -19.0],
            [-9.0, -11.0],
            [-19.0, -9.0],
        ]);
        self.canvas.fill(&pane.moved(|point| eye + point), vec3(0.98, 0.99, 1.0), 1.0);
        self.canvas.glow(at(15.0, 19.0), 15.0, &[(0.0, vec3(1.0, 0.62, 0.25), 0.75), (1.0, Vec3::ZERO, 0.0)]);
        self.canvas.patch(
            at(16.0, 19.0),
            3.8,
            &[(0.0, vec3(1.0, 0.88, 0.6), 1.0), (0.6, vec3(1.0, 0.7, 0.35), 0.8), (1.0, RUST, 0.0)],
        );
        let rim = Curve::open(&[[-21.0, 24.0], [-8.0, 33.0], [8.0, 34.0], [21.0, 27.0]]).moved(|point| eye + point);
        self.canvas.line(&rim, 1.8, vec3(0.85, 0.72, 0.58), 0.28);
    }

    /// Fine bristles that overhang the eye and break its edge.
    fn lashes(&mut self, seed: &mut Seed, centre: Vec2, side: f32) {
        let rim = eye_outline(7.0).walk(0.55);
        for (at, _) in rim {
            let out = (at * vec2(1.0, 0.9)).normalize();
            let root = at + out * seed.between(-5.0, 2.5);
            let length = seed.between(6.0, 17.0);
            let bend = out.perp() * (4.0 * seed.bell()) + vec2(1.5, 1.0);
            let points = [root, root + out * length * 0.5 + bend * 0.4, root + out * length + bend];
            let place = points.map(|point| centre + vec2(point.x * side, point.y));
            let inner = bump((at - vec2(-36.0, 22.0)).length() / 26.0);
            let pale = CREAM.lerp(BUFF, 0.45).lerp(RUST, 0.25 + 0.7 * inner);
            let dark = seed.unit() < 0.25;
            let colour = if dark { UMBER } else { pale * self.light(place[1]) * 1.05 };
            self.canvas.hair(place.map(pose), 1.5, colour, 0.7);
        }
    }

    /// The ridge from brow to beak: soft feathers parted down the middle that half cover the beak.
    pub(super) fn bridge(&mut self, seed: &mut Seed) {
        let mut roots: Vec<Vec2> = Vec::new();
        for _ in 0..1700 {
            let y = seed.between(-150.0, 96.0);
            let spread = 9.0 + 16.0 * ramp(-150.0, 40.0, y) - 8.0 * ramp(60.0, 100.0, y);
            roots.push(vec2(spread * seed.bell() * 0.8, y));
        }
        roots.sort_by(|one, two| two.y.total_cmp(&one.y));
        for root in roots {
            let parted = root.x / 26.0;
            let flow = vec2(parted * 0.75, 1.0).normalize();
            let length = seed.between(16.0, 34.0);
            let middle = root + flow * length * 0.5 + vec2(parted * 2.0, 0.0);
            let tip = root + flow * length + vec2(parted * 7.0, 0.0);
            let hem = bump((root.x.abs() - 19.0) / 10.0) * ramp(-70.0, 10.0, root.y);
            let colour = CREAM.lerp(RUST, 0.8 * hem) * self.light(root) * (0.92 + 0.14 * seed.bell());
            self.canvas.hair([root, middle, tip].map(pose), seed.between(1.2, 2.4), colour, 0.7);
        }
    }
}

fn beak_outline(grow: f32) -> Curve {
    let half = [[0.0, 52.0], [13.0, 68.0], [17.5, 98.0], [13.0, 128.0], [5.0, 150.0], [0.0, 160.0]];
    Curve::mirrored(0.0, &half.map(|[x, y]| [if x > 0.0 { x + grow } else { x }, y + grow * 0.6]))
}

/// The eye's opening about its own centre, its inner corner drawn down towards the beak (to the left).
fn eye_outline(grow: f32) -> Curve {
    let rim = [
        [-37.0, 21.0],
        [-34.0, -10.0],
        [-14.0, -33.0],
        [14.0, -34.0],
        [34.0, -14.0],
        [36.0, 13.0],
        [18.0, 32.0],
        [-10.0, 35.0],
    ];
    Curve::closed(&rim).moved(|at| at * (1.0 + grow / 36.0))
}
