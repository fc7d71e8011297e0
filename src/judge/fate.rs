//! What becomes of the light that meets the target.

use super::{Landing, Landings, spot};
use crate::{
    geometry::crossing,
    light::{Night, Rgb, luma},
    scene::{Spot, Yard},
    units::border,
};
use serde::Serialize;

/// What becomes of the light that meets the target, at the middle of the picture; the four make 1.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fate {
    /// Thrown back, toward the projector's side.
    #[serde(serialize_with = "border::light")]
    pub back: f64,
    /// Scattered out of the far side.
    #[serde(serialize_with = "border::light")]
    pub onward: f64,
    /// Straight through.
    #[serde(serialize_with = "border::light")]
    pub through: f64,
    /// Lost in the cloth.
    #[serde(serialize_with = "border::light")]
    pub lost: f64,
    /// For each viewing spot whether it sees the side that the projector lights.
    pub seen_from_lit_side: Vec<bool>,
}

/// At the middle of the picture; `None` where nothing lands on the target.
pub(super) fn fate(night: &Night, yard: &Yard, landings: &Landings) -> Option<Fate> {
    let middle = |l: &&Landing| (l.uv[0] - 0.5).powi(2) + (l.uv[1] - 0.5).powi(2);
    let landed = landings.cells.iter().filter(|l| l.target.is_some());
    let touch = landed.min_by(|a, b| middle(a).total_cmp(&middle(b)))?.target?;
    let (back, onward) = match touch.veil {
        None => (touch.reflectance, Rgb::ZERO),
        Some(veil) => {
            let veil = &night.veils[veil as usize];
            let front = crossing::outline_normal(&veil.outline, touch.point).dot(touch.along) < 0.0;
            let face = &night.optics[veil.optic as usize].sheet.faces[usize::from(!front)];
            let cos = touch.normal.dot(touch.along).abs();
            (face.reflect.sample(cos), face.diffuse.sample(cos))
        }
    };
    let (back, onward, through) = (f64::from(luma(back)), f64::from(luma(onward)), f64::from(touch.through));
    let lit = |s: &Spot| (spot::eye(s) - touch.point).dot(touch.normal) > 0.0;
    let seen_from_lit_side = yard.spots.iter().map(lit).collect();
    Some(Fate { back, onward, through, lost: (1.0 - back - onward - through).max(0.0), seen_from_lit_side })
}
