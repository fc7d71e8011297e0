//! A tree of four boxes a node, which the core walks four at a time.
//!
//! Grown from a binary tree: its small branches become leaves where that is cheaper to walk (surface area heuristic), and every
//! node takes in grandchildren, the largest first, until it has four children.

use super::Sight;
use glam::{Vec3, Vec4};
use obvhs::{aabb::Aabb, bvh2::Bvh2};
use std::ops::Range;

/// Four boxes, and what is in each.
#[derive(Clone, Debug)]
struct Node {
    /// Lower and upper faces of the boxes along x, y and z; of an empty place both lie beyond all.
    faces: [[Vec4; 2]; 3],
    /// A node, or a leaf with [`LEAF`] added.
    child: [u32; 4],
}

/// Marks a leaf.
const LEAF: u32 = 1 << 31;
/// What one more binary node costs over what a leaf costs, however many items it has. Measured on the demo yard.
const INNER: f32 = 0.35;
/// Ways that may wait on the stack itself; deeper trees take theirs from the heap.
const WAITING: usize = 64;
/// What rounding may take off a distance of three operations (Ize 2013, J. Comput. Graph. Tech. 2(2)): 1 + 2 γ(3).
const ROUNDED: f32 = 1.0 + 6.0 * f32::EPSILON;
/// A ray runs along an axis by that at least, so that no distance is 0 · ∞.
const STRAIGHT: f32 = 1e-20;

/// The tree: its root is the first node, or the only leaf.
#[derive(Clone, Debug, Default)]
pub(super) struct Wide {
    nodes: Vec<Node>,
    /// Where each leaf's items begin, and where the last one's end; nothing without items.
    starts: Vec<u32>,
    /// The items, leaf by leaf.
    pub items: Vec<u32>,
    /// Ways that can wait at once.
    waiting: usize,
}

/// A ray made ready to meet boxes.
struct Probe {
    origin: [Vec4; 3],
    per_length: [Vec4; 3],
    /// Which face along each axis is met first.
    near: [usize; 3],
}

impl Probe {
    #[inline]
    fn of(sight: Sight) -> Self {
        let along: [f32; 3] =
            sight.direction.to_array().map(|d| if d.abs() < STRAIGHT { STRAIGHT.copysign(d) } else { d });
        Self {
            origin: sight.origin.to_array().map(Vec4::splat),
            per_length: along.map(|d| Vec4::splat(1.0 / d)),
            near: along.map(|d| usize::from(d < 0.0)),
        }
    }

    /// Which of a node's boxes are met before `reach`, as bits, and where.
    #[inline]
    fn meets(&self, node: &Node, reach: f32) -> (u32, Vec4) {
        // Written out: the compiler does not take closures over arrays apart here, which makes it half as fast.
        let [x, y, z] = self.near;
        let ([along_x, along_y, along_z], o, p) = (&node.faces, &self.origin, &self.per_length);
        let (enter_x, leave_x) = ((along_x[x & 1] - o[0]) * p[0], (along_x[!x & 1] - o[0]) * p[0]);
        let (enter_y, leave_y) = ((along_y[y & 1] - o[1]) * p[1], (along_y[!y & 1] - o[1]) * p[1]);
        let (enter_z, leave_z) = ((along_z[z & 1] - o[2]) * p[2], (along_z[!z & 1] - o[2]) * p[2]);
        let enter = enter_x.max(enter_y).max(enter_z.max(Vec4::ZERO));
        let leave = (leave_x.min(leave_y).min(leave_z) * ROUNDED).min(Vec4::splat(reach));
        (enter.cmple(leave).bitmask(), enter)
    }
}

