//! Crowds: bodies of which many stand in a yard are held once, in their own axes, and met wherever they stand.
//!
//! A ray is taken into the axes of each member whose box it crosses; how far along it something lies is the same there. Triangles of
//! members are numbered after those that stand alone, member by member.

use super::{Hit, MOST_TRIANGLES, Night, SolidLight};
use crate::{
    geometry::{Frame, Node, Sight, Tree, crossing},
    light::bounds,
};
use glam::{Vec3, Vec4};
use std::sync::{Arc, OnceLock};

/// Opaque triangles in the order of their tree.
#[derive(Clone)]
pub(super) struct Arranged {
    pub solids: Arc<Vec<SolidLight>>,
    pub tree: Arc<Tree>,
    /// The same triangles leaf by leaf of that tree.
    pub fours: Arc<Vec<crossing::Four>>,
}

/// One of a crowd.
pub(super) struct Member {
    /// Which of the bodies it has.
    pub body: usize,
    /// Index of its name.
    pub owner: u32,
    /// Its own axes.
    pub frame: Frame,
    /// Number of its first triangle.
    pub first: u32,
}

/// All crowds of a yard.
pub(in crate::light) struct Crowds {
    pub(super) bodies: Vec<Arranged>,
    pub(super) members: Vec<Member>,
    /// Over the members' boxes.
    tree: Tree,
    /// Over all triangles of the yard, those of members apart: what the shader walks, once it is asked for.
    apart: OnceLock<Tree>,
}

impl Arranged {
    pub fn of(solids: &[SolidLight]) -> Self {
        let tree = Tree::of_fours(&solids.iter().map(|s| bounds::of(&s.corners)).collect::<Vec<_>>());
        let solids: Vec<SolidLight> = tree.order().iter().map(|&i| solids[i as usize]).collect();
        let fours = tree.leaves().map(|leaf| crossing::Four::of(solids[leaf].iter().map(|solid| &solid.corners)));
        let fours = Arc::new(fours.collect());
        Self { solids: Arc::new(solids), fours, tree: Arc::new(tree.reordered()) }
    }
}

/// The nearest of some triangles on a ray, and where.
#[inline]
pub(super) fn nearest(tree: &Tree, fours: &[crossing::Four], sight: Sight) -> Option<(u32, f32)> {
    let shear = crossing::Shear::of(sight.origin, sight.direction);
    let mut met = None;
    tree.nearest_leaf(sight, |leaf, reach| {
        let four = shear.four(&fours[leaf as usize]);
        let t = four.min_element();
        if t >= reach {
            return reach;
        }
        met = Some((leaf, four.min_position(), t));
        t
    });
    met.map(|(leaf, place, t)| (tree.first_of(leaf) + place as u32, t))
}

/// Whether any of some triangles is met within reach.
#[inline]
fn any(tree: &Tree, fours: &[crossing::Four], sight: Sight) -> bool {
    let shear = crossing::Shear::of(sight.origin, sight.direction);
    let reach = Vec4::splat(sight.reach);
    tree.any_leaf(sight, |leaf| shear.four(&fours[leaf as usize]).cmplt(reach).any())
}

impl Member {
    /// A ray in its own axes.
    #[inline]
    fn sight(&self, sight: Sight) -> Sight {
        let origin = self.frame.local(sight.origin);
        Sight { origin, direction: self.frame.local_way(sight.direction), reach: sight.reach }
    }

    /// A triangle of its body where it stands.
    fn stands(&self, solid: &SolidLight) -> SolidLight {
        SolidLight { corners: solid.corners.map(|corner| self.frame.point(corner)), owner: self.owner, ..*solid }
    }
}

impl Crowds {
    pub(super) fn none() -> Self {
        Self::of(Vec::new(), Vec::new())
    }

    pub(super) fn of(bodies: Vec<Arranged>, members: Vec<Member>) -> Self {
        let around = |member: &Member| {
            let corners = bodies[member.body].solids.iter().flat_map(|solid| solid.corners);
            let points = corners.map(|corner| member.frame.point(corner)).map(|point| (point, point));
            let both = points.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
            both.unwrap_or((member.frame.at, member.frame.at))
        };
        let tree = Tree::over(&members.iter().map(around).collect::<Vec<_>>());
        Self { bodies, members, tree, apart: OnceLock::new() }
    }

    fn body(&self, member: &Member) -> &Arranged {
        &self.bodies[member.body]
    }

    /// The member that has a triangle.
    pub(super) fn member_of(&self, solid: u32) -> usize {
        self.members.partition_point(|member| member.first <= solid).saturating_sub(1)
    }

    /// The number after that of the last triangle; nothing without members.
    fn end(&self) -> Option<u32> {
        self.members.last().map(|member| member.first + self.body(member).solids.len() as u32)
    }

    fn solid(&self, solid: u32) -> SolidLight {
        let member = &self.members[self.member_of(solid)];
        member.stands(&self.body(member).solids[(solid - member.first) as usize])
    }

