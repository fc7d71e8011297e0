//! The ray trees; the one file that knows the tree crate.
//!
//! Two trees stand over the same boxes: an eight-wide one that the core walks, and a binary one that the shader walks, which grows
//! when it is first asked for.
//! Boxes are widened by a hair, because a ray that runs exactly along the face of a box must not miss what lies in it.

use bytemuck::{Pod, Zeroable};
use glam::{Vec3, Vec3A};
use obvhs::{
    BvhBuildParams,
    aabb::Aabb,
    bvh2::{Bvh2, builder::build_bvh2},
    cwbvh::{CwBvh, builder::build_cwbvh},
    ray::{Ray, RayHit},
};
use std::{sync::OnceLock, time::Duration};

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

    /// The ray as the tree crate has it, and the length by which its distances are longer. That crate looks past whatever
    /// lies nearer than 1e-4 of the direction's length; with a direction of 1 m that is a tenth of a millimetre.
    fn ray(&self) -> (Ray, f32) {
        let length = self.direction.length().max(f32::MIN_POSITIVE);
        let unit = self.direction / length;
        (Ray::new(Vec3A::from(self.origin), Vec3A::from(unit), 0.0, self.reach * length), length)
    }
}

/// Ray trees over numbered boxes.
#[derive(Clone)]
pub struct Tree {
    wide: CwBvh,
    boxes: Vec<Aabb>,
    /// Where each box's item stands now, once they were arranged anew.
    place: Option<Vec<u32>>,
    narrow: OnceLock<Bvh2>,
    empty: bool,
}

impl Tree {
    /// Trees over boxes given by their lower and upper corners.
    pub fn over(boxes: &[(Vec3, Vec3)]) -> Self {
        let boxes: Vec<Aabb> = boxes
            .iter()
            .map(|(min, max)| {
                let hair = 1e-5 + 1e-6 * min.abs().max(max.abs());
                Aabb::new(Vec3A::from(*min - hair), Vec3A::from(*max + hair))
            })
            .collect();
        let wide = match boxes.as_slice() {
            [] => CwBvh::default(),
            boxes => build_cwbvh(boxes, BvhBuildParams::medium_build(), &mut Duration::default()),
        };
        Self { wide, empty: boxes.is_empty(), boxes, place: None, narrow: OnceLock::new() }
    }

    /// The order in which the wide tree visits items; arranging them so keeps neighbours together in memory.
    pub fn order(&self) -> &[u32] {
        if self.empty { &[] } else { &self.wide.primitive_indices }
    }

    /// Takes the items as now standing in [`Tree::order`].
    pub fn reordered(mut self) -> Self {
        let mut place = vec![0u32; self.order().len()];
        for (new, &old) in self.order().iter().enumerate() {
            place[old as usize] = new as u32;
        }
        for (new, index) in self.wide.primitive_indices.iter_mut().enumerate() {
            *index = new as u32;
        }
        Self { place: Some(place), narrow: OnceLock::new(), ..self }
    }

    /// The nearest item that `hit` (item → distance along the ray, infinite for a miss) meets within reach.
    pub fn nearest(&self, sight: Sight, mut hit: impl FnMut(u32) -> f32) -> Option<(u32, f32)> {
        if self.empty {
            return None;
        }
        let (ray, length) = sight.ray();
        let mut found = RayHit::none();
        found.t = ray.tmax;
        self.wide.ray_traverse(ray, &mut found, |_, id| hit(self.wide.primitive_indices[id]) * length).then(|| {
            let id = self.wide.primitive_indices[found.primitive_id as usize];
            (id, hit(id))
        })
    }

    /// Whether `hit` meets any item within reach.
    pub fn any(&self, sight: Sight, mut hit: impl FnMut(u32) -> f32) -> bool {
        let (ray, length) = sight.ray();
        !self.empty && !self.wide.ray_traverse_miss(ray, |_, id| hit(self.wide.primitive_indices[id]) * length)
    }

    /// Visits every item whose box the ray crosses within reach, in no useful order.
    pub fn each(&self, sight: Sight, mut visit: impl FnMut(u32)) {
        if !self.empty {
            self.wide.ray_traverse_anyhit(sight.ray().0, |_, id| visit(self.wide.primitive_indices[id]));
        }
    }

    /// The binary tree: nodes, and the items in the order that its leaves name them.
    pub fn binary(&self) -> (Vec<Node>, Vec<u32>) {
        if self.empty {
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
        if !self.empty {
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
        if self.empty { 0 } else { self.narrow().depth(0) }
    }
}
