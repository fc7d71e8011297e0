//! How far an aim may stray before the figure leaves its targets.

use super::{Landings, leave, meant::Meant};
use crate::{
    geometry::Sight,
    light::{Beam, Night, VeilSort},
    units::border,
};
use glam::{Quat, Vec3};
use serde::Serialize;

/// The farthest that an aim is tried astray, degrees.
const FARTHEST_DEG: f32 = 12.0;
/// Halvings of that: to a fiftieth of a degree, finer than hands set.
const HALVINGS: u32 = 9;

/// How far the whole projector may be turned before some of the figure's outline leaves its targets, degrees: as it looks, to
/// the left and right about the vertical, and up and down. At most 12.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Slack {
    /// To the left.
    #[serde(serialize_with = "border::light")]
    pub left_deg: f64,
    /// To the right.
    #[serde(serialize_with = "border::light")]
    pub right_deg: f64,
    /// Upwards.
    #[serde(serialize_with = "border::light")]
    pub up_deg: f64,
    /// Downwards.
    #[serde(serialize_with = "border::light")]
    pub down_deg: f64,
}

impl Slack {
    /// The least of the four.
    pub fn least_deg(&self) -> f64 {
        self.left_deg.min(self.right_deg).min(self.up_deg).min(self.down_deg)
    }
}

/// How far a station's aim may stray; `None` where nothing of its figure lands on a target, or its outline does not. By way of mirrors the mirrors stay
/// and the light after them is turned.
pub(super) fn slack(night: &Night, beam: &Beam, targets: &[u32], landings: &Landings) -> Option<Slack> {
    let outline = outline(landings);
    if outline.is_empty() {
        return None;
    }
    let upright = beam.lens.forward.cross(Vec3::Y).try_normalize()?;
    let meant = Meant::of(night, beam, targets);
    let stays = |about: Vec3, degrees: f32| {
        let turn = Quat::from_axis_angle(about, degrees.to_radians());
        outline.iter().all(|uv| lands(night, beam, *uv, turn, &meant))
    };
    if !stays(Vec3::Y, 0.0) {
        return None;
    }
    let far = |about: Vec3| {
        if stays(about, FARTHEST_DEG) {
            return f64::from(FARTHEST_DEG);
        }
        let (mut fine, mut astray) = (0.0, FARTHEST_DEG);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (fine + astray);
            *(if stays(about, middle) { &mut fine } else { &mut astray }) = middle;
        }
        f64::from(fine)
    };
    Some(Slack { left_deg: far(Vec3::Y), right_deg: far(-Vec3::Y), up_deg: far(upright), down_deg: far(-upright) })
}

/// The farthest points of the figure that land on the target, in eight directions of the raster.
fn outline(landings: &Landings) -> Vec<[f32; 2]> {
    let figure = || landings.figure_on_target().map(|part| part.landing.uv);
    let ways = (0..8).map(|i| (f32::from(i as u8) * std::f32::consts::FRAC_PI_4).sin_cos());
    let mut list: Vec<[f32; 2]> = ways
        .filter_map(|(y, x)| {
            let along = |uv: &[f32; 2]| x * (uv[0] - 0.5) + y * (uv[1] - 0.5);
            figure().max_by(|a, b| along(a).total_cmp(&along(b)))
        })
        .collect();
    list.dedup();
    list
}

/// Whether a ray of the raster, its light turned, still reaches a target, through whatever glass and cloth.
fn lands(night: &Night, beam: &Beam, uv: [f32; 2], turn: Quat, meant: &Meant) -> bool {
    let Some((from, along)) = leave(night, beam, uv) else { return false };
    let touches = night.touches(Sight::endless(from, turn * along));
    let ends = |t: &&super::Touch| {
        meant.takes(t) || t.veil.is_none_or(|veil| night.veils[veil as usize].sort == VeilSort::Mirror)
    };
    touches.iter().find(ends).is_some_and(|touch| meant.takes(touch))
}
