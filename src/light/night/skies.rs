//! How much sky every corner sees, and what is remembered of it.

use super::Night;
use crate::{
    geometry::Sight,
    light::{SKIN, bounds, luma, sky_grid::SkyGrid},
};
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

/// How far from a corner to its triangle's middle the sky is asked for: the corner itself lies on its neighbours' edges.
const BESIDE: f32 = 0.02;
/// How far along its triangles a corner looks that is buried in a neighbour, as a rail's is in a board: to the first place that
/// is not, towards the middle and along the edges.
const FURTHER_IN: [f32; 3] = [0.35, 0.65, 1.0];

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
                let share = night.sky_of_corner(group);
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

    /// The sky that a corner's triangles, all of one side, see there.
    fn sky_of_corner(&self, group: &[(SkyKey, u32)]) -> f32 {
        let normal = bounds::normal(&self.solids[group[0].1 as usize / 3].corners);
        let triangle = |corner: u32| {
            let corners = &self.solids[corner as usize / 3].corners;
            let [own, left, right] = [0, 1, 2].map(|k| corners[(corner as usize % 3 + k) % 3]);
            (own, (own + left + right) / 3.0, [left, right])
        };
        let (own, middle, _) = triangle(group[0].1);
        let beside = own.lerp(middle, BESIDE);
        let share = luma(self.sky_share(beside, normal));
        if share > 0.0 || !self.is_buried(beside, normal) {
            return share;
        }
        let mut further = FURTHER_IN.iter().flat_map(|share| {
            group.iter().flat_map(|(_, corner)| {
                let (own, middle, [left, right]) = triangle(*corner);
                [middle, left, right].map(|toward| own.lerp(toward, *share).lerp(middle, BESIDE))
            })
        });
        let found = further.find(|point| !self.is_buried(*point, normal));
        found.map_or(0.0, |point| luma(self.sky_share(point, normal)))
    }

    /// Whether a point on a surface lies inside something else: what stands before it there shows it its back.
    fn is_buried(&self, point: Vec3, normal: Vec3) -> bool {
        let out = Sight::endless(point + SKIN * normal, normal);
        self.nearest_solid(out).is_some_and(|hit| hit.normal.dot(normal) > 0.0)
    }
}
