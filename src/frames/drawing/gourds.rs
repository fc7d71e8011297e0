//! Two carved gourds on the steps, lit from within; one has just winked at the other.

use glam::{Vec2, Vec3, vec2, vec3};
use tiny_skia::Pixmap;

use super::canvas::Canvas;
use super::carving::{Carving, Lamp};
use super::curve::Curve;
use super::field::Field;
use super::noise;
use super::tone::{bump, ramp};

const SIZE: (u32, u32) = (1280, 720);

const SKIN: Vec3 = Vec3::new(0.86, 0.40, 0.10);
const FURROW: Vec3 = Vec3::new(0.50, 0.17, 0.035);
const FLESH: Vec3 = Vec3::new(1.0, 0.70, 0.30);
const HEART: Vec3 = Vec3::new(1.0, 0.97, 0.82);
const EMBER: Vec3 = Vec3::new(0.96, 0.42, 0.06);
const STALK: Vec3 = Vec3::new(0.42, 0.40, 0.20);

/// How thick the wall of a gourd looks where it is cut.
const WALL: f32 = 13.0;

/// Both, full size, on black.
pub fn draw() -> Pixmap {
    let mut canvas = Canvas::new(SIZE);
    for gourd in [
        Gourd { centre: vec2(292.0, 384.0), half: vec2(250.0, 226.0), lean: -0.05, wink: false, seed: 3 },
        Gourd { centre: vec2(992.0, 396.0), half: vec2(232.0, 240.0), lean: 0.07, wink: true, seed: 17 },
    ] {
        gourd.draw(&mut canvas);
    }
    canvas.finish()
}

/// One gourd.
struct Gourd {
    centre: Vec2,
    half: Vec2,
    /// How far it is turned on its seat.
    lean: f32,
    /// Whether its left eye is shut.
    wink: bool,
    seed: u32,
}

impl Gourd {
    /// From the raster to the gourd's own space, in which its flank is at 1.
    fn own(&self, at: Vec2) -> Vec2 {
        Vec2::from_angle(-self.lean).rotate(at - self.centre) / self.half
    }

    /// From a drawing space in which the gourd is some 200 units across each half to the raster.
    fn place(&self, at: Vec2) -> Vec2 {
        self.centre + Vec2::from_angle(self.lean).rotate(at * self.half / 200.0)
    }

    fn draw(&self, canvas: &mut Canvas) {
        let cuts = self.cuts();
        let skin = Carving::new(self.heights(&cuts));
        let glow = cuts.clone().blurred(30.0);
        // The wall seen through a cut is what the cut itself, moved towards the gourd's middle, does not cover.
        let depth = cuts.clone().depth();
        let lamps = [
            Lamp { at: vec3(-700.0, -900.0, 1200.0), colour: vec3(0.92, 0.95, 1.0) * 0.88, reach: 9000.0 },
            Lamp { at: vec3(self.centre.x + 420.0, 900.0, 420.0), colour: vec3(1.0, 0.52, 0.2) * 0.62, reach: 900.0 },
        ];
        canvas.rework(|at, under| {
            let place = self.own(at);
            let edge = ramp(1.0, 0.965, self.rim(place));
            if edge <= 0.0 {
                return under;
            }
            let (matt, sheen) = skin.light(at, &lamps);
            let shell = self.shell(place) * (matt + 0.05) + sheen * 0.34;
            // Light comes through the shell where it is thin, around the cuts.
            let through = vec3(1.0, 0.40, 0.07) * (glow.at(at) * 0.62).min(0.5);
            let outside = shell + through;
            let lit = outside.lerp(self.inside(at, &cuts, &depth), cuts.at(at));
            under.lerp(self.pupils(at, lit), edge)
        });
        self.stalk(canvas);
        self.shine(canvas);
    }

    /// The outline: 1 on it, less inside. Ribs make it scalloped.
    fn rim(&self, place: Vec2) -> f32 {
        let lobes = 0.014 * (place.x.atan2(-place.y) * 12.0).cos();
        let dip = 0.07 * bump(place.x / 0.24) * ramp(0.0, -1.0, place.y);
        let squat = vec2(place.x.abs().powf(2.2), place.y.abs().powf(2.2));
        (squat.x + squat.y).powf(1.0 / 2.2) + lobes + dip
    }

