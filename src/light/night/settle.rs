//! A night that was changed quickly asks anew for the sky, wherever the change can have altered it.

use super::{Night, SolidLight};
use crate::{
    geometry::crossing,
    light::{Optic, SKIN, VeilLight, bounds, sky::cosine_rays},
};
use glam::Vec3;
use std::{collections::HashMap, sync::Arc};

/// So many boxes are told apart; more become one.
const BOXES: usize = 24;
/// A box is taken larger by that on every side, m.
const HAIR: f32 = 1e-3;

/// Where two nights differ in what stands in the way of the sky, as boxes.
pub(super) struct Differ(Vec<(Vec3, Vec3)>);

impl Night {
    /// Makes the night thorough again after it followed or was rebuilt quickly from `before`, a thorough one: the sky is asked for
    /// anew wherever something that came, went or changed may stand between.
    pub fn settle(&mut self, before: &Self) {
        let differ = Differ::between(before, self);
        self.spread_sky(Some(before), Some(&differ));
    }
}

impl Differ {
    fn between(before: &Night, after: &Night) -> Self {
        let mut boxes = Vec::new();
        if !Arc::ptr_eq(&before.solids, &after.solids) {
            boxes.extend(solids(&before.solids, &after.solids));
        }
        let [before, after] = [before, after].map(|night| (night.veils.as_slice(), night.optics.as_slice()));
        boxes.extend(missing(before, after));
        boxes.extend(missing(after, before));
        if boxes.len() > BOXES {
            boxes = boxes.into_iter().reduce(|a, b| (a.0.min(b.0), a.1.max(b.1))).into_iter().collect();
        }
        Self(boxes.into_iter().map(|(low, high)| (low - HAIR, high + HAIR)).collect())
    }

    /// Whether a difference may show in the sky that a place of this normal sees, or in what stands right before it.
    pub fn shows(&self, point: Vec3, normal: Vec3) -> bool {
        let start = point + SKIN * normal;
        let faces = |(low, high): &&(Vec3, Vec3)| {
            let farthest = Vec3::select(normal.cmpgt(Vec3::ZERO), *high, *low);
            (farthest - start).dot(normal) > 0.0
        };
        let boxes: Vec<&(Vec3, Vec3)> = self.0.iter().filter(faces).collect();
        if boxes.is_empty() {
            return false;
        }
        let (side, other) = normal.any_orthonormal_pair();
        let toward = |ray: &Vec3| ray.x * side + ray.y * other + ray.z * normal;
        let rays = cosine_rays().iter().map(toward).filter(|toward| toward.y > 0.0);
        rays.chain([normal]).any(|toward| boxes.iter().any(|(low, high)| crosses(start, toward, *low, *high)))
    }
}

/// Whether a ray crosses a box.
fn crosses(start: Vec3, along: Vec3, low: Vec3, high: Vec3) -> bool {
    let inverse = along.recip();
    let (a, b) = ((low - start) * inverse, (high - start) * inverse);
    let (near, far) = (a.min(b).max_element(), a.max(b).min_element());
    near <= far && far >= 0.0
}

/// Boxes of the triangles that stand in one night and not in the other.
fn solids(before: &[SolidLight], after: &[SolidLight]) -> Vec<(Vec3, Vec3)> {
    let key = |solid: &SolidLight| solid.corners.map(|corner| corner.to_array().map(f32::to_bits));
    let mut count: HashMap<[[u32; 3]; 3], (i32, (Vec3, Vec3))> = HashMap::with_capacity(before.len());
    for (list, by) in [(before, 1), (after, -1)] {
        for solid in list {
            count.entry(key(solid)).or_insert_with(|| (0, bounds::of(&solid.corners))).0 += by;
        }
    }
    count.into_values().filter(|(count, _)| *count != 0).map(|(_, bounds)| bounds).collect()
}

/// Boxes of the see-through things and mirrors that have no like among others.
fn missing(of: (&[VeilLight], &[Optic]), others: (&[VeilLight], &[Optic])) -> Vec<(Vec3, Vec3)> {
    let through =
        |(_, optics): (&[VeilLight], &[Optic]), veil: &VeilLight| optics[veil.optic as usize].sheet.through.clone();
    let alike = |veil: &VeilLight, other: &VeilLight| {
        veil.outline == other.outline && veil.sort == other.sort && through(of, veil) == through(others, other)
    };
    let alone = of.0.iter().filter(|veil| !others.0.iter().any(|other| alike(veil, other)));
    alone.map(|veil| crossing::outline_box(&veil.outline)).collect()
}
