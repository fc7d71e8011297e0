//! A barn owl's spread wing, feather by feather.

use glam::{Vec3, vec2};

use super::canvas::Canvas;
use super::curve::Curve;
use super::noise;
use super::plume::Plume;
use super::seed::Seed;
use super::tone::{bump, ramp};

const WHITE: Vec3 = Vec3::new(0.97, 0.965, 0.95);
const MOON: Vec3 = Vec3::new(0.80, 0.86, 0.96);
const BUFF: Vec3 = Vec3::new(0.93, 0.74, 0.48);
const GOLD: Vec3 = Vec3::new(0.80, 0.58, 0.32);
const RUST: Vec3 = Vec3::new(0.60, 0.36, 0.18);
const ASH: Vec3 = Vec3::new(0.40, 0.38, 0.40);

/// The side of the wing that is seen.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Dress {
    /// White and faintly barred.
    Under,
    /// Gold with a grey veil.
    Over,
}

/// A wing's skeleton as it lies in the picture, from the body outwards.
pub(super) struct Wing {
    /// Shoulder, elbow and wrist along the leading edge, and the end of the hand.
    pub arm: [[f32; 2]; 4],
    /// Tips of the flight feathers, from the innermost to the outermost.
    pub hem: [[f32; 2]; 7],
    /// How much of the moon reaches it.
    pub light: f32,
    /// On which side of a feather, going outwards, its broad vane lies.
    pub hand: f32,
    /// The side that is seen.
    pub dress: Dress,
}

impl Wing {
    /// Draws the wing: flight feathers, then the rows that lie over them, then the leading edge.
    pub fn draw(&self, canvas: &mut Canvas, seed: &mut Seed) {
        let arm = Curve::open(&self.arm);
        let hem = Curve::open(&self.hem);
        self.flight(canvas, seed, &arm, &hem);
        self.coverts(canvas, seed, &arm, &hem);
        self.leading_edge(canvas, seed);
    }

    /// The long feathers, the innermost first: from below, each lies over its inner neighbour.
    fn flight(&self, canvas: &mut Canvas, seed: &mut Seed, arm: &Curve, hem: &Curve) {
        const COUNT: usize = 23;
        for index in 0..COUNT {
            let share = index as f32 / (COUNT - 1) as f32;
            let root = arm.at(0.10 + 0.84 * share.powf(0.92));
            let tip = hem.at(share) + vec2(seed.bell(), seed.bell()) * 5.0;
            let primary = ramp(0.45, 0.62, share);
            let length = root.distance(tip);
            let plume = Plume {
                bend: self.hand * (0.03 + 0.05 * primary),
                half: (15.0 + length * 0.030) * (1.0 - 0.28 * ramp(0.8, 1.0, share)),
                lean: 0.5 + self.hand * -0.16 * primary,
                widest: 0.72,
                ..Plume::new(root, tip, 1.0)
            };
            let phase = seed.between(-0.02, 0.02);
            let light = self.light * (0.80 + 0.20 * share);
            let bars = 4.6;
            let tone = |t: f32, s: f32| {
                // Bars run level across neighbouring feathers, strongest towards the tip and on the inner vane.
                let wave = ((t + phase + 0.03 * s.abs()) * bars * std::f32::consts::TAU).cos();
                let bar = ramp(0.35, 0.95, wave) * ramp(0.42, 0.70, t);
                let tipped = ramp(0.90, 1.0, t) * 0.35;
                let clear = ramp(1.0, 0.0, s * -self.hand) * 0.35 + 0.65;
                let web = match self.dress {
                    Dress::Under => WHITE.lerp(MOON, 0.35 + 0.4 * ramp(0.3, 1.0, t)),
                    Dress::Over => BUFF.lerp(GOLD, 0.5).lerp(ASH, 0.25 * s.abs()),
                };
                let shade = 0.66 + 0.34 * ramp(0.25, 0.75, t) - 0.12 * s * self.hand;
                let glow = BUFF * (0.10 * ramp(0.5, 1.0, t));
                (web.lerp(ASH, (bar * clear * 0.85).max(tipped)) * shade + glow * shade) * light
            };
            plume.draw(canvas, seed, 1.9, &tone);
        }
    }

