//! Digital keystone: the part of a raster that lands as an upright rectangle on a plane that is not square to the axis.
//!
//! Square on, the projector is panned by `H` to the right about the picture's upward direction, then tilted by `V` upwards; its axis then
//! points so much above and to the right of square on. In the frame of the lens (right, up, along the axis) the plane
//! then has the horizontal `e₁ = (cos H, −sin H sin V, sin H cos V)` and the upward `e₂ = (0, cos V, sin V)`, and its point
//! `(X, Y)` at depth 1 of the axis is `(0, 0, 1) + X e₁ + Y e₂`. The corrected picture is the largest rectangle of the raster's
//! own aspect, sides along `e₁` and `e₂`, that the raster covers there; derived, as no two projectors say how they do it.

use super::Beam;
use crate::{
    scene::{Keystone, Pose},
    units::border,
};
use glam::{DMat3, DVec2, DVec3, Mat3, Vec2};
use serde::Serialize;

/// A raster as a lens throws it: the picture at unit depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Raster {
    /// How the projector lies.
    pub pose: Pose,
    /// Width at unit depth.
    pub w1: f32,
    /// Height at unit depth.
    pub h1: f32,
    /// Lens shift in picture widths and heights.
    pub shift: Vec2,
}

/// What a digital correction takes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Lost {
    /// Share of the pixels that stay black.
    #[serde(serialize_with = "border::light")]
    pub pixels: f64,
    /// Share of white's light that is thrown no more.
    #[serde(serialize_with = "border::light")]
    pub light: f64,
}

/// Corners of a picture: left upper, right upper, left lower, right lower.
const CORNERS: [[f32; 2]; 4] = [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]];

/// A place as a projective map takes it.
pub(super) fn bent(map: DMat3, [u, v]: [f64; 2]) -> Vec2 {
    let at = map * DVec3::new(u, v, 1.0);
    (at.truncate() / at.z).as_vec2()
}

/// Area of a picture by its corners.
fn area(corners: [Vec2; 4]) -> f32 {
    let [a, b, c, d] = corners;
    0.5 * (d - a).perp_dot(c - b).abs()
}

impl Beam {
    /// Corners of the part of the raster that a digital correction leaves in use, as the raster names them: left upper, right
    /// upper, left lower, right lower. Those of the raster without one.
    pub fn used(&self) -> [[f32; 2]; 4] {
        CORNERS.map(|uv| self.bent(uv))
    }

    /// A place of the whole picture, before it is bent, in the raster.
    pub fn bent(&self, uv: [f32; 2]) -> [f32; 2] {
        bent(self.corrected.as_dmat3().inverse(), uv.map(f64::from)).to_array()
    }

    /// A place of the picture's own, 0 to 1 each way, in the raster; `None` where there is none.
    pub fn raster_of(&self, [s, t]: [f32; 2]) -> Option<[f32; 2]> {
        let [a, b, c] = self.map;
        let map = Mat3::from_cols(a, b, c).transpose().as_dmat3();
        let place = bent(map.inverse(), [f64::from(s), f64::from(t)]);
        (map.determinant().abs() > 1e-9 && place.is_finite()).then(|| place.to_array())
    }

    /// Whether a place of the raster is within the part that a digital correction leaves in use.
    pub fn uses(&self, [u, v]: [f32; 2]) -> bool {
        let at = self.corrected * Vec2::new(u, v).extend(1.0);
        let uv = at.truncate() / at.z;
        uv.cmpge(Vec2::ZERO).all() && uv.cmple(Vec2::ONE).all()
    }

    /// Share of the raster's area that the picture's own box takes.
    pub fn picture_share(&self) -> f32 {
        let corners = CORNERS.map(|st| self.raster_of(st));
        let [Some(a), Some(b), Some(c), Some(d)] = corners else { return 0.0 };
        area([a, b, c, d].map(Vec2::from))
    }

    /// What its digital correction takes; nothing without one.
    pub fn lost(&self) -> Lost {
        if self.corrected == Mat3::IDENTITY {
            return Lost { pixels: 0.0, light: 0.0 };
        }
        let used = self.used().map(Vec2::from);
        // Evenness is quadratic, of which the mean over a triangle is that of the middles of its sides.
        let triangle = |[a, b, c]: [Vec2; 3]| {
            let middles = [a + b, b + c, c + a].map(|sum| 0.5 * sum);
            let mean = middles.iter().map(|at| self.evenness(at.x, at.y)).sum::<f32>() / 3.0;
            0.5 * (b - a).perp_dot(c - a).abs() * mean
        };
        let lit = |[a, b, c, d]: [Vec2; 4]| triangle([a, b, c]) + triangle([b, d, c]);
        let left = lit(used) / lit(CORNERS.map(Vec2::from));
        Lost { pixels: f64::from(1.0 - area(used)), light: f64::from(1.0 - left) }
    }
}

