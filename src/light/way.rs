//! The way of the light: what is left of it between two points.

use super::{Night, Rgb, VeilSort};
use crate::geometry::{Sight, crossing};
use glam::Vec3;

impl Night {
    /// Transmittance of the straight way between two points: 0 behind anything opaque or a mirror, else the product of
    /// what every fabric, pane and leafy shell lets straight through at its angle. `skip` names two veils that do not
    /// count: the mirrors that the way begins or ends on.
    #[inline]
    pub fn way(&self, from: Vec3, to: Vec3, skip: [u32; 2]) -> Rgb {
        let sight = Sight::between(from, to);
        let through = self.through(sight, skip);
        if through == Rgb::ZERO || self.blocked(sight) { Rgb::ZERO } else { through }
    }

    /// Whether anything opaque stands in the way.
    #[inline]
    pub fn blocked(&self, sight: Sight) -> bool {
        let shear = crossing::Shear::of(sight.origin, sight.direction);
        self.solid_tree
            .any(sight, |id| shear.triangle(&self.solids[id as usize].corners).map_or(f32::INFINITY, |(t, _)| t))
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
