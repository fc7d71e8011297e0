//! What else shines in sight, as areas: bodies of lamps, lit windows, what neighbouring stations light, sun and moon.

use super::Limits;
use crate::{
    geometry::{Outline, Quad, Sight},
    light::{EyeRay, LightPoint, Night, VeilSort, eye as laws, luma},
};
use glam::Vec3;

/// Part of its angle beside the line of sight that a cell of something bright measures at most: at half of it the veil is the
/// same to 1 %.
const FINE: f32 = 1.0 / 6.0;

/// Below this angle, rad, the law of the veil no longer rises.
const NEAREST: f32 = 0.1 * std::f32::consts::PI / 180.0;

/// Lamps that look larger than this, rad, are looked at in this many places each way.
const SMALL: f32 = 4e-3;
const BODY: usize = 3;

/// Places each way at which a lit window is looked at.
const WINDOW: usize = 6;

/// Half of how large sun and moon look, rad; how far off they are put, m.
const DISC: f32 = 4.6e-3;
const FAR: f32 = 1e3;

/// A flat piece of something bright, evenly bright and all in sight.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    /// Index among the night's sources.
    pub source: u32,
    pub quad: Quad,
    /// Its light at the eye, of a plane square to it, lx.
    pub lx: f64,
}

/// An eye, its line of sight, and its age in years.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gaze {
    pub eye: Vec3,
    pub ahead: Vec3,
    pub age: f64,
}

/// What light from beside does to an eye, by source.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Beside {
    /// Luminance of the veil, cd/m².
    pub veil: f64,
    /// Light at the eye from where a rival counts, lx.
    pub lx: f64,
    /// The same less what its angle takes, lx.
    pub counted: f64,
    /// That times its angle, lx times degrees.
    pub turned: f64,
}

impl Gaze {
    /// Adds what a piece does.
    pub fn see(&self, piece: &Piece, limits: &Limits, sum: &mut Beside) {
        for (lx, degrees) in self.cells(piece, FINE) {
            sum.veil += self.veil_of(lx, degrees);
            let share = limits.rival_share(degrees);
            if share > 0.0 {
                sum.lx += lx;
                sum.counted += lx * share;
                sum.turned += lx * share * degrees;
            }
        }
    }

    /// The veil that a piece draws, cd/m².
    pub fn veil(&self, piece: &Piece) -> f64 {
        self.cells(piece, FINE).into_iter().map(|(lx, degrees)| self.veil_of(lx, degrees)).sum()
    }

    /// The veil by light from so far beside; behind the viewer nothing is in sight.
    fn veil_of(&self, lx: f64, degrees: f64) -> f64 {
        laws::veil(degrees, self.age) * lx * degrees.to_radians().cos().max(0.0)
    }

    /// Light, lx, of the cells of a piece and how far beside the line of sight they stand, degrees. Each measures at most `fine` of
    /// that angle.
    fn cells(&self, piece: &Piece, fine: f32) -> Vec<(f64, f64)> {
        let (mut open, mut cells) = (vec![piece.quad], Vec::new());
        while let Some(quad) = open.pop() {
            let way = quad.middle() - self.eye;
            let (far, along) = (way.length().max(1e-3), way.normalize_or_zero());
            let beside = self.ahead.cross(along).length().atan2(self.ahead.dot(along));
            let across = |edge: Vec3| (edge - edge.dot(along) * along).length() / far;
            let (wide, high) = (across(quad.u), across(quad.v));
            let most = fine * beside.max(NEAREST);
            if wide.max(high) <= most {
                let steep = quad.normal().dot(along).abs();
                cells.push((f64::from(quad.area() * steep / (far * far)), f64::from(beside.to_degrees())));
            } else if wide >= high {
                let u = 0.5 * quad.u;
                open.extend([Quad { u, ..quad }, Quad { u, corner: quad.corner + u, ..quad }]);
            } else {
                let v = 0.5 * quad.v;
                open.extend([Quad { v, ..quad }, Quad { v, corner: quad.corner + v, ..quad }]);
            }
        }
        let all: f64 = cells.iter().map(|(open, _)| open).sum();
        cells.iter_mut().for_each(|(open, _)| *open *= piece.lx / all.max(f64::MIN_POSITIVE));
        cells
    }
}