impl Wide {
    /// Over a binary tree, with so many items in a leaf at most.
    pub fn of(narrow: &Bvh2, most: u32) -> Self {
        if narrow.nodes.is_empty() {
            return Self::default();
        }
        let leaves = Leaves::of(narrow, most);
        let mut wide = Self { waiting: 1, ..Self::default() };
        if leaves.is_leaf(0) {
            wide.add_leaf(narrow, 0);
        } else {
            wide.nodes.push(Node::empty());
            // A node of the binary tree, where its wide node stands, and how many ways wait meanwhile.
            let mut open = vec![(0, 0, 1)];
            while let Some((from, to, waiting)) = open.pop() {
                let children = leaves.four(narrow, from);
                let waiting = waiting + children.len() - 1;
                wide.waiting = wide.waiting.max(waiting);
                for (lane, child) in children.into_iter().enumerate() {
                    let place = if leaves.is_leaf(child) {
                        LEAF | wide.add_leaf(narrow, child)
                    } else {
                        wide.nodes.push(Node::empty());
                        let place = wide.nodes.len() - 1;
                        open.push((child, place, waiting));
                        place as u32
                    };
                    wide.nodes[to].set(lane, narrow.nodes[child].aabb(), place);
                }
            }
        }
        wide.starts.push(wide.items.len() as u32);
        wide
    }

    fn add_leaf(&mut self, narrow: &Bvh2, from: usize) -> u32 {
        self.starts.push(self.items.len() as u32);
        let mut open = vec![from];
        while let Some(at) = open.pop() {
            let node = &narrow.nodes[at];
            let first = node.first_index as usize;
            if node.is_leaf() {
                self.items.extend(&narrow.primitive_indices[first..first + node.prim_count as usize]);
            } else {
                open.extend([first + 1, first]);
            }
        }
        self.starts.len() as u32 - 1
    }

    /// Leaves; they are numbered from 0.
    pub fn leaves(&self) -> usize {
        self.starts.len().saturating_sub(1)
    }

    /// Where a leaf's items stand among all.
    #[inline]
    pub fn leaf(&self, leaf: u32) -> Range<usize> {
        self.starts[leaf as usize] as usize..self.starts[leaf as usize + 1] as usize
    }

    fn root(&self) -> Option<u32> {
        match self.leaves() {
            0 => None,
            1 => Some(LEAF),
            _ => Some(0),
        }
    }

    /// Asks the leaves whose boxes a ray meets within its reach, until one says yes.
    #[inline]
    pub fn any(&self, sight: Sight, mut ask: impl FnMut(u32) -> bool) -> bool {
        let Some(root) = self.root() else { return false };
        let probe = Probe::of(sight);
        let (mut little, mut much) = ([0; WAITING], Vec::new());
        let stack = stack(&mut little, &mut much, self.waiting, 0);
        stack[0] = root;
        let mut waiting = 1;
        while waiting > 0 {
            waiting -= 1;
            let next = stack[waiting];
            if next & LEAF != 0 {
                if ask(next & !LEAF) {
                    return true;
                }
                continue;
            }
            let node = &self.nodes[next as usize];
            let (mut met, _) = probe.meets(node, sight.reach);
            while met != 0 {
                stack[waiting] = node.child[met.trailing_zeros() as usize & 3];
                waiting += 1;
                met &= met - 1;
            }
        }
        false
    }

    /// Shows the leaves whose boxes a ray meets, the nearer first, before what was found: `ask` is given a leaf, and answers how far
    /// the ray reaches from then on.
    #[inline]
    pub fn nearest(&self, sight: Sight, mut ask: impl FnMut(u32) -> f32) {
        let Some(root) = self.root() else { return };
        let probe = Probe::of(sight);
        let mut reach = sight.reach;
        let (mut little, mut much) = ([(0, 0.0); WAITING], Vec::new());
        let stack = stack(&mut little, &mut much, self.waiting, (0, 0.0));
        stack[0] = (root, 0.0);
        let mut waiting = 1;
        while waiting > 0 {
            waiting -= 1;
            let (next, enters) = stack[waiting];
            if enters > reach {
                continue;
            }
            if next & LEAF != 0 {
                reach = reach.min(ask(next & !LEAF));
                continue;
            }
            let node = &self.nodes[next as usize];
            let (mut met, enter) = probe.meets(node, reach);
            let first = waiting;
            while met != 0 {
                let lane = met.trailing_zeros() as usize & 3;
                let one = (node.child[lane], enter[lane]);
                // The farthest lies lowest.
                let mut place = waiting;
                while place > first && stack[place - 1].1 < one.1 {
                    stack[place] = stack[place - 1];
                    place -= 1;
                }
                stack[place] = one;
                waiting += 1;
                met &= met - 1;
            }
        }
    }
}