    /// How far round the gourd a place lies: ribs are even in this, and so crowd together at the flanks.
    fn round(&self, place: Vec2) -> f32 {
        let width = (1.0 - 0.90 * place.y * place.y).max(0.02).sqrt();
        (place.x / width).clamp(-1.0, 1.0).asin()
    }

    /// From a furrow at 0 to the crest of a rib at 1.
    fn rib(&self, place: Vec2) -> f32 {
        let drift = 0.10 * (noise::smooth(place * 2.2, self.seed) - 0.5);
        (((self.round(place) + drift) * 5.2).cos().abs()).powf(0.55)
    }

    fn heights(&self, cuts: &Field) -> Field {
        let lip = cuts.clone().blurred(4.0);
        Field::new(SIZE, |at| {
            let place = self.own(at);
            let ball = (1.0 - self.rim(place).min(1.0).powi(2)).max(0.0).sqrt() * 200.0;
            let warped = vec2(self.round(place) * 9.0, place.y * 7.0) + 1.3 * noise::cloudy(place * 3.0, self.seed + 8);
            let warts = 5.0 * noise::cloudy(warped, self.seed + 1);
            let pores = 0.35 * noise::smooth(place * 74.0, self.seed + 2);
            ball + 25.0 * self.rib(place) + warts + pores - 9.0 * lip.at(at)
        })
        .blurred(1.0)
    }

    /// The skin's colour: orange on the ribs, dark in the furrows, streaked and freckled.
    fn shell(&self, place: Vec2) -> Vec3 {
        let streak = noise::smooth(vec2(self.round(place) * 34.0, place.y * 3.0), self.seed + 4);
        let cloud = noise::cloudy(place * 4.0, self.seed + 5);
        let freckle =
            ramp(0.58, 0.72, noise::cloudy(vec2(self.round(place) * 16.0, place.y * 11.0) + cloud, self.seed + 6));
        let green = ramp(-0.55, -1.0, place.y + 0.25 * (cloud - 0.5));
        FURROW
            .lerp(SKIN, self.rib(place))
            .lerp(vec3(0.98, 0.60, 0.20), 0.30 * streak + 0.20 * cloud)
            .lerp(vec3(1.0, 0.80, 0.46), 0.30 * freckle)
            .lerp(vec3(0.34, 0.36, 0.12), 0.65 * green)
    }

    /// What is seen through a cut: first the wall's thickness, then the candle-lit hollow.
    fn inside(&self, at: Vec2, cuts: &Field, depth: &Field) -> Vec3 {
        let inward = (self.place(vec2(0.0, 20.0)) - at).normalize_or_zero();
        let beyond = cuts.at(at - inward * WALL).min(ramp(1.0, 5.0, depth.at(at)));
        let candle = at.distance(self.place(vec2(0.0, 72.0))) / self.half.x;
        let hollow = HEART.lerp(vec3(1.0, 0.80, 0.34), ramp(0.05, 0.50, candle)).lerp(EMBER, ramp(0.40, 1.0, candle));
        let fibre = 0.86 + 0.26 * noise::smooth(vec2(at.x / 3.0, at.y / 11.0), self.seed + 7);
        let wall = FLESH.lerp(EMBER, 0.25 + 0.35 * ramp(0.2, 0.9, candle)) * (0.74 * fibre);
        let crisp = 0.55 + 0.45 * ramp(0.0, 3.0, depth.at(at));
        wall.lerp(hollow, ramp(0.25, 0.75, beyond)) * crisp
    }

    /// Shell left standing in an open eye against the light, with a nick in it, turned to where the owl passes.
    fn pupils(&self, at: Vec2, behind: Vec3) -> Vec3 {
        let own = Vec2::from_angle(-self.lean).rotate(at - self.centre) * 200.0 / self.half;
        let side = if own.x < 0.0 { -1.0 } else { 1.0 };
        if self.wink && side < 0.0 {
            return behind;
        }
        let from = own - vec2(85.0 * side, -42.0);
        let disc = ramp(26.0, 24.0, from.length());
        let warm = ramp(15.0, 25.0, from.length()) * ramp(-20.0, 24.0, from.y);
        let shell = vec3(0.10, 0.035, 0.01).lerp(EMBER * 0.8, 0.85 * warm);
        let nick = ramp(8.5, 7.0, from.distance(vec2(-8.0, -8.0)));
        behind.lerp(shell, disc).lerp(HEART, nick)
    }

