//! Corners of opaque triangles that see one sky: those that share a place and a side share the answer.

use super::{
    Night, SolidLight,
    crowds::{Crowds, Member},
};
use crate::{
    geometry::Sight,
    light::{SKIN, bounds, luma},
};
use glam::Vec3;
use rayon::prelude::*;
use std::{borrow::Cow, sync::Arc};

/// Corners alike for the sky: within half a millimetre of each other, and of sides within 4° of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct SkyKey([i32; 3], [i8; 3]);

impl SkyKey {
    fn of(corner: Vec3, normal: Vec3) -> Self {
        Self((corner * 2048.0).round().as_ivec3().to_array(), (normal * 16.0).round().as_i8vec3().to_array())
    }
}

/// The corners of some triangles in groups that are alike.
pub(super) struct Groups {
    /// What each group has in common, in its order.
    pub keys: Vec<SkyKey>,
    /// All corners, each three times its triangle's index and which of its corners; group by group.
    members: Vec<u32>,
    /// Where each group begins among the members, and where the last one ends.
    starts: Vec<u32>,
    /// The group of each corner.
    groups: Vec<u32>,
}

impl Groups {
    fn of(solids: &[SolidLight]) -> Self {
        let key = |corner: usize| {
            let corners = &solids[corner / 3].corners;
            (SkyKey::of(corners[corner % 3], bounds::normal(corners)), corner as u32)
        };
        let mut all: Vec<(SkyKey, u32)> = (0..solids.len() * 3).into_par_iter().map(key).collect();
        all.par_sort_unstable();
        let (mut keys, mut starts, mut groups) = (Vec::new(), Vec::new(), vec![0; all.len()]);
        for (at, (key, corner)) in all.iter().enumerate() {
            if keys.last() != Some(key) {
                keys.push(*key);
                starts.push(at as u32);
            }
            groups[*corner as usize] = keys.len() as u32 - 1;
        }
        starts.push(all.len() as u32);
        Self { keys, members: all.into_iter().map(|(_, corner)| corner).collect(), starts, groups }
    }

    fn of_solid(&self, solid: u32) -> [u32; 3] {
        [0, 1, 2].map(|corner| self.groups[solid as usize * 3 + corner])
    }

    fn members(&self, group: u32) -> &[u32] {
        &self.members[self.starts[group as usize] as usize..self.starts[group as usize + 1] as usize]
    }

    fn len(&self) -> u32 {
        self.keys.len() as u32
    }
}

/// The groups of all corners of a night: first those of what stands alone, then those of crowds, member by member.
pub(super) struct Corners {
    pub alone: Groups,
    /// Of each body of the crowds.
    bodies: Vec<Groups>,
    crowds: Arc<Crowds>,
    /// The first group of each of the crowds' members.
    firsts: Vec<u32>,
    /// Groups in all.
    pub count: u32,
}

/// Where a group is found.
pub(super) enum Of {
    /// Among what stands alone.
    Alone(usize),
    /// At a member of a crowd.
    Member(usize, usize),
}

impl Corners {
    pub fn of(night: &Night) -> Self {
        let (alone, crowds) = (Groups::of(&night.solids), Arc::clone(&night.crowds));
        let bodies: Vec<Groups> = crowds.bodies.iter().map(|body| Groups::of(&body.solids)).collect();
        let mut count = alone.len();
        let mut next = |member: &Member| {
            let first = count;
            count += bodies[member.body].len();
            first
        };
        let firsts = crowds.members.iter().map(&mut next).collect();
        Self { alone, bodies, crowds, firsts, count }
    }

    /// The groups of a triangle's corners.
    pub fn of_solid(&self, solid: u32) -> [u32; 3] {
        if (solid as usize) < self.alone.groups.len() / 3 {
            return self.alone.of_solid(solid);
        }
        let at = self.crowds.member_of(solid);
        let member = &self.crowds.members[at];
        self.bodies[member.body].of_solid(solid - member.first).map(|group| self.firsts[at] + group)
    }

    /// Where a group is found.
    pub fn find(&self, group: u32) -> Of {
        if group < self.alone.len() {
            return Of::Alone(group as usize);
        }
        let member = self.firsts.partition_point(|first| *first <= group).saturating_sub(1);
        Of::Member(member, (group - self.firsts[member]) as usize)
    }

