//! The way of the light: what is left of it between two points.

use super::{Night, Rgb, VeilSort};
use crate::geometry::{Sight, crossing};
use glam::{Vec3, Vec4};
use std::cell::Cell;

/// Ends of ways that a thread remembers.
const ENDS: usize = 256;

thread_local! {
    /// For the ends of ways, by their bits, the leaf that stood in the way last: a hint where to look first, of whatever night.
    static LAST: [Cell<u32>; ENDS] = const { [const { Cell::new(u32::MAX) }; ENDS] };
}

/// The place of an end among them.
#[inline]
fn place(end: Vec3) -> usize {
    let mixed = end.to_array().iter().fold(0_u32, |mixed, part| (mixed ^ part.to_bits()).wrapping_mul(0x9E37_79B1));
    (mixed >> 24) as usize % ENDS
}

impl Night {
    /// Transmittance of the straight way between two points: 0 behind anything opaque or a mirror, else the product of
    /// what every fabric, pane and leafy shell lets straight through at its angle. `skip` names two veils that do not
    /// count: the mirrors that the way begins or ends on.
    #[inline]
    pub fn way(&self, from: Vec3, to: Vec3, skip: [u32; 2]) -> Rgb {
        let sight = Sight::between(from, to);
        let shear = crossing::Shear::of(sight.origin, sight.direction);
        let reach = Vec4::splat(sight.reach);
        let meets = |leaf: u32| shear.four(&self.fours[leaf as usize]).cmplt(reach).any();
        LAST.with(|last| {
            let last = &last[place(to)];
            let hint = last.get();
            if (hint as usize) < self.fours.len() && meets(hint) {
                return Rgb::ZERO;
            }
            let through = self.through(sight, skip);
            let met = |leaf: u32| {
                let met = meets(leaf);
                if met {
                    last.set(leaf);
                }
                met
            };
            let blocked = through == Rgb::ZERO || self.solid_tree.any_leaf(sight, met) || self.crowds.block(sight);
            if blocked { Rgb::ZERO } else { through }
        })
    }

    /// Whether anything opaque stands in the way.
    #[inline]
    pub fn blocked(&self, sight: Sight) -> bool {
        let shear = crossing::Shear::of(sight.origin, sight.direction);
        let reach = Vec4::splat(sight.reach);
        let met = |leaf: u32| shear.four(&self.fours[leaf as usize]).cmplt(reach).any();
        self.solid_tree.any_leaf(sight, met) || self.crowds.block(sight)
    }

    /// What the see-through things on the way leave of the light; opaque things are not looked at.
    #[inline]
    pub fn through(&self, sight: Sight, skip: [u32; 2]) -> Rgb {
        let mut left = Rgb::ONE;
        let length = sight.direction.length();
        self.veil_tree.each(sight, |id| {
            if skip.contains(&id) || left == Rgb::ZERO {
                return;
            }
            let veil = &self.veils[id as usize];
            for t in crossing::outline(&veil.outline, sight.origin, sight.direction) {
                if t > 0.0 && t < sight.reach {
                    if veil.sort == VeilSort::Mirror {
                        left = Rgb::ZERO;
                        return;
                    }
                    let normal = crossing::outline_normal(&veil.outline, sight.at(t));
                    let cos = normal.dot(sight.direction).abs() / length;
                    left *= self.optics[veil.optic as usize].sheet.through.sample(cos);
                }
            }
        });
        left
    }
}
