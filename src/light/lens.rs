//! The lens frame of a station: where it looks, how it lies, and where the picture's points go.

use crate::scene::{Content, Pose, Stance};
use glam::{Mat3, Vec2, Vec3};

/// A lens: looks along `forward`, `right` and `up` as the raster's columns and rows run. A fold mirror makes a mirrored
/// one, whose determinant is −1; it is therefore never rebuilt from an aim and a roll.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lens {
    /// The lens, a point for shadows.
    pub at: Vec3,
    /// Unit vector along the picture's rows.
    pub right: Vec3,
    /// Unit vector up its columns.
    pub up: Vec3,
    /// Unit vector along the axis.
    pub forward: Vec3,
    /// Width of the picture at unit depth: 1 / throw ratio.
    pub w1: f32,
    /// Height of the picture at unit depth.
    pub h1: f32,
    /// Lens shift in picture widths and heights.
    pub shift: Vec2,
}

/// How a station stands.
#[derive(Clone, Copy, Debug)]
pub struct Stand {
    /// The lens.
    pub at: Vec3,
    /// Where the middle of the picture lands.
    pub aim: Vec3,
    /// Where in the raster that middle is.
    pub middle: Vec2,
    /// How it lies.
    pub pose: Pose,
    /// Further roll, clockwise as the projector looks, rad.
    pub roll: f32,
}

impl Lens {
    /// A lens that throws the middle of its picture onto the aim: with a shifted lens that is not where its axis points.
    pub fn aimed(stand: Stand, w1: f32, h1: f32, shift: Vec2) -> Self {
        let sight = (stand.aim - stand.at).try_normalize().unwrap_or(Vec3::NEG_Z);
        let roll = stand.roll
            + match stand.pose {
                Pose::Table => 0.0,
                Pose::Upright => std::f32::consts::FRAC_PI_2,
                Pose::Ceiling => std::f32::consts::PI,
            };
        // As if there were no shift: level, rolled, the axis on the aim.
        let level = sight.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
        let upright = level.cross(sight);
        let (sin, cos) = roll.sin_cos();
        let (right, up) = (cos * level - sin * upright, cos * upright + sin * level);
        let lens = Self { at: stand.at, right, up, forward: sight, w1, h1, shift };
        // Then the whole of it is turned until the picture's middle, not the axis, is there.
        let middle = lens.direction(stand.middle.x, stand.middle.y).normalize_or_zero();
        let axis = middle.cross(sight);
        let angle = axis.length().atan2(middle.dot(sight));
        let turn = axis.try_normalize().map_or(glam::Quat::IDENTITY, |axis| glam::Quat::from_axis_angle(axis, angle));
        Self { right: turn * right, up: turn * up, forward: turn * sight, ..lens }
    }

    /// The direction in which the picture's point leaves, `u` to the right and `v` down, 0 to 1; depth 1, not unit length.
    pub fn direction(&self, u: f32, v: f32) -> Vec3 {
        (u - 0.5 + self.shift.x) * self.w1 * self.right + (0.5 - v + self.shift.y) * self.h1 * self.up + self.forward
    }

    /// Picture coordinates and depth of a point; `None` behind the lens.
    #[inline]
    pub fn project(&self, point: Vec3) -> Option<(f32, f32, f32)> {
        let way = point - self.at;
        let depth = way.dot(self.forward);
        (depth > 1e-4).then(|| {
            let u = way.dot(self.right) / (depth * self.w1) + 0.5 - self.shift.x;
            let v = 0.5 - way.dot(self.up) / (depth * self.h1) + self.shift.y;
            (u, v, depth)
        })
    }

    /// The lens as a mirror through `on` with unit normal `normal` shows it.
    pub fn mirrored(&self, on: Vec3, normal: Vec3) -> Self {
        let flip = |v: Vec3| v - 2.0 * v.dot(normal) * normal;
        Self {
            at: mirror_point(self.at, on, normal),
            right: flip(self.right),
            up: flip(self.up),
            forward: flip(self.forward),
            ..*self
        }
    }

    /// +1 for a real lens, −1 for one seen in an odd number of mirrors.
    pub fn handedness(&self) -> f32 {
        Mat3::from_cols(self.right, self.up, -self.forward).determinant()
    }
}

/// A point as a mirror through `on` with unit normal `normal` shows it.
pub fn mirror_point(point: Vec3, on: Vec3, normal: Vec3) -> Vec3 {
    point - 2.0 * (point - on).dot(normal) * normal
}

/// Rows that take raster coordinates `(u, v, 1)` to the picture's own `(u, v, 1)`, projectively: how the raster is bent, how it
/// lies, how the picture stands in its file, whether it is sent mirrored, and its box inside the raster.
pub fn picture_map(pose: Pose, content: &Content, corrected_from_raster: Mat3) -> [Vec3; 3] {
    let (mut s, mut t) = (Vec3::new(1.0, 0.0, 0.0), Vec3::new(0.0, 1.0, 0.0));
    let turned = |row: Vec3| Vec3::new(-row.x, -row.y, 1.0 - row.z);
    if pose == Pose::Ceiling {
        // A projector under a ceiling is told so, and turns its picture by half a turn.
        (s, t) = (turned(s), turned(t));
    }
    if content.stance == Stance::Upright {
        // On its side with the raster's up to the right, what is seen to the right was up and what is seen below was right.
        (s, t) = (turned(t), s);
    }
    if content.mirrored {
        s = turned(s);
    }
    let [from, to] = [content.from.0, content.to.0];
    let fit = |row: Vec3, i: usize| {
        let span = (to[i] - from[i]) as f32;
        Vec3::new(row.x / span, row.y / span, (row.z - from[i] as f32) / span)
    };
    // A row before a matrix is its transpose behind.
    let bent = corrected_from_raster.transpose();
    [bent * fit(s, 0), bent * fit(t, 1), bent * Vec3::Z]
}
