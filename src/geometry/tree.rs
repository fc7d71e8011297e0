//! The ray trees; the one file that knows the tree crate.
//!
//! Two trees stand over the same boxes: one of four boxes a node that the core walks (`wide.rs`), and a binary one that the shader
//! walks, which grows when it is first asked for.
//! Boxes are widened by a hair, because a ray that runs exactly along the face of a box must not miss what lies in it.

mod wide;

use bytemuck::{Pod, Zeroable};
use glam::Vec3;
use obvhs::{
    BvhBuildParams,
    aabb::Aabb,
    bvh2::{Bvh2, builder::build_bvh2},
};
use std::{ops::Range, sync::OnceLock, time::Duration};
use wide::Wide;

/// A node of the binary tree as the shader reads it.
#[derive(Clone, Copy, Debug, PartialEq, Pod, Zeroable)]
#[repr(C)]
pub struct Node {
    /// Lower corner of its box.
    pub min: [f32; 3],
    /// Items in this leaf; 0 for an inner node.
    pub count: u32,
    /// Upper corner of its box.
    pub max: [f32; 3],
    /// First item of a leaf, or first of two neighbouring children.
    pub first: u32,
}

/// A ray: origin, direction of any length, and how far it reaches in units of that direction.
#[derive(Clone, Copy, Debug)]
pub struct Sight {
    /// Where it starts.
    pub origin: Vec3,
    /// Where it goes; lengths along it are in units of this vector.
    pub direction: Vec3,
    /// Where it ends.
    pub reach: f32,
}

impl Sight {
    /// A ray without an end.
    pub fn endless(origin: Vec3, direction: Vec3) -> Self {
        Self { origin, direction, reach: f32::INFINITY }
    }

    /// The straight way between two points, reach 1.
    pub fn between(from: Vec3, to: Vec3) -> Self {
        Self { origin: from, direction: to - from, reach: 1.0 }
    }

    /// The point at `t`.
    pub fn at(&self, t: f32) -> Vec3 {
        self.origin + t * self.direction
    }
}

/// So many boxes are arranged with all care.
const MUCH: f32 = 200_000.0;

/// Ray trees over numbered boxes.
#[derive(Clone)]
pub struct Tree {
    wide: Wide,
    boxes: Vec<Aabb>,
    /// Where each box's item stands now, once they were arranged anew.
    place: Option<Vec<u32>>,
    narrow: OnceLock<Bvh2>,
}

impl Tree {
    /// Trees over boxes given by their lower and upper corners, for items that are met one by one.
    pub fn over(boxes: &[(Vec3, Vec3)]) -> Self {
        Self::grown(boxes, 1)
    }

    /// The same for items that are met up to four at a time, as a leaf has them.
    pub fn of_fours(boxes: &[(Vec3, Vec3)]) -> Self {
        Self::grown(boxes, 4)
    }

    fn grown(boxes: &[(Vec3, Vec3)], most: u32) -> Self {
        let boxes: Vec<Aabb> = boxes.iter().map(wide::around).collect();
        let usual = BvhBuildParams::medium_build();
        // Much is grown with less care: what a ray meets is the same, and care costs more than it saves.
        let care = usual.reinsertion_batch_ratio * (MUCH / boxes.len().max(1) as f32).min(1.0);
        let params = BvhBuildParams { max_prims_per_leaf: 1, reinsertion_batch_ratio: care, ..usual };
        let wide = match boxes.as_slice() {
            [] => Wide::default(),
            boxes => Wide::of(&build_bvh2(boxes, params, &mut Duration::default()), most),
        };
        Self { wide, boxes, place: None, narrow: OnceLock::new() }
    }

    /// The order in which the core's tree has its items; arranging them so keeps neighbours together in memory.
    pub fn order(&self) -> &[u32] {
        &self.wide.items
    }

    /// Takes the items as now standing in [`Tree::order`].
    pub fn reordered(mut self) -> Self {
        let mut place = vec![0u32; self.order().len()];
        for (new, &old) in self.order().iter().enumerate() {
            place[old as usize] = new as u32;
        }
        for (new, index) in self.wide.items.iter_mut().enumerate() {
            *index = new as u32;
        }
        Self { place: Some(place), narrow: OnceLock::new(), ..self }
    }