    /// The small feathers that line the wing, row on row from the flight feathers up to the leading edge.
    fn coverts(&self, canvas: &mut Canvas, seed: &mut Seed, arm: &Curve, hem: &Curve) {
        for (row, (from, reach, count)) in
            [(0.30, 0.30, 30), (0.20, 0.24, 36), (0.12, 0.18, 42), (0.06, 0.14, 48), (0.015, 0.10, 56)]
                .into_iter()
                .enumerate()
        {
            for index in 0..count {
                let share = (index as f32 + 0.5) / count as f32;
                let on_arm = arm.at(0.06 + 0.88 * share);
                let on_hem = hem.at(share);
                let thin = 1.0 - 0.45 * ramp(0.55, 1.0, share);
                let place = |depth: f32| on_arm.lerp(on_hem, depth * thin);
                let root = place(from + 0.01 * seed.bell());
                let tip = place(from + reach * seed.between(0.92, 1.06)) + vec2(seed.bell(), seed.bell()) * 2.0;
                let half = (root.distance(tip) * 0.24).clamp(5.0, 15.0);
                let warm = [0.04, 0.10, 0.20, 0.42, 0.66][row] + 0.14 * seed.bell();
                let veil = ramp(0.40, 0.62, noise::cloudy(root / 34.0, 31));
                let ground = match self.dress {
                    Dress::Under => WHITE.lerp(BUFF, warm.clamp(0.0, 1.0)),
                    Dress::Over => GOLD.lerp(ASH * 1.3, veil * 0.8).lerp(BUFF, 0.2),
                };
                let spotted = row < 3 && seed.unit() < 0.5;
                let dapple = 0.98 + 0.24 * noise::cloudy(root / 40.0, 21);
                let light = self.light * dapple * [0.86, 0.93, 0.98, 1.0, 1.0][row];
                let tone = |t: f32, s: f32| {
                    let spot = if spotted { bump((t - 0.78) / 0.09) * bump(s / 0.4) * 0.8 } else { 0.0 };
                    let shade = 0.50 + 0.50 * ramp(0.0, 0.6, t);
                    ground.lerp(ASH * 0.7, spot) * (shade * light)
                };
                Plume { bend: 0.05 * self.hand, widest: 0.62, ..Plume::new(root, tip, half) }
                    .draw(canvas, seed, 1.5, &tone);
            }
        }
    }

    /// The wing's front: scales of buff and rust that wrap round from above.
    fn leading_edge(&self, canvas: &mut Canvas, seed: &mut Seed) {
        let edge = Curve::open(&self.arm);
        let steps = edge.walk(2.6);
        for (index, (at, tangent)) in steps.iter().enumerate() {
            let share = index as f32 / steps.len() as f32;
            let bulk = 1.0 - 0.85 * ramp(0.45, 1.0, share);
            for _ in 0..3 {
                let inward = tangent.perp() * -self.hand;
                let root = *at + inward * seed.between(-5.0, 12.0) * bulk - *tangent * 6.0;
                let tip = root + (*tangent + inward * 0.35 * bulk).normalize() * seed.between(11.0, 20.0);
                let colour = BUFF.lerp(RUST, seed.unit() * 0.6).lerp(WHITE, 0.35 * seed.unit() + 0.6 * (1.0 - bulk))
                    * (self.light * seed.between(0.75, 1.05));
                let tone = |t: f32, _: f32| colour * (0.6 + 0.4 * t);
                Plume::new(root, tip, 3.4 * bulk.max(0.6)).draw(canvas, seed, 2.0, &tone);
            }
        }
    }
}
