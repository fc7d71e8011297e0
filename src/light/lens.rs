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
    /// A lens that throws the middle of its picture onto the aim: with a shifted lens that is not where its axis points. A body is
    /// panned about the vertical, then tilted; beyond how it lies and its own roll it stands level.
    ///
    /// With `d = a level + b upright + forward` the way of that middle, the tilt is `asin(|d| s_y / √(1 + b²)) − atan b` for a unit
    /// sight `s`, and the pan what then brings the rest of `d` onto it.
    pub fn aimed(stand: Stand, w1: f32, h1: f32, shift: Vec2) -> Self {
        let sight = (stand.aim - stand.at).try_normalize().unwrap_or(Vec3::NEG_Z);
        let roll = stand.roll
            + match stand.pose {
                Pose::Table => 0.0,
                Pose::Upright => std::f32::consts::FRAC_PI_2,
                Pose::Ceiling => std::f32::consts::PI,
            };
        let (sin, cos) = roll.sin_cos();
        let frame = |pan: f32, tilt: f32| {
            let ((sp, cp), (st, ct)) = (pan.sin_cos(), tilt.sin_cos());
            let level = Vec3::new(cp, 0.0, sp);
            let (upright, forward) = (Vec3::new(-sp * st, ct, cp * st), Vec3::new(sp * ct, st, -cp * ct));
            let (right, up) = (cos * level - sin * upright, cos * upright + sin * level);
            Self { at: stand.at, right, up, forward, w1, h1, shift }
        };
        let way = frame(0.0, 0.0).direction(stand.middle.x, stand.middle.y);
        let (a, b) = (way.x, way.y);
        let tilt = (way.length() * sight.y / b.hypot(1.0)).clamp(-1.0, 1.0).asin() - b.atan();
        let heading = |v: Vec3| if v.x.hypot(v.z) > 1e-6 { v.x.atan2(-v.z) } else { 0.0 };
        let pan = heading(sight) - a.atan2(tilt.cos() - b * tilt.sin());
        let lens = frame(pan, tilt);
        // Near the zenith no pan and tilt may do, for a lens that is shifted aside: what is missing, if only by rounding, is turned.
        let middle = lens.direction(stand.middle.x, stand.middle.y).normalize_or_zero();
        let axis = middle.cross(sight);
        let angle = axis.length().atan2(middle.dot(sight));
        let turn = axis.try_normalize().map_or(glam::Quat::IDENTITY, |axis| glam::Quat::from_axis_angle(axis, angle));
        Self { right: turn * lens.right, up: turn * lens.up, forward: turn * lens.forward, ..lens }
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

#[cfg(test)]
mod tests {
    use super::*;
    use std::f32::consts::FRAC_PI_2;

    fn lens(shift: [f32; 2], sight: Vec3, pose: Pose, roll: f32) -> Lens {
        let stand = Stand {
            at: Vec3::new(0.3, 1.2, 3.0),
            aim: Vec3::new(0.3, 1.2, 3.0) + 4.0 * sight,
            middle: Vec2::splat(0.5),
            pose,
            roll,
        };
        Lens::aimed(stand, 1.0 / 1.2, 0.47, Vec2::from(shift))
    }

    /// A lens shifted upwards by `sy` that looks straight ahead has its middle `atan(sy h1)` above its axis: for a middle `e` above level
    /// it is tilted by the difference, and panned by nothing.
    #[test]
    fn a_lens_shifted_upwards_is_tilted_by_so_much_less() {
        for (sy, above) in [(0.5_f32, 0.3_f32), (0.5, 0.0), (-0.4, 0.2), (0.7, -0.5)] {
            let found = lens([0.0, sy], Vec3::new(0.0, above.sin(), -above.cos()), Pose::Table, 0.0);
            let tilt = above - (sy * 0.47).atan();
            assert!(found.forward.abs_diff_eq(Vec3::new(0.0, tilt.sin(), -tilt.cos()), 1e-5), "{}", found.forward);
            assert!(found.right.abs_diff_eq(Vec3::X, 1e-5));
        }
        // Aside: tilted as its middle asks, `sin t = s_y √(1 + a²)`, panned by `atan(a / cos t)` less than it looks.
        let (a, pan, above) = (0.3_f32 / 1.2, 0.4_f32, 0.35_f32);
        let sight = Vec3::new(pan.sin() * above.cos(), above.sin(), -pan.cos() * above.cos());
        let found = lens([0.3, 0.0], sight, Pose::Table, 0.0);
        let tilt = (above.sin() * (1.0 + a * a).sqrt()).asin();
        let panned = pan - (a / tilt.cos()).atan();
        assert!((found.forward.y - tilt.sin()).abs() < 1e-5);
        assert!((found.forward.x.atan2(-found.forward.z) - panned).abs() < 1e-5);
    }

    /// Whatever the shift and the aim: the middle is on the aim, and the body level beyond how it lies and its own roll.
    #[test]
    fn a_body_is_panned_and_tilted_but_never_rolled() {
        let poses = [(Pose::Table, 0.0), (Pose::Upright, FRAC_PI_2), (Pose::Ceiling, 2.0 * FRAC_PI_2)];
        for (pose, lies) in poses {
            for shift in [[0.0, 0.5], [0.3, 0.6], [-0.25, -0.5], [0.5, 0.0]] {
                for roll in [0.0_f32, 0.2] {
                    for (pan, above) in [(0.0_f32, 0.0_f32), (0.7, 0.6), (-2.5, -0.9), (1.2, 1.1), (3.0, 0.3)] {
                        let sight = Vec3::new(pan.sin() * above.cos(), above.sin(), -pan.cos() * above.cos());
                        let found = lens(shift, sight, pose, roll);
                        let middle = found.direction(0.5, 0.5).normalize();
                        assert!(middle.abs_diff_eq(sight, 1e-5), "{pose:?} {shift:?}: {middle} for {sight}");
                        let level = found.forward.cross(Vec3::Y).normalize();
                        let upright = level.cross(found.forward);
                        let rolled = (-found.right.dot(upright)).atan2(found.right.dot(level));
                        let off = (rolled - lies - roll).rem_euclid(4.0 * FRAC_PI_2);
                        assert!(off.min(4.0 * FRAC_PI_2 - off) < 1e-4, "{pose:?} {shift:?} {pan} {above}: {off}");
                        assert!((found.handedness() - 1.0).abs() < 1e-5);
                    }
                }
            }
        }
    }

    #[test]
    fn near_the_zenith_the_middle_still_lands_on_the_aim() {
        for sight in [Vec3::Y, Vec3::NEG_Y, Vec3::new(0.02, 0.999_8, 0.0).normalize()] {
            for shift in [[0.0, 0.0], [0.0, 0.5], [0.4, 0.5]] {
                let found = lens(shift, sight, Pose::Table, 0.0);
                assert!(found.direction(0.5, 0.5).normalize().abs_diff_eq(sight, 1e-5), "{shift:?} {sight}");
                assert!((found.handedness() - 1.0).abs() < 1e-5);
            }
        }
    }
}