    /// The nearest of its triangles on a ray: the member, and which of its body.
    #[inline]
    fn nearest(&self, sight: Sight) -> Option<(&Member, u32)> {
        let mut met = None;
        self.tree.nearest_leaf(sight, |leaf, mut reach| {
            for &member in self.tree.of_leaf(leaf) {
                let member = &self.members[member as usize];
                let body = self.body(member);
                if let Some((solid, t)) = nearest(&body.tree, &body.fours, member.sight(Sight { reach, ..sight })) {
                    (met, reach) = (Some((member, solid)), t);
                }
            }
            reach
        });
        met
    }

    /// Whether any of its triangles stands in the way.
    #[inline]
    pub(in crate::light) fn block(&self, sight: Sight) -> bool {
        self.tree.any_leaf(sight, |leaf| {
            self.tree.of_leaf(leaf).iter().any(|&member| {
                let member = &self.members[member as usize];
                let body = self.body(member);
                any(&body.tree, &body.fours, member.sight(sight))
            })
        })
    }
}

impl Night {
    /// Opaque triangles that stand in the yard, those of crowds among them.
    pub fn triangles(&self) -> u32 {
        self.crowds.end().unwrap_or(self.solids.len() as u32)
    }

    /// An opaque triangle by its number.
    #[inline]
    pub fn solid(&self, solid: u32) -> SolidLight {
        self.solids.get(solid as usize).copied().unwrap_or_else(|| self.crowds.solid(solid))
    }

    /// Corners of all opaque triangles of a name, by its index.
    pub fn corners_of(&self, owner: u32) -> impl Iterator<Item = Vec3> + '_ {
        let alone = self.solids.iter().filter(move |solid| solid.owner == owner).flat_map(|solid| solid.corners);
        let members = self.crowds.members.iter().filter(move |member| member.owner == owner);
        let of = |member: &'_ Member| {
            let (frame, solids) = (member.frame, &self.crowds.bodies[member.body].solids);
            solids.iter().flat_map(|solid| solid.corners).map(move |corner| frame.point(corner))
        };
        alone.chain(members.flat_map(of))
    }

    /// The nearest opaque thing on a ray.
    #[inline]
    pub fn nearest_solid(&self, sight: Sight) -> Option<Hit> {
        let alone = nearest(&self.solid_tree, &self.fours, sight);
        let reach = alone.map_or(sight.reach, |(_, t)| t);
        if let Some((member, solid)) = self.crowds.nearest(Sight { reach, ..sight }) {
            let (own, body) = (member.sight(sight), &self.crowds.bodies[member.body].solids[solid as usize]);
            let (t, weights) = crossing::Shear::of(own.origin, own.direction).triangle(&body.corners)?;
            let normal = bounds::normal(&member.stands(body).corners);
            return Some(Hit { solid: member.first + solid, t, weights, normal });
        }
        let (solid, _) = alone?;
        let corners = &self.solids[solid as usize].corners;
        let (t, weights) = crossing::Shear::of(sight.origin, sight.direction).triangle(corners)?;
        Some(Hit { solid, t, weights, normal: bounds::normal(corners) })
    }

    /// Calls `visit` for every opaque triangle that a ray meets within reach, in no useful order: with the index of its name, and where.
    pub fn each_solid(&self, sight: Sight, mut visit: impl FnMut(u32, f32)) {
        let mut among = |tree: &Tree, solids: &[SolidLight], own: Sight, owner: Option<u32>| {
            let shear = crossing::Shear::of(own.origin, own.direction);
            tree.each(own, |solid| {
                let solid = &solids[solid as usize];
                let met = shear.triangle(&solid.corners).filter(|(t, _)| *t < own.reach);
                met.into_iter().for_each(|(t, _)| visit(owner.unwrap_or(solid.owner), t));
            });
        };
        among(&self.solid_tree, &self.solids, sight, None);
        self.crowds.tree.each(sight, |member| {
            let member = &self.crowds.members[member as usize];
            let body = self.crowds.body(member);
            among(&body.tree, &body.solids, member.sight(sight), Some(member.owner));
        });
    }

    /// Whether its crowds are too much for the live picture, which has each triangle apart.
    pub fn leaves_crowds_out(&self) -> bool {
        self.triangles() as usize > MOST_TRIANGLES
    }

    /// The binary tree over all opaque triangles, those of crowds apart: its nodes, and the triangles in the order that its leaves name
    /// them. Where they are too much, without crowds.
    pub fn opaque_tree(&self) -> (Vec<Node>, Vec<u32>) {
        self.whole_tree().binary()
    }

    /// Grows that tree now.
    pub(super) fn grow_opaque_tree(&self) {
        self.whole_tree().grow();
    }

    fn whole_tree(&self) -> &Tree {
        if self.crowds.members.is_empty() || self.leaves_crowds_out() {
            return &self.solid_tree;
        }
        self.crowds.apart.get_or_init(|| {
            let around = |solid: u32| bounds::of(&self.solid(solid).corners);
            Tree::over(&(0..self.triangles()).map(around).collect::<Vec<_>>())
        })
    }
}