    /// Everything cut out of the shell.
    fn cuts(&self) -> Field {
        let mut all = Field::new(SIZE, |_| 0.0);
        let mut cut = |points: &[[f32; 2]], mirror: bool| {
            let curve = Curve::closed(points).moved(|at| self.place(vec2(if mirror { -at.x } else { at.x }, at.y)));
            all.merge(&Field::inside(SIZE, &curve), f32::max);
        };
        // A round eye, open but for the lid that lies level across its top.
        let open = [
            [38.0, -50.0],
            [50.0, -62.0],
            [84.0, -70.0],
            [118.0, -64.0],
            [131.0, -50.0],
            [133.0, -24.0],
            [116.0, 0.0],
            [85.0, 9.0],
            [54.0, 0.0],
            [37.0, -24.0],
        ];
        let shut = [
            [34.0, -34.0],
            [56.0, -21.0],
            [84.0, -16.0],
            [112.0, -21.0],
            [136.0, -36.0],
            [126.0, -12.0],
            [104.0, 3.0],
            [84.0, 6.0],
            [62.0, 2.0],
            [43.0, -12.0],
        ];
        cut(&open, false);
        cut(if self.wink { &shut } else { &open }, true);
        let rise = if self.wink { 12.0 } else { 0.0 };
        for (mirror, lift) in [(false, rise), (true, 0.0)] {
            let brow = [[30.0, -84.0], [60.0, -108.0], [100.0, -112.0], [142.0, -90.0], [100.0, -98.0], [62.0, -94.0]];
            cut(&brow.map(|[x, y]| [x, y - lift]), mirror);
        }
        // A small beak.
        cut(
            &[
                [0.0, -4.0],
                [18.0, 8.0],
                [24.0, 28.0],
                [12.0, 50.0],
                [0.0, 66.0],
                [-12.0, 50.0],
                [-24.0, 28.0],
                [-18.0, 8.0],
            ],
            false,
        );
        // The smile, deeper on one side, with a tongue of shell left standing in it as a tooth.
        cut(
            &[
                [-126.0, 52.0],
                [-104.0, 76.0],
                [-66.0, 94.0],
                [-42.0, 99.0],
                [-38.0, 116.0],
                [-16.0, 118.0],
                [-12.0, 103.0],
                [30.0, 101.0],
                [74.0, 90.0],
                [108.0, 70.0],
                [132.0, 44.0],
                [124.0, 80.0],
                [96.0, 116.0],
                [52.0, 140.0],
                [0.0, 147.0],
                [-52.0, 140.0],
                [-96.0, 116.0],
                [-120.0, 84.0],
            ],
            false,
        );
        all
    }

    /// The dry stalk, ridged and bent.
    fn stalk(&self, canvas: &mut Canvas) {
        let sway = if self.wink { -1.0 } else { 1.0 };
        let place = |x: f32, y: f32| self.place(vec2(x * sway, y));
        for step in 0..26 {
            let share = step as f32 / 25.0;
            let side = share * 2.0 - 1.0;
            let lit = 0.28 + 0.62 * bump((side + 0.35 * sway) / 0.55) + 0.16 * (share * 40.0).sin();
            let colour = STALK * lit;
            let root = place(side * 32.0, -176.0 - 10.0 * (1.0 - side * side));
            let waist = place(side * 13.0 - 4.0, -214.0);
            let tip = place(side * 17.0 + 22.0, -244.0 + 7.0 * side);
            canvas.line(&Curve::open(&[root.to_array(), waist.to_array(), tip.to_array()]), 4.0, colour, 0.9);
        }
        let cap = Curve::closed(&[[5.0, -250.0], [22.0, -250.0], [40.0, -238.0], [26.0, -236.0]]);
        canvas.fill(&cap.moved(|at| place(at.x, at.y)), STALK * 1.35, 0.9);
    }

    /// The light in the air before the cuts.
    fn shine(&self, canvas: &mut Canvas) {
        let stops = |strength: f32| {
            [
                (0.0, vec3(1.0, 0.62, 0.20), strength),
                (0.5, vec3(0.9, 0.40, 0.08), strength * 0.4),
                (1.0, Vec3::ZERO, 0.0),
            ]
        };
        canvas.glow(self.place(vec2(0.0, 100.0)), 150.0, &stops(0.30));
        canvas.glow(self.place(vec2(85.0, -30.0)), 90.0, &stops(0.28));
        canvas.glow(self.place(vec2(-85.0, -30.0)), 90.0, &stops(if self.wink { 0.12 } else { 0.28 }));
    }
}
