//! How much sky every corner sees, and what is remembered of it.

use super::{Night, settle::Differ};
use crate::{
    geometry::Sight,
    light::{SKIN, bounds, luma, sky_grid::SkyGrid},
};
use glam::Vec3;
use rayon::prelude::*;
use std::sync::Arc;

/// Corners alike for the sky: within half a millimetre of each other, and of sides within 4° of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SkyKey([i32; 3], [i8; 3]);

impl SkyKey {
    fn of(corner: Vec3, normal: Vec3) -> Self {
        Self((corner * 2048.0).round().as_ivec3().to_array(), (normal * 16.0).round().as_i8vec3().to_array())
    }
}

/// What is remembered of a corner's sky.
#[derive(Clone, Copy, Debug)]
pub struct Known {
    /// The share, in steps of 1/65535.
    share: u16,
    /// Whether the corner itself sees none, so that its answer may be that of a place further in.
    dark: bool,
}

/// How far from a corner to its triangle's middle the sky is asked for: the corner itself lies on its neighbours' edges.
const BESIDE: f32 = 0.02;
/// How far along its triangles a corner looks that is buried in a neighbour, as a rail's is in a board: to the first place that
/// is not, towards the middle and along the edges.
const FURTHER_IN: [f32; 3] = [0.35, 0.65, 1.0];

impl Night {
    /// Asks for every corner and every side how much sky it sees. Corners that share a place and a side share the answer.
    /// Corners and veils that stood in the night `before` are not asked again but where those that differ show; where nobody has
    /// looked for those, nowhere, and the night is not thorough.
    pub(super) fn spread_sky(&mut self, before: Option<&Self>, differ: Option<&Differ>) {
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
        let remembered: &[(SkyKey, Known)] = before.map_or(&[], |night| &night.skies);
        let holds = |known: Known, group: &[(SkyKey, u32)]| {
            let shows = |differ: &Differ| {
                let (_, beside, normal) = night.asked_of(group);
                // Opaque things are as they were, and so is the place that is asked.
                let further = || night.further(group, normal).is_some_and(|at| differ.shows(at, normal));
                differ.shows(beside, normal) || known.dark && further()
            };
            !differ.is_some_and(shows)
        };
        let answers: Vec<Known> = groups
            .par_iter()
            .map(|group| {
                let known = remembered.binary_search_by(|entry| entry.0.cmp(&group[0].0));
                let known = known.ok().map(|at| remembered[at].1);
                known.filter(|known| holds(*known, group)).unwrap_or_else(|| night.sky_of_corner(group))
            })
            .collect();
        let hung = |veil: &crate::light::VeilLight| {
            let holds =
                differ.is_none_or(|differ| !SkyGrid::places(&veil.outline).any(|(at, side)| differ.shows(at, side)));
            let known = before?.veils.iter().find(|old| old.outline == veil.outline && old.sort == veil.sort && holds);
            known.map(|old| old.sky.clone())
        };
        let grids: Vec<SkyGrid> =
            self.veils.par_iter().map(|veil| hung(veil).unwrap_or_else(|| SkyGrid::of(night, &veil.outline))).collect();
        let skies: Vec<_> = groups.iter().map(|group| group[0].0).zip(answers.iter().copied()).collect();
        let solids = Arc::make_mut(&mut self.solids);
        for (group, answer) in groups.iter().zip(answers) {
            for (_, corner) in *group {
                solids[*corner as usize / 3].sky[*corner as usize % 3] = answer.share;
            }
        }
        for (veil, grid) in self.veils.iter_mut().zip(grids) {
            veil.sky = grid;
        }
        (self.skies, self.thorough) = (Arc::from(skies), before.is_none() || differ.is_some());
    }

    /// The sky that a corner's triangles, all of one side, see there.
    fn sky_of_corner(&self, group: &[(SkyKey, u32)]) -> Known {
        let known = |share: f32, dark| Known { share: (share.clamp(0.0, 1.0) * 65535.0).round() as u16, dark };
        let (_, beside, normal) = self.asked_of(group);
        let share = luma(self.sky_share(beside, normal));
        if share > 0.0 || !self.is_buried(beside, normal) {
            return known(share, false);
        }
        known(self.further(group, normal).map_or(0.0, |point| luma(self.sky_share(point, normal))), true)
    }

    /// The first place further in on a buried corner's triangles that is not buried.
    fn further(&self, group: &[(SkyKey, u32)], normal: Vec3) -> Option<Vec3> {
        let mut further = FURTHER_IN.iter().flat_map(|share| {
            group.iter().flat_map(|(_, corner)| {
                let ([own, left, right], ..) = self.beside(*corner);
                let middle = (own + left + right) / 3.0;
                [middle, left, right].map(|toward| own.lerp(toward, *share).lerp(middle, BESIDE))
            })
        });
        further.find(|point| !self.is_buried(*point, normal))
    }

    /// Of the triangles that share a corner and a side the one that is asked: whatever their order, the same.
    fn asked_of(&self, group: &[(SkyKey, u32)]) -> ([Vec3; 3], Vec3, Vec3) {
        let all = group.iter().map(|(_, corner)| self.beside(*corner));
        let order = |a: Vec3, b: Vec3| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)).then(a.z.total_cmp(&b.z));
        all.min_by(|a, b| order(a.1, b.1)).unwrap_or_else(|| self.beside(group[0].1))
    }

    /// A corner's triangle from there on, the place beside the corner that is asked, and the side.
    fn beside(&self, corner: u32) -> ([Vec3; 3], Vec3, Vec3) {
        let corners = &self.solids[corner as usize / 3].corners;
        let [own, left, right] = [0, 1, 2].map(|k| corners[(corner as usize % 3 + k) % 3]);
        ([own, left, right], own.lerp((own + left + right) / 3.0, BESIDE), bounds::normal(corners))
    }

    /// Whether a point on a surface lies inside something else: what stands before it there shows it its back.
    fn is_buried(&self, point: Vec3, normal: Vec3) -> bool {
        let out = Sight::endless(point + SKIN * normal, normal);
        self.nearest_solid(out).is_some_and(|hit| hit.normal.dot(normal) > 0.0)
    }
}
