//! A feather.

use glam::{Vec2, Vec3};

use super::canvas::Canvas;
use super::seed::Seed;
use super::tone::ramp;

/// The shape of a feather.
#[derive(Clone, Copy)]
pub(super) struct Plume {
    /// Where it leaves the skin.
    pub root: Vec2,
    /// Its far end.
    pub tip: Vec2,
    /// How far its middle is pushed to the side, as a part of its length.
    pub bend: f32,
    /// Half its greatest width.
    pub half: f32,
    /// Share of the width on the side the spine's left perpendicular points to; a half is even.
    pub lean: f32,
    /// Where along the length it is widest, from 0 to 1; near 1 makes a blunt end.
    pub widest: f32,
}

impl Plume {
    /// A feather of even vanes that widens towards its end.
    pub fn new(root: Vec2, tip: Vec2, half: f32) -> Self {
        Self { root, tip, bend: 0.0, half, lean: 0.5, widest: 0.65 }
    }

    /// The spine, from the root at 0 to the tip at 1.
    pub fn spine(&self, t: f32) -> Vec2 {
        let along = self.tip - self.root;
        let middle = (self.root + self.tip) * 0.5 + along.perp() * (2.0 * self.bend);
        let back = 1.0 - t;
        self.root * (back * back) + middle * (2.0 * back * t) + self.tip * (t * t)
    }

    /// Half the width at a place along it.
    fn half_at(&self, t: f32) -> f32 {
        let share = if t < self.widest {
            let rise = t / self.widest;
            0.35 + 0.65 * (rise * (2.0 - rise))
        } else {
            let fall = (t - self.widest) / (1.0 - self.widest);
            (1.0 - fall * fall).max(0.0).sqrt()
        };
        self.half * share
    }

    /// A point of the feather: `t` along it, `s` across it from -1 to 1.
    pub fn point(&self, t: f32, s: f32) -> Vec2 {
        let step = 0.01;
        let tangent = (self.spine(t + step) - self.spine(t - step)).normalize_or_zero();
        let share = if s > 0.0 { self.lean } else { 1.0 - self.lean };
        self.spine(t) + tangent.perp() * (s * share * 2.0 * self.half_at(t))
    }

    /// The outline as a polygon, pushed outwards by `grow` texels.
    fn outline(&self, grow: f32) -> Vec<Vec2> {
        const STEPS: usize = 18;
        let grown = Plume { half: self.half + grow, ..*self };
        let edge = |index: usize, s: f32| grown.point(index as f32 / STEPS as f32, s);
        (0..=STEPS).map(|index| edge(index, 1.0)).chain((0..=STEPS).rev().map(|index| edge(index, -1.0))).collect()
    }

    /// Draws the feather: the shadow it throws, its web, and every barb. `tone` gives the colour at `t` along and
    /// `s` across; `pitch` is the room between barbs in texels.
    pub fn draw(&self, canvas: &mut Canvas, seed: &mut Seed, pitch: f32, tone: &dyn Fn(f32, f32) -> Vec3) {
        let length = self.root.distance(self.tip);
        for (grow, opacity) in [(self.half * 0.22, 0.10), (self.half * 0.1, 0.22)] {
            canvas.polygon(&self.outline(grow), Vec3::ZERO, opacity);
        }
        canvas.polygon(&self.outline(0.0), tone(0.5, 0.0) * 0.68, 1.0);
        let barbs = (length / pitch).max(3.0) as usize;
        for index in 0..barbs {
            let t = (index as f32 + seed.unit()) / barbs as f32;
            for side in [-1.0, 1.0] {
                self.barb(canvas, seed, t, side, pitch, tone);
            }
        }
        self.shaft(canvas, tone);
    }

    /// One barb, in two strokes so that a bar may begin in the middle of it.
    fn barb(
        &self,
        canvas: &mut Canvas,
        seed: &mut Seed,
        t: f32,
        side: f32,
        pitch: f32,
        tone: &dyn Fn(f32, f32) -> Vec3,
    ) {
        let length = self.root.distance(self.tip);
        let sweep = (0.9 * self.half_at(t) / length).min(1.0 - t);
        let reach = seed.between(0.92, 1.03);
        let place = |s: f32| self.point((t + sweep * s).min(0.995), side * s * reach);
        let light = 1.0 + 0.16 * seed.bell();
        for (from, to) in [(0.0, 0.62), (0.45, 1.0)] {
            let middle = (from + to) * 0.5;
            let colour = tone(t + sweep * middle, side * middle) * light;
            let width = pitch * if from > 0.0 { 1.0 } else { 1.25 };
            canvas.hair([place(from), place(middle), place(to)], width, colour, 0.8);
        }
    }

    /// The shaft: a fine pale line with its own thin shadow.
    fn shaft(&self, canvas: &mut Canvas, tone: &dyn Fn(f32, f32) -> Vec3) {
        let width = (self.half * 0.11).clamp(0.5, 2.4);
        let side = (self.tip - self.root).perp().normalize_or_zero() * (width * 0.6);
        let line = [self.spine(0.0), self.spine(0.5), self.spine(0.96)];
        let through = |shift: Vec2| {
            // A hair passes near its middle point, not through it; doubling its distance makes it pass through.
            let bow = line[1] * 2.0 - (line[0] + line[2]) * 0.5;
            [line[0] + shift, bow + shift, line[2] + shift]
        };
        // On a small feather the shaft is buried in down.
        let bare = ramp(6.0, 16.0, self.half);
        let pale = tone(0.3, 0.0);
        canvas.hair(through(side), width, Vec3::ZERO, 0.35 * bare);
        canvas.hair(through(Vec2::ZERO), width, pale * 0.8 + pale.max_element() * 0.45, 0.65 * bare);
    }
}