    /// The corners of a group.
    pub fn members(&self, group: u32) -> Cow<'_, [u32]> {
        match self.find(group) {
            Of::Alone(group) => Cow::Borrowed(self.alone.members(group as u32)),
            Of::Member(at, group) => {
                let member = &self.crowds.members[at];
                let corners = self.bodies[member.body].members(group as u32);
                corners.iter().map(|corner| 3 * member.first + corner).collect()
            }
        }
    }

    /// Groups of a member of a crowd.
    pub fn of_member(&self, member: usize) -> u32 {
        self.bodies[self.crowds.members[member].body].len()
    }

    /// The group among those of another night that has what a group has in common.
    pub fn alike_alone(&self, key: SkyKey) -> Option<u32> {
        self.alone.keys.binary_search(&key).ok().map(|at| at as u32)
    }

    /// Members of crowds, here and in another night, of the same body in the same place.
    pub fn alike_members(&self, other: &Self) -> Vec<(usize, usize)> {
        let corners = |crowds: &Crowds, body: usize| -> Vec<[Vec3; 3]> {
            crowds.bodies[body].solids.iter().map(|solid| solid.corners).collect()
        };
        let of_body = |body: usize| {
            let own = corners(&self.crowds, body);
            (0..other.bodies.len()).find(|there| corners(&other.crowds, *there) == own)
        };
        let bodies: Vec<Option<usize>> = (0..self.bodies.len()).map(of_body).collect();
        let there = |member: &Member| {
            let alike = |there: &Member| bodies[member.body] == Some(there.body) && member.frame == there.frame;
            other.crowds.members.iter().position(alike)
        };
        let members = self.crowds.members.iter().enumerate();
        members.filter_map(|(here, member)| Some((here, there(member)?))).collect()
    }
}

/// What is known of a corner's sky.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Known {
    /// The share, in steps of 1/65535.
    pub share: u16,
    /// Whether the corner itself sees none, so that its answer may be that of a place further in.
    pub dark: bool,
}

impl Known {
    /// As one number, and back.
    pub fn bits(self) -> u32 {
        u32::from(self.share) | u32::from(self.dark) << 16
    }

    pub fn from_bits(bits: u32) -> Self {
        Self { share: bits as u16, dark: bits >> 16 != 0 }
    }
}

/// How far from a corner to its triangle's middle the sky is asked for: the corner itself lies on its neighbours' edges.
const BESIDE: f32 = 0.02;
/// How far along its triangles a corner looks that is buried in a neighbour, as a rail's is in a board: to the first place that
/// is not, towards the middle and along the edges.
const FURTHER_IN: [f32; 3] = [0.35, 0.65, 1.0];

impl Night {
    /// The sky that a corner's triangles, all of one side, see there.
    pub(super) fn sky_of_corner(&self, group: &[u32]) -> Known {
        let known = |share: f32, dark| Known { share: (share.clamp(0.0, 1.0) * 65535.0).round() as u16, dark };
        let (beside, normal) = self.asked_of(group);
        let share = luma(self.sky_share(beside, normal));
        if share > 0.0 || !self.is_buried(beside, normal) {
            return known(share, false);
        }
        known(self.further(group, normal).map_or(0.0, |point| luma(self.sky_share(point, normal))), true)
    }

    /// The first place further in on a buried corner's triangles that is not buried.
    pub(super) fn further(&self, group: &[u32], normal: Vec3) -> Option<Vec3> {
        let mut further = FURTHER_IN.iter().flat_map(|share| {
            group.iter().flat_map(|corner| {
                let ([own, left, right], ..) = self.beside(*corner);
                let middle = (own + left + right) / 3.0;
                [middle, left, right].map(|toward| own.lerp(toward, *share).lerp(middle, BESIDE))
            })
        });
        further.find(|point| !self.is_buried(*point, normal))
    }

    /// Of the places beside a corner that its triangles of one side ask the one that is asked, whatever their order, and the side.
    pub(super) fn asked_of(&self, group: &[u32]) -> (Vec3, Vec3) {
        let all = group.iter().map(|corner| self.beside(*corner));
        let order = |a: Vec3, b: Vec3| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)).then(a.z.total_cmp(&b.z));
        let (_, beside, normal) = all.min_by(|a, b| order(a.1, b.1)).unwrap_or_else(|| self.beside(group[0]));
        (beside, normal)
    }

    /// A corner's triangle from there on, the place beside the corner that is asked, and the side.
    fn beside(&self, corner: u32) -> ([Vec3; 3], Vec3, Vec3) {
        let corners = &self.solid(corner / 3).corners;
        let [own, left, right] = [0, 1, 2].map(|k| corners[(corner as usize % 3 + k) % 3]);
        ([own, left, right], own.lerp((own + left + right) / 3.0, BESIDE), bounds::normal(corners))
    }

    /// Whether a point on a surface lies inside something else: what stands before it there shows it its back.
    fn is_buried(&self, point: Vec3, normal: Vec3) -> bool {
        let out = Sight::endless(point + SKIN * normal, normal);
        self.nearest_solid(out).is_some_and(|hit| hit.normal.dot(normal) > 0.0)
    }
}
