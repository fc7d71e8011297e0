//! How long the outline of a figure is that is drawn in texels.
//!
//! Texel edges alone would make a slanted line up to √2 times as long as it is. So each edge counts by what it has along the slant of
//! the outline where it lies: that of the longest digital straight line centred on it (I. Debled-Rennesson and J.-P. Reveillès,
//! "A linear algorithm for segmentation of digital curves", 1995, for lines of steps that share an edge: `μ ≤ a x − b y < μ + a + b`).
//! In such a line steps of one of its two directions stand alone and none goes back; so a corner between a run of three or more steps
//! and one of two or more, or of one where the outline turns back, is a drawn one: no line goes round it, and an upright rectangle
//! is as long around as it is, be it one texel thin.

use glam::Vec2;

/// Directions by which an outline's length is told apart, over half a turn.
const TURNS: usize = 24;

/// How much of a picture its figure covers, and how long its outline is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outline {
    /// Texels that it covers.
    area: f32,
    /// Length of its outline along each direction, in texels: 0 is level, then downwards to the right by equal steps.
    lengths: [f32; TURNS],
}

impl Outline {
    /// Of what is lit; `None` where nothing is.
    pub(super) fn of(lit: &[bool], width: usize) -> Option<Self> {
        let area = lit.iter().filter(|lit| **lit).count();
        (area > 0).then(|| Self { area: area as f32, lengths: lengths(lit, width).map(|length| length as f32) })
    }

    /// Mean width of the figure's strokes where a texel is laid out as these two vectors, across and down: `2 area / outline`, by which a
    /// long bar is as wide as it is and a disc half its diameter. The edge of the picture ends a stroke too.
    pub fn stroke(&self, across: Vec2, down: Vec2) -> f32 {
        self.stroke_by(across.perp_dot(down).abs(), |x, y| (x * across + y * down).length())
    }

    /// The same by the area of a texel and by how long a step along a direction is, given as its share across and down.
    pub fn stroke_by(&self, texel: f32, long: impl Fn(f32, f32) -> f32) -> f32 {
        2.0 * self.area * texel / self.length(long)
    }

    fn length(&self, long: impl Fn(f32, f32) -> f32) -> f32 {
        let along = |turn: usize| std::f32::consts::PI * turn as f32 / TURNS as f32;
        let part = |(turn, length): (usize, &f32)| {
            let (sin, cos) = along(turn).sin_cos();
            length * long(cos, sin)
        };
        self.lengths.iter().enumerate().map(part).sum()
    }
}

/// Steps that a line has at most on each side of its middle: a slant is then known to one part in fifty.
const REACH: usize = 24;

/// Steps to the right, down, left and up.
const ALONG: [[isize; 2]; 4] = [[1, 0], [0, 1], [-1, 0], [0, -1]];

/// Length of the outline of what is lit by its direction, in texels, holes and all. Texels that touch by a corner hang together; what lies
/// outside the picture is dark.
fn lengths(lit: &[bool], width: usize) -> [f64; TURNS] {
    let picture = Picture { lit, width };
    let mut walked = vec![0_u8; lit.len()];
    let (mut chain, mut sums) = (Vec::new(), [0.0; TURNS]);
    for texel in (0..lit.len()).filter(|texel| lit[*texel]) {
        for side in 0..4 {
            picture.walk(texel, side, &mut walked, &mut chain);
            add(&chain, &mut sums);
        }
    }
    sums
}

#[derive(Clone, Copy)]
struct Picture<'a> {
    lit: &'a [bool],
    width: usize,
}