    /// Of each leaf, from the first on, where its items stand in [`Tree::order`].
    pub fn leaves(&self) -> impl Iterator<Item = Range<usize>> + '_ {
        (0..self.wide.leaves() as u32).map(|leaf| self.wide.leaf(leaf))
    }

    /// Where a leaf's items begin in [`Tree::order`].
    #[inline]
    pub fn first_of(&self, leaf: u32) -> u32 {
        self.wide.leaf(leaf).start as u32
    }

    /// The items of a leaf.
    #[inline]
    pub fn of_leaf(&self, leaf: u32) -> &[u32] {
        &self.wide.items[self.wide.leaf(leaf)]
    }

    /// The nearest item that `hit` (item → distance along the ray, infinite for a miss) meets within reach.
    pub fn nearest(&self, sight: Sight, mut hit: impl FnMut(u32) -> f32) -> Option<(u32, f32)> {
        let mut found = None;
        self.nearest_leaf(sight, |leaf, mut reach| {
            for &item in self.of_leaf(leaf) {
                let t = hit(item);
                if t < reach {
                    (found, reach) = (Some((item, t)), t);
                }
            }
            reach
        });
        found
    }

    /// Whether `hit` meets any item within reach.
    pub fn any(&self, sight: Sight, mut hit: impl FnMut(u32) -> f32) -> bool {
        self.any_leaf(sight, |leaf| self.of_leaf(leaf).iter().any(|item| hit(*item) < sight.reach))
    }

    /// Shows the leaves that a ray crosses, nearer ones first: `meet` is given one and how far the ray reaches, and answers how far it
    /// reaches from then on.
    #[inline]
    pub fn nearest_leaf(&self, sight: Sight, mut meet: impl FnMut(u32, f32) -> f32) {
        let mut reach = sight.reach;
        self.wide.nearest(sight, |leaf| {
            reach = meet(leaf, reach);
            reach
        });
    }

    /// Shows the leaves that a ray crosses within reach, in no useful order, until `meets` says yes of one.
    #[inline]
    pub fn any_leaf(&self, sight: Sight, meets: impl FnMut(u32) -> bool) -> bool {
        self.wide.any(sight, meets)
    }

    /// Visits every item whose box the ray crosses within reach, in no useful order.
    #[inline]
    pub fn each(&self, sight: Sight, mut visit: impl FnMut(u32)) {
        self.wide.any(sight, |leaf| {
            self.of_leaf(leaf).iter().for_each(|item| visit(*item));
            false
        });
    }

    /// Visits every item in whose box a point lies, in no useful order.
    #[inline]
    pub fn around(&self, point: Vec3, visit: impl FnMut(u32)) {
        self.each(Sight { origin: point, direction: Vec3::ZERO, reach: 0.0 }, visit);
    }

    /// The binary tree: nodes, and the items in the order that its leaves name them.
    pub fn binary(&self) -> (Vec<Node>, Vec<u32>) {
        if self.boxes.is_empty() {
            return (Vec::new(), Vec::new());
        }
        let narrow = self.narrow();
        let nodes = narrow
            .nodes
            .iter()
            .map(|node| Node {
                min: node.aabb().min.to_array(),
                count: node.prim_count,
                max: node.aabb().max.to_array(),
                first: node.first_index,
            })
            .collect();
        (nodes, narrow.primitive_indices.clone())
    }

    /// Grows the binary tree now.
    pub fn grow(&self) {
        if !self.boxes.is_empty() {
            self.narrow();
        }
    }

    fn narrow(&self) -> &Bvh2 {
        self.narrow.get_or_init(|| {
            let mut narrow = build_bvh2(&self.boxes, BvhBuildParams::medium_build(), &mut Duration::default());
            if let Some(place) = &self.place {
                narrow.primitive_indices.iter_mut().for_each(|index| *index = place[*index as usize]);
            }
            narrow
        })
    }

    /// Levels of the binary tree: what a stack that walks it must hold.
    pub fn depth(&self) -> usize {
        if self.boxes.is_empty() { 0 } else { self.narrow().depth(0) }
    }
}