/// Windows that are lit from behind, part by part, each with the ray to it.
pub(super) fn windows(night: &Night, eye: Vec3) -> Vec<(Piece, EyeRay)> {
    let lit = |lamp: &LightPoint| {
        let (window, source) = (lamp.behind.and_then(|owner| night.places[owner as usize].face), lamp.source);
        window.into_iter().flat_map(|quad| parts(&quad, WINDOW)).filter_map(move |quad| {
            let (ray, open) = ray(eye, &quad);
            let lx = f64::from(open * luma(night.surfaces_of(ray, source)));
            (lx > 0.0).then_some((Piece { source, quad, lx }, ray))
        })
    };
    night.lamps.iter().flat_map(lit).collect()
}

/// The disc of sun or moon, where it is in sight.
pub(super) fn disc(night: &Night, eye: Vec3) -> Option<Piece> {
    let moon = night.disc()?;
    let sight = Sight::endless(eye, moon.toward);
    if night.blocked(sight) {
        return None;
    }
    let lx = f64::from(luma(moon.square * night.through(sight, [u32::MAX; 2])));
    let quad = facing(eye, eye + FAR * moon.toward, FAR * DISC);
    Some(Piece { source: moon.source, quad, lx })
}

/// The bright bodies of lamps: each sends its part of the lamp's light.
pub(super) fn bodies(night: &Night, eye: Vec3) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for bodies in night.glows.chunk_by(|a, b| a.source == b.source) {
        let source = bodies[0].source;
        let mut points = night.lamps.iter().filter(|lamp| lamp.source == source);
        let Some(lamp) = points.next() else { continue };
        let lumens = points.fold(lamp.lumens, |sum, point| sum + point.lumens) / bodies.len() as f32;
        for body in bodies {
            let quad = match body.outline {
                Outline::Flat(quad) => quad,
                Outline::Egg { middle, radii } => facing(eye, middle, radii.x),
                Outline::Crate { middle, half, .. } => facing(eye, middle, half.x),
            };
            let large = quad.u.length().max(quad.v.length()) > SMALL * (quad.middle() - eye).length();
            let each = if large { BODY } else { 1 };
            pieces.extend(parts(&quad, each).filter_map(|quad| {
                let at = quad.middle() + CLEAR * quad.normal();
                let point = LightPoint { at, lumens: lumens / (each * each) as f32, ..lamp.clone() };
                let lx = f64::from(luma(point.square(eye).0 * night.way(eye, at, [u32::MAX; 2])));
                (lx > 0.0).then_some(Piece { source, quad, lx })
            }));
        }
    }
    pieces
}

/// How far before a lamp's face a look at it ends, m.
const CLEAR: f32 = 0.01;

/// A square that faces an eye and is as large as a disc of this radius about a middle.
fn facing(eye: Vec3, middle: Vec3, radius: f32) -> Quad {
    let (u, v) = (eye - middle).normalize_or(Vec3::Z).any_orthonormal_pair();
    let side = radius * std::f32::consts::PI.sqrt();
    Quad { corner: middle - 0.5 * side * (u + v), u: side * u, v: side * v }
}

/// A quad in so many parts each way.
fn parts(quad: &Quad, each: usize) -> impl Iterator<Item = Quad> + use<> {
    let Quad { corner, u, v } = *quad;
    let (u, v) = (u / each as f32, v / each as f32);
    let part = move |i: usize| Quad { corner: corner + (i % each) as f32 * u + (i / each) as f32 * v, u, v };
    (0..each * each).map(part)
}

/// A ray to a quad's middle, as wide as the quad looks, and its solid angle, sr.
pub(super) fn ray(eye: Vec3, quad: &Quad) -> (EyeRay, f32) {
    let way = quad.middle() - eye;
    let along = way.normalize_or_zero();
    let open = quad.area() * quad.normal().dot(along).abs() / way.length_squared().max(1e-4);
    (EyeRay { from: eye, along, width: open.sqrt() }, open)
}

