//! How much sky every corner sees, and what is remembered of it.

use super::Night;
use crate::light::{bounds, luma, sky_grid::SkyGrid};
use glam::Vec3;
use rayon::prelude::*;

/// Corners alike for the sky: within half a millimetre of each other, and of sides within 4° of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SkyKey([i32; 3], [i8; 3]);

impl SkyKey {
    fn of(corner: Vec3, normal: Vec3) -> Self {
        Self((corner * 2048.0).round().as_ivec3().to_array(), (normal * 16.0).round().as_i8vec3().to_array())
    }
}

impl Night {
    /// Asks for every corner and every side how much sky it sees. Corners that share a place and a side share the answer.
    /// Corners and veils that stood in the night `before` are not asked again.
    pub(super) fn spread_sky(&mut self, before: Option<&Self>) {
        let night = &*self;
        let mut corners: Vec<(SkyKey, u32)> = (0..night.solids.len() as u32 * 3)
            .into_par_iter()
            .map(|i| {
                let corners = &night.solids[i as usize / 3].corners;
                (SkyKey::of(corners[i as usize % 3], bounds::normal(corners)), i)
            })
            .collect();
        corners.par_sort_unstable();
        let groups: Vec<&[(SkyKey, u32)]> = corners.chunk_by(|a, b| a.0 == b.0).collect();
        let remembered: &[(SkyKey, u16)] = before.map_or(&[], |night| &night.skies);
        let answers: Vec<u16> = groups
            .par_iter()
            .map(|group| {
                if let Ok(at) = remembered.binary_search_by(|entry| entry.0.cmp(&group[0].0)) {
                    return remembered[at].1;
                }
                let first = group[0].1 as usize;
                let corners = &night.solids[first / 3].corners;
                // A little inwards: a corner itself lies on the edge of its neighbours.
                let middle = (corners[0] + corners[1] + corners[2]) / 3.0;
                let point = corners[first % 3].lerp(middle, 0.02);
                let share = luma(night.sky_share(point, bounds::normal(corners)));
                (share.clamp(0.0, 1.0) * 65535.0).round() as u16
            })
            .collect();
        let hung = |veil: &crate::light::VeilLight| {
            let known = before?.veils.iter().find(|old| old.outline == veil.outline && old.sort == veil.sort);
            known.map(|old| old.sky.clone())
        };
        let grids: Vec<SkyGrid> =
            self.veils.par_iter().map(|veil| hung(veil).unwrap_or_else(|| SkyGrid::of(night, &veil.outline))).collect();
        let skies = groups.iter().map(|group| group[0].0).zip(answers.iter().copied()).collect();
        for (group, answer) in groups.iter().zip(answers) {
            for (_, corner) in *group {
                self.solids[*corner as usize / 3].sky[*corner as usize % 3] = answer;
            }
        }
        for (veil, grid) in self.veils.iter_mut().zip(grids) {
            veil.sky = grid;
        }
        (self.skies, self.thorough) = (skies, before.is_none());
    }
}