impl Picture<'_> {
    /// The lit texel a step beside another.
    fn lit(&self, texel: usize, [right, down]: [isize; 2]) -> Option<usize> {
        let column = (texel % self.width).checked_add_signed(right).filter(|column| *column < self.width)?;
        let row = (texel / self.width).checked_add_signed(down)?;
        let there = row * self.width + column;
        self.lit.get(there).is_some_and(|lit| *lit).then_some(there)
    }

    /// Walks round an outline from a side of a texel, what is lit to the right hand, and notes the steps; none where there is no outline
    /// or it has been walked.
    fn walk(&self, from: usize, first: usize, walked: &mut [u8], chain: &mut Vec<u8>) {
        chain.clear();
        let (mut texel, mut step) = (from, first);
        let outwards = |step: usize| ALONG[(step + 3) % 4];
        if self.lit(from, outwards(first)).is_some() {
            return;
        }
        while walked[texel] & (1 << step) == 0 {
            walked[texel] |= 1 << step;
            chain.push(step as u8);
            let ([x, y], [out_x, out_y]) = (ALONG[step], outwards(step));
            (texel, step) = if let Some(across) = self.lit(texel, [x + out_x, y + out_y]) {
                (across, (step + 3) % 4)
            } else if let Some(next) = self.lit(texel, [x, y]) {
                (next, step)
            } else {
                (texel, (step + 1) % 4)
            };
        }
    }
}

/// Adds the length of a closed outline by its steps.
fn add(chain: &[u8], sums: &mut [f64; TURNS]) {
    let count = chain.len();
    let at = |i: usize| chain[i % count];
    let back = |a: u8, b: u8| (a + 2) % 4 == b;
    let drawn_corner = |i: usize| {
        let [earlier, before, here, next, after, later] = [count - 2, count - 1, 0, 1, 2, 3].map(|j| at(i + j));
        let runs = (before == here || back(before, next)) && (after == next || back(here, after));
        here != next && runs && ([earlier, before] == [here; 2] || [after, later] == [next; 2])
    };
    let most = (2 * REACH + 1).min(count);
    let line = |from: usize, most: usize| {
        let mut line = Line::of(at(from));
        while line.steps < most && !drawn_corner(from + line.steps - 1) && line.takes(at(from + line.steps)) {}
        line
    };
    let reaches: Vec<usize> = (0..count).map(|from| line(from, most).steps).collect();
    for i in 0..count {
        let fits = |half: &usize| 2 * half < most && reaches[(i + count - half) % count] > 2 * half;
        let half = (1..).take_while(fits).last().unwrap_or(0);
        let line = line(i + count - half, 2 * half + 1);
        let (share, turn) = (line.share(at(i)), line.turn());
        let part = turn.fract();
        sums[turn as usize % TURNS] += share * (1.0 - part);
        sums[(turn as usize + 1) % TURNS] += share * part;
    }
}

/// A digital straight line as steps are added to it: `μ ≤ a x − b y < μ + a + b`, x counting steps as its first and y the others.
struct Line {
    steps: usize,
    /// The first step and, once there is one, the other.
    first: u8,
    other: Option<u8>,
    a: i64,
    b: i64,
    low: i64,
    /// Where it has come to.
    end: [i64; 2],
    /// First and last points that touch it from above, where the remainder is least, and from below.
    above: [[i64; 2]; 2],
    below: [[i64; 2]; 2],
}

impl Line {
    fn of(first: u8) -> Self {
        let touch = [[0, 0], [1, 0]];
        Self { steps: 1, first, other: None, a: 0, b: 1, low: 0, end: [1, 0], above: touch, below: touch }
    }

    /// Adds a step if it is then still a straight line.
    fn takes(&mut self, step: u8) -> bool {
        let turned = (step + 4 - self.first) % 4;
        let fits = match self.other {
            Some(other) => step == self.first || step == other,
            None => turned != 2,
        };
        let end = if turned == 0 { [self.end[0] + 1, self.end[1]] } else { [self.end[0], self.end[1] + 1] };
        let remainder = |line: &Self| line.a * end[0] - line.b * end[1];
        let over = remainder(self) - self.low;
        let width = self.a + self.b;
        if !fits || over < -1 || over > width {
            return false;
        }
        if over == -1 {
            self.slant(self.above[0], end);
            (self.above[1], self.below[0], self.low) = (end, self.below[1], remainder(self));
        } else if over == width {
            self.slant(self.below[0], end);
            (self.below[1], self.above[0]) = (end, self.above[1]);
            self.low = remainder(self) - self.a - self.b + 1;
        } else {
            if over == 0 {
                self.above[1] = end;
            }
            if over == width - 1 {
                self.below[1] = end;
            }
        }
        if turned != 0 {
            self.other = Some(step);
        }
        (self.end, self.steps) = (end, self.steps + 1);
        true
    }

