//! A night that was changed quickly asks anew for the sky, wherever the change can have altered it.

use super::{Night, skies::Skies};
use crate::{
    geometry::crossing,
    light::{Optic, SKIN, VeilLight, sky::cosine_rays},
};
use glam::Vec3;
use std::sync::Arc;

/// So many boxes are told apart; more become one.
const BOXES: usize = 24;
/// A box is taken larger by that on every side, m.
const HAIR: f32 = 1e-3;

/// Where two nights of the same opaque things differ in what stands in the way of the sky, as boxes.
pub(super) struct Differ(Vec<(Vec3, Vec3)>);

impl Night {
    /// Makes the night thorough again after it followed `before`, a thorough one: the sky is asked for anew wherever something
    /// see-through that was hung elsewhere or changed may stand between, and for the rest is what it was. `false`, and nothing done,
    /// where `before` was not thorough or opaque things differ: then the night must be built anew.
    pub fn settle(&mut self, before: &Self) -> bool {
        let can = before.thorough && Arc::ptr_eq(&before.solids, &self.solids);
        let Some(known) = before.skies.as_ref().filter(|_| can) else { return false };
        self.skies = Some(Arc::new(Skies::after(self, known)));
        self.thorough = true;
        true
    }
}

impl Differ {
    pub fn between(before: &Night, after: &Night) -> Self {
        let [before, after] = [before, after].map(|night| (night.veils.as_slice(), night.optics.as_slice()));
        let mut boxes = missing(before, after);
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

/// Whether a ray crosses a box, its faces included. Along a face there is no crossing of its plane to be computed: there the ray stays
/// inside for all of its way, or outside.
fn crosses(start: Vec3, along: Vec3, low: Vec3, high: Vec3) -> bool {
    let (mut near, mut far) = (0.0_f32, f32::INFINITY);
    for axis in 0..3 {
        let (start, along, low, high) = (start[axis], along[axis], low[axis], high[axis]);
        if along == 0.0 {
            if !(low..=high).contains(&start) {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / along, (high - start) / along);
        (near, far) = (near.max(a.min(b)), far.min(a.max(b)));
    }
    near <= far
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ray_along_a_face_of_a_box_crosses_it() {
        let (low, high) = (Vec3::new(0.0, -1.0, -1.0), Vec3::new(1.0, 1.0, 1.0));
        let crosses = |start: Vec3, along: Vec3| super::crosses(start, along, low, high);
        for x in [low.x, 0.5, high.x] {
            for along in [Vec3::Y, Vec3::new(-0.0, 1.0, 0.0), Vec3::new(0.0, 1.0, -0.0)] {
                for z in [low.z, 0.3, high.z] {
                    assert!(crosses(Vec3::new(x, -5.0, z), along), "at {x}, {z} along {along}");
                    assert!(!crosses(Vec3::new(x, 5.0, z), along), "behind it at {x}, {z} along {along}");
                }
            }
        }
        for beside in [-0.1, 1.1] {
            assert!(!crosses(Vec3::new(beside, -5.0, 0.0), Vec3::Y), "{beside}");
        }
        assert!(crosses(Vec3::new(0.5, 0.0, 0.0), Vec3::ONE.normalize()), "from inside");
    }
}