/// What a ray meets before anything but glass and leaves, by its name's index, and where.
pub(super) fn met(night: &Night, ray: &EyeRay) -> Option<(u32, Vec3)> {
    let touches = night.touches(Sight::endless(ray.from, ray.along));
    let clear = |sort: VeilSort| matches!(sort, VeilSort::Pane | VeilSort::Crown);
    let first = touches.iter().find(|t| t.veil.is_none_or(|veil| !clear(night.veils[veil as usize].sort)));
    first.map(|touch| (touch.owner, touch.point))
}

#[cfg(test)]
mod tests {
    use super::*;

    const GAZE: Gaze = Gaze { eye: Vec3::ZERO, ahead: Vec3::NEG_Z, age: 25.0 };

    /// A ring about the line of sight, of 1 cd/m², from one angle to another, degrees, in so many parts; of thin rings, as a part
    /// of one has straight edges.
    fn ring(from: f32, to: f32, parts: u16) -> Vec<Piece> {
        let at = |degrees: f32, turn: f32| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            10.0 * Vec3::new(sin * turn.cos(), sin * turn.sin(), -cos)
        };
        let (step, thin) = (std::f32::consts::TAU / f32::from(parts), (to - from) / 16.0);
        let part = |i: u16| {
            let (turn, from) = ((f32::from(i / 16) + 0.5) * step, from + f32::from(i % 16) * thin);
            let (inner, outer) = (at(from, turn), at(from + thin, turn));
            let middle = 0.5 * (inner + outer);
            let across = Vec3::new(-turn.sin(), turn.cos(), 0.0) * (step * middle.truncate().length());
            let quad = Quad { corner: inner - 0.5 * across, u: outer - inner, v: across };
            let (_, open) = ray(GAZE.eye, &quad);
            Piece { source: 0, quad, lx: f64::from(open) }
        };
        (0..16 * parts).map(part).collect()
    }

    fn veil(pieces: &[Piece], fine: f32) -> f64 {
        let cells = pieces.iter().flat_map(|piece| GAZE.cells(piece, fine));
        cells.map(|(lx, degrees)| GAZE.veil_of(lx, degrees)).sum()
    }

    /// `2π (π/180)² ∫ f θ dθ`: `10 (1/a − 1/b) + 5 k ln(b/a) + 0.05 k (b − a) + 0.00125 (b² − a²)/2`, k = 1.0256 at 25 years.
    #[test]
    fn a_ring_by_closed_form() {
        for (a, b) in [(0.5_f32, 1.0_f32), (1.0, 3.0), (2.0, 4.0), (3.0, 9.0)] {
            let (from, to) = (f64::from(a), f64::from(b));
            let k = 1.0 + (25.0_f64 / 62.5).powi(4);
            let sum = 10.0 * (1.0 / from - 1.0 / to)
                + 5.0 * k * (to / from).ln()
                + 0.05 * k * (to - from)
                + 0.000_625 * (to * to - from * from);
            let wanted = std::f64::consts::TAU * (std::f64::consts::PI / 180.0).powi(2) * sum;
            let found = veil(&ring(a, b, 72), FINE);
            assert!((found / wanted - 1.0).abs() < 0.01, "{a}° to {b}°: {found} for {wanted}");
        }
    }

    /// Cells half as large change nothing.
    #[test]
    fn halving_changes_less_than_a_hundredth() {
        for beside in [0.3_f32, 1.0, 3.0, 10.0, 40.0] {
            for wide in [0.02_f32, 0.2, 1.0] {
                let way = Vec3::new(beside.to_radians().tan(), 0.1, -1.0) * 10.0;
                let (u, v) = (Vec3::X * wide, Vec3::Y * wide);
                // Its near edge may come to a quarter of the angle, but never over the line of sight.
                let across = (wide / 10.0).to_degrees();
                if across > 1.5 * beside {
                    continue;
                }
                let piece = Piece { source: 0, quad: Quad { corner: way - 0.5 * (u + v), u, v }, lx: 1.0 };
                let (found, finer) = (veil(&[piece], FINE), veil(&[piece], 0.5 * FINE));
                assert!((finer / found - 1.0).abs() < 0.01, "{wide} m at {beside}°: {found} and {finer}");
            }
        }
    }
}