    fn slant(&mut self, from: [i64; 2], to: [i64; 2]) {
        (self.a, self.b) = (to[1] - from[1], to[0] - from[0]);
    }

    /// Its direction, among those told apart.
    fn turn(&self) -> f64 {
        let [x, y] = [0, 1].map(|axis| {
            let step = |of: Option<u8>| of.map_or(0, |step| ALONG[usize::from(step)][axis]) as f64;
            self.b as f64 * step(Some(self.first)) + self.a as f64 * step(self.other)
        });
        (y.atan2(x) / std::f64::consts::PI).rem_euclid(1.0) * TURNS as f64
    }

    /// What a step has along the line.
    fn share(&self, step: u8) -> f64 {
        let (a, b) = (self.a as f64, self.b as f64);
        (if step == self.first { b } else { a }) / a.hypot(b)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::{PI, SQRT_2};

    const SIDE: usize = 400;
    /// Where a shape lies between texels: by fifths across, down and along both diagonals.
    const OFF: [[f64; 2]; 5] = [[0.011, 0.037], [0.211, 0.437], [0.411, 0.837], [0.611, 0.237], [0.811, 0.637]];

    /// Outline, and stroke by the area that is lit, of a shape about the middle.
    fn drawn(off: [f64; 2], shape: impl Fn(f64, f64) -> bool) -> (f64, f64) {
        let place = |at: usize, off: f64| at as f64 + 0.5 - 200.0 - off;
        let lit: Vec<bool> =
            (0..SIDE * SIDE).map(|i| shape(place(i % SIDE, off[0]), place(i / SIDE, off[1]))).collect();
        let outline = Outline::of(&lit, SIDE).expect("something is lit");
        (f64::from(outline.length(|_, _| 1.0)), f64::from(outline.stroke(Vec2::X, Vec2::Y)))
    }

    fn near(found: f64, wanted: f64, within: f64, what: &str) {
        assert!((found / wanted - 1.0).abs() < within, "{what}: {found} for {wanted}");
    }

    /// Bars of 1 to 40 texels at every 5°: the outline is as long as it is; the stroke as wide, but for how many texels happen to lie
    /// in a thin one.
    #[test]
    fn bars_at_any_slant() {
        for thick in [1.0, 1.5, 2.0, 3.0, 5.0, 8.0, 13.0, 20.0, 40.0] {
            for slant in (0..=90).step_by(5) {
                let (sin, cos) = f64::from(slant).to_radians().sin_cos();
                let strokes = OFF.map(|off| {
                    let bar =
                        |x: f64, y: f64| (x * cos + y * sin).abs() < 150.0 && (y * cos - x * sin).abs() < 0.5 * thick;
                    let (outline, stroke) = drawn(off, bar);
                    near(outline, 2.0 * (300.0 + thick), 0.007, &format!("{thick} at {slant}°"));
                    stroke
                });
                let mean = strokes.iter().sum::<f64>() / OFF.len() as f64;
                let within = if thick < 2.0 { 0.15 } else { 0.02 };
                near(mean, thick * 300.0 / (300.0 + thick), within, &format!("stroke of {thick} at {slant}°"));
            }
        }
    }

    #[test]
    fn upright_rectangles_are_exact() {
        for (wide, high) in [(2.0, 20.0), (4.0, 20.0), (8.0, 8.0), (40.0, 3.0), (1.0, 1.0), (1.0, 36.0), (90.0, 1.0)] {
            let (outline, stroke) = drawn([0.0; 2], |x, y| (0.0..wide).contains(&x) && (0.0..high).contains(&y));
            near(outline, 2.0 * (wide + high), 1e-6, "rectangle");
            near(stroke, wide * high / (wide + high), 1e-6, "its stroke");
        }
    }

    #[test]
    fn round_shapes_and_diamonds() {
        // The texels of a small disc reach past it: their hull is 4 % longer around at a radius of 10.
        for (radius, within) in [(10.0, 0.055), (15.0, 0.02), (20.0, 0.02), (40.0, 0.01), (80.0, 0.01), (150.0, 0.01)] {
            for off in OFF {
                let (outline, stroke) = drawn(off, |x, y| x.hypot(y) < radius);
                near(outline, 2.0 * PI * radius, within, &format!("disc of {radius}"));
                near(stroke, radius, within, &format!("stroke of a disc of {radius}"));
                let (outline, stroke) = drawn(off, |x, y| x.abs() + y.abs() < radius);
                near(outline, 4.0 * SQRT_2 * radius, within, &format!("diamond of {radius}"));
                near(stroke, radius / SQRT_2, within, &format!("stroke of a diamond of {radius}"));
            }
        }
        // Both sides of a ring's stroke count.
        for (radius, thick) in [(20.0, 3.0), (40.0, 1.2), (40.0, 3.0), (100.0, 8.0)] {
            let (outline, _) = drawn(OFF[1], |x, y| (x.hypot(y) - radius).abs() < 0.5 * thick);
            near(outline, 4.0 * PI * radius, 0.015, "ring");
        }
    }

    /// Like letters: an E of a stem and three arms, upright and turned, and a hole in a square.
    #[test]
    fn strokes_that_meet() {
        for slant in [0.0_f64, 17.0, 30.0, 45.0, 70.0] {
            let (sin, cos) = slant.to_radians().sin_cos();
            let letter = |x: f64, y: f64| {
                let (x, y) = (x * cos + y * sin, y * cos - x * sin);
                let arm = [-40.0, -5.0, 30.0].iter().any(|low| (*low..low + 10.0).contains(&y));
                (-20.0..-10.0).contains(&x) && (-40.0..40.0).contains(&y) || arm && (-20.0..30.0).contains(&x)
            };
            // Around: 80 up the stem, three arms of 50 and 40 from it, six ends and gaps.
            near(drawn([0.013, 0.027], letter).0, 340.0 + 80.0, 0.02, &format!("letter at {slant}°"));
        }
        let holed = |x: f64, y: f64| x.abs() < 30.0 && y.abs() < 30.0 && !(x.abs() < 10.0 && y.abs() < 10.0);
        near(drawn([0.0; 2], holed).0, 4.0 * 80.0, 1e-6, "holed");
        assert_eq!(Outline::of(&[false; 6], 3), None);
        // All of a picture ends at its edge.
        let outline = Outline::of(&[true; 50 * 20], 50).expect("all is lit");
        assert!((outline.length(|_, _| 1.0) - 140.0).abs() < 1e-4);
    }

    /// Laid out twice as wide as high, a bar covers twice its area, and its sides and ends are as long as their directions are stretched.
    #[test]
    fn strokes_stretch_with_what_they_are_drawn_on() {
        for slant in (0..180).step_by(9) {
            let (sin, cos) = f64::from(slant).to_radians().sin_cos();
            let bar = |x: f64, y: f64| (x * cos + y * sin).abs() < 180.0 && (y * cos - x * sin).abs() < 4.0;
            let place = |at: usize| at as f64 + 0.5 - 200.0;
            let lit: Vec<bool> = (0..SIDE * SIDE).map(|i| bar(place(i % SIDE), place(i / SIDE))).collect();
            let area = lit.iter().filter(|lit| **lit).count() as f64;
            let stroke = Outline::of(&lit, SIDE).expect("a bar").stroke(Vec2::new(2.0, 0.0), Vec2::Y);
            let long = |x: f64, y: f64| (2.0 * x).hypot(y);
            let (side, end) = (360.0 * long(cos, sin), 8.0 * long(sin, cos));
            near(f64::from(stroke), 2.0 * area / (side + end), 0.01, &format!("at {slant}°"));
        }
    }

    /// Two texels that touch by a corner are one thing, the slant of which counts.
    #[test]
    fn texels_that_touch_by_a_corner_hang_together() {
        let (outline, stroke) = drawn([0.0; 2], |x, y| x.floor() == y.floor() && x.abs() < 100.0);
        near(outline, 2.0 * 200.0 * SQRT_2, 0.01, "diagonal");
        near(stroke, std::f64::consts::FRAC_1_SQRT_2, 0.01, "its stroke");
    }
}