/// A stack of so many places.
fn stack<'a, T: Copy>(little: &'a mut [T; WAITING], much: &'a mut Vec<T>, places: usize, empty: T) -> &'a mut [T] {
    if places <= WAITING {
        return little;
    }
    much.resize(places, empty);
    much
}

impl Node {
    fn empty() -> Self {
        let beyond = [Vec4::splat(f32::INFINITY), Vec4::splat(f32::NEG_INFINITY)];
        Self { faces: [beyond; 3], child: [0; 4] }
    }

    fn set(&mut self, lane: usize, around: &Aabb, place: u32) {
        for axis in 0..3 {
            self.faces[axis][0][lane] = around.min[axis];
            self.faces[axis][1][lane] = around.max[axis];
        }
        self.child[lane] = place;
    }
}

/// Which branches of a binary tree become leaves.
struct Leaves {
    leaf: Vec<bool>,
}

impl Leaves {
    fn of(narrow: &Bvh2, most: u32) -> Self {
        let count = narrow.nodes.len();
        let (mut leaf, mut cost, mut items) = (vec![false; count], vec![0.0_f32; count], vec![0_u32; count]);
        let mut order = Vec::with_capacity(count);
        let mut open = vec![0];
        while let Some(at) = open.pop() {
            order.push(at);
            let node = &narrow.nodes[at];
            if !node.is_leaf() {
                open.extend([node.first_index as usize, node.first_index as usize + 1]);
            }
        }
        // Children stand after their parents.
        for at in order.into_iter().rev() {
            let node = &narrow.nodes[at];
            let area = node.aabb().half_area();
            if node.is_leaf() {
                (leaf[at], cost[at], items[at]) = (true, area, node.prim_count);
                continue;
            }
            let [left, right] = [node.first_index as usize, node.first_index as usize + 1];
            items[at] = items[left] + items[right];
            let apart = INNER * area + cost[left] + cost[right];
            leaf[at] = items[at] <= most && area <= apart;
            cost[at] = if leaf[at] { area } else { apart };
        }
        Self { leaf }
    }

    fn is_leaf(&self, at: usize) -> bool {
        self.leaf[at]
    }

    /// A branch's children, with grandchildren in place of the largest until there are four, in the order in which a walk takes them
    /// last: the largest is the likeliest to be in the way.
    fn four(&self, narrow: &Bvh2, from: usize) -> Vec<usize> {
        let area = |at: &usize| narrow.nodes[*at].aabb().half_area();
        let both = |at: usize| [narrow.nodes[at].first_index as usize, narrow.nodes[at].first_index as usize + 1];
        let mut children = both(from).to_vec();
        while children.len() < 4 {
            let open = (0..children.len()).filter(|&i| !self.is_leaf(children[i]));
            let Some(largest) = open.max_by(|&a, &b| area(&children[a]).total_cmp(&area(&children[b]))) else { break };
            let opened = children.swap_remove(largest);
            children.extend(both(opened));
        }
        children.sort_by(|a, b| area(a).total_cmp(&area(b)));
        children
    }
}

/// The corners of a box, a hair farther apart: a ray that runs exactly along a face must not miss what lies in it.
pub(super) fn around((min, max): &(Vec3, Vec3)) -> Aabb {
    let hair = 1e-5 + 1e-6 * min.abs().max(max.abs());
    Aabb::new((*min - hair).into(), (*max + hair).into())
}