/// Takes `(u, v, 1)` of the raster to that of the corrected picture, projectively; the identity without a correction. `None`
/// where part of the raster never meets the plane.
pub fn corrected(raster: Raster, keystone: &Keystone) -> Option<DMat3> {
    if *keystone == Keystone::default() {
        return Some(DMat3::IDENTITY);
    }
    let raster_from_plane = raster_from_plane(raster, keystone);
    let plane_from_raster = raster_from_plane.inverse();
    let meets = |[u, v]: [f32; 2]| (plane_from_raster * DVec3::new(u.into(), v.into(), 1.0)).z > 0.0;
    if !CORNERS.into_iter().all(meets) {
        return None;
    }
    let (w1, h1) = (f64::from(raster.w1), f64::from(raster.h1));
    let size = if raster.pose == Pose::Upright { DVec2::new(h1, w1) } else { DVec2::new(w1, h1) };
    let (middle, scale) = inscribed(edges(raster_from_plane), 0.5 * size)?;
    let (wide, high) = (scale * size.x, scale * size.y);
    // As it is seen: to the right and downwards, 0 to 1.
    let seen = DMat3::from_cols(
        DVec3::new(1.0 / wide, 0.0, 0.0),
        DVec3::new(0.0, -1.0 / high, 0.0),
        DVec3::new(0.5 - middle.x / wide, 0.5 + middle.y / high, 1.0),
    );
    Some(raster_from_seen(raster.pose) * seen * plane_from_raster)
}

/// A picture as it is seen in the order of the raster that throws it, by how the projector lies.
fn raster_from_seen(pose: Pose) -> DMat3 {
    let [u, v, one] = match pose {
        Pose::Table => [DVec3::X, DVec3::Y, DVec3::Z],
        Pose::Ceiling => [DVec3::NEG_X, DVec3::NEG_Y, DVec3::ONE],
        // The raster's right is seen below, its top to the right.
        Pose::Upright => [DVec3::NEG_Y, DVec3::X, DVec3::new(0.0, 1.0, 1.0)],
    };
    DMat3::from_cols(u, v, one)
}

fn raster_from_plane(raster: Raster, keystone: &Keystone) -> DMat3 {
    let (sin_v, cos_v) = keystone.vertical_deg.0.to_radians().sin_cos();
    let (sin_h, cos_h) = keystone.horizontal_deg.0.to_radians().sin_cos();
    // What is seen to the right and above, in the frame of the lens.
    let (right, up) = match raster.pose {
        Pose::Table => (DVec2::X, DVec2::Y),
        Pose::Ceiling => (DVec2::NEG_X, DVec2::NEG_Y),
        Pose::Upright => (DVec2::Y, DVec2::NEG_X),
    };
    let ray = |x: f64, y: f64, depth: f64| (x * right + y * up).extend(depth);
    let (w1, h1) = (f64::from(raster.w1), f64::from(raster.h1));
    // The lens's own mapping: u = x / w1 + 0.5 − sx, v = 0.5 − y / h1 + sy.
    let raster_from_ray = DMat3::from_cols(
        DVec3::new(1.0 / w1, 0.0, 0.0),
        DVec3::new(0.0, -1.0 / h1, 0.0),
        DVec3::new(0.5 - f64::from(raster.shift.x), 0.5 + f64::from(raster.shift.y), 1.0),
    );
    let across = ray(cos_h, -sin_h * sin_v, sin_h * cos_v);
    raster_from_ray * DMat3::from_cols(across, ray(0.0, cos_v, sin_v), DVec3::Z)
}

/// The raster's edges on the plane as lines `a X + b Y + c ≥ 0` inside, `a² + b² = 1`.
fn edges(raster_from_plane: DMat3) -> [DVec3; 4] {
    let rows = raster_from_plane.transpose();
    let (u, v, one) = (rows.x_axis, rows.y_axis, rows.z_axis);
    [u, one - u, v, one - v].map(|line| line / line.truncate().length())
}

/// Middle and scale of the largest upright rectangle of given half size within four lines. Each line holds the rectangle's nearest
/// corner back, `n · m + c ≥ s (|a| hx + |b| hy)`, so that the largest stands where three of them meet.
fn inscribed(lines: [DVec3; 4], half: DVec2) -> Option<(DVec2, f64)> {
    let row = |line: DVec3| DVec3::new(line.x, line.y, -line.truncate().abs().dot(half));
    let solved = (0..4).filter_map(|left_out| {
        let three: Vec<DVec3> = (0..4).filter(|i| *i != left_out).map(|i| lines[i]).collect();
        let rows = DMat3::from_cols(row(three[0]), row(three[1]), row(three[2])).transpose();
        if rows.determinant().abs() < 1e-12 {
            return None;
        }
        let at = rows.inverse() * -DVec3::new(three[0].z, three[1].z, three[2].z);
        let fits = lines.iter().all(|line| row(*line).dot(at) + line.z > -1e-9);
        (fits && at.z > 0.0).then_some((at.truncate(), at.z))
    });
    solved.max_by(|a, b| a.1.total_cmp(&b.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::Angle;

    fn raster(pose: Pose, shift: [f32; 2]) -> Raster {
        Raster { pose, w1: 1.0 / 1.5, h1: 0.375, shift: Vec2::from(shift) }
    }

    fn turned(vertical: f64, horizontal: f64) -> Keystone {
        Keystone { vertical_deg: Angle(vertical), horizontal_deg: Angle(horizontal) }
    }

    /// The corners of the corrected picture in the raster, as the raster names them.
    fn corners(raster: Raster, keystone: &Keystone) -> [DVec2; 4] {
        let raster_from_corrected = corrected(raster, keystone).unwrap().inverse();
        [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].map(|[u, v]| {
            let at = raster_from_corrected * DVec3::new(u, v, 1.0);
            at.truncate() / at.z
        })
    }

    /// Throw ratio 1.5, 16:9, 15° upwards, by hand: the top edge at `Y₁ = 0.1875 / (cos 15° − 0.1875 sin 15°)` is kept, the
    /// lower corners touch the sides at `Y₀ = (Y₁ − h) / (1 + h sin 15°)` with h = 0.375.
    #[test]
    fn upwards_the_narrow_end_of_the_plane_keeps_its_width_and_the_top_its_place() {
        let (sin, cos) = 15f64.to_radians().sin_cos();
        let top = 0.1875 / (cos - 0.1875 * sin);
        let bottom = (top - 0.375) / (1.0 + 0.375 * sin);
        let v = 0.5 - bottom * cos / (1.0 + bottom * sin) / 0.375;
        let half = 0.5 * (1.0 + bottom * sin) / (1.0 + top * sin);
        let wanted = [DVec2::new(0.5 - half, 0.0), DVec2::new(0.5 + half, 0.0), DVec2::new(0.0, v), DVec2::new(1.0, v)];
        for (found, wanted) in corners(raster(Pose::Table, [0.0; 2]), &turned(15.0, 0.0)).iter().zip(wanted) {
            assert!(found.abs_diff_eq(wanted, 1e-9), "{found} is not {wanted}");
        }
    }

    #[test]
    fn all_corners_are_in_the_raster_and_three_edges_are_touched() {
        for pose in [Pose::Table, Pose::Ceiling, Pose::Upright] {
            for (vertical, horizontal) in [(20.0, 0.0), (-12.0, 0.0), (0.0, 25.0), (14.0, -18.0), (-30.0, 30.0)] {
                let found = corners(raster(pose, [0.1, 0.5]), &turned(vertical, horizontal));
                let edges = found.iter().flat_map(|at| [at.x, 1.0 - at.x, at.y, 1.0 - at.y]);
                let touched = edges.clone().filter(|off| off.abs() < 1e-9).count();
                assert!(
                    edges.fold(1.0, f64::min) > -1e-9 && touched >= 3,
                    "{pose:?} {vertical} {horizontal}: {found:?}"
                );
            }
        }
    }

    /// On the plane it lands as a rectangle of the raster's aspect, for every way to lie.
    #[test]
    fn on_its_plane_it_is_a_rectangle() {
        for pose in [Pose::Table, Pose::Ceiling, Pose::Upright] {
            let (raster, keystone) = (raster(pose, [0.0, 0.5]), turned(18.0, -10.0));
            let plane_from_raster = raster_from_plane(raster, &keystone).inverse();
            let on = corners(raster, &keystone).map(|at| {
                let on = plane_from_raster * at.extend(1.0);
                on.truncate() / on.z
            });
            let (across, down) = (on[1] - on[0], on[2] - on[0]);
            assert!(on[3].abs_diff_eq(on[0] + across + down, 1e-9) && across.dot(down).abs() < 1e-9);
            assert!((across.length() / down.length() - 16.0 / 9.0).abs() < 1e-6);
            // As it is seen it stands upright: of a raster on its side the columns run across.
            let level = if pose == Pose::Upright { across } else { down };
            assert!(level.x.abs() < 1e-9, "{pose:?}");
        }
    }

    #[test]
    fn no_correction_is_none_and_one_past_the_horizon_fails() {
        let flat = raster(Pose::Table, [0.0; 2]);
        assert_eq!(corrected(flat, &Keystone::default()), Some(DMat3::IDENTITY));
        let wide = Raster { w1: 4.0, h1: 4.0, ..flat };
        assert_eq!(corrected(wide, &turned(30.0, 0.0)), None);
    }
}
