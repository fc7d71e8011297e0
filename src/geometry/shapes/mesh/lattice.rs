//! Solids made of the cells of a lattice: boxes, walls with openings, steps, rooms.
//!
//! All faces lie on the same lines, so that neighbours share whole edges: no T-junction can arise, and every corner,
//! reveal and step of a body is closed because only faces between a filled and an empty cell are kept.

use super::bounds::Bounds;
use crate::geometry::Mesh;
use glam::Vec3;
use std::collections::HashMap;

/// Lines nearer than this to each other are one, m.
const SAME: f32 = 1e-4;

/// Most parts that an axis is cut into for the sake of fine edges alone. A body so long that this tells is coarser
/// than it should be, rather than too large to hold.
const MOST_PARTS: f32 = 200.0;

/// Cells between three sets of lines, filled or empty.
pub struct Lattice {
    lines: [Vec<f32>; 3],
    filled: Vec<bool>,
}

impl Lattice {
    /// Cells between given lines, each rising and at least two an axis, all filled.
    pub fn of(lines: [Vec<f32>; 3]) -> Self {
        let cells = lines.iter().map(|l| l.len().saturating_sub(1)).product();
        Self { lines, filled: vec![true; cells] }
    }

    /// The cells of a box cut at further lines and then so finely that no edge, diagonals of faces included, is
    /// longer than `edge`; all filled.
    pub fn new(bounds: Bounds, further: [&[f32]; 3], edge: f32) -> Self {
        let step = edge * std::f32::consts::FRAC_1_SQRT_2;
        Self::of(std::array::from_fn(|a| lines(bounds.lo[a], bounds.hi[a], further[a], step)))
    }

    /// Keeps a cell filled only where its middle says so.
    pub fn keep(mut self, filled: impl Fn(Vec3) -> bool) -> Self {
        let [nx, ny, _] = self.cells();
        let middles: [Vec<f32>; 3] =
            std::array::from_fn(|a| self.lines[a].windows(2).map(|w| 0.5 * (w[0] + w[1])).collect());
        for (index, cell) in self.filled.iter_mut().enumerate() {
            let (x, y, z) = (index % nx, index / nx % ny, index / (nx * ny));
            *cell = *cell && filled(Vec3::new(middles[0][x], middles[1][y], middles[2][z]));
        }
        self
    }

    /// The surface between filled and empty cells, front outwards.
    pub fn surface(&self) -> Mesh {
        self.surface_where(|_, _| true)
    }

    /// That surface without the faces, given by middle and normal, that are not wanted.
    pub fn surface_where(&self, wanted: impl Fn(Vec3, Vec3) -> bool) -> Mesh {
        let mut mesh = Mesh::default();
        let mut seen = HashMap::new();
        let [nx, ny, nz] = self.cells();
        for z in 0..nz {
            for y in 0..ny {
                for x in 0..nx {
                    let cell = [x, y, z];
                    if !self.is_filled(cell.map(|c| c as isize)) {
                        continue;
                    }
                    for axis in 0..3 {
                        for ahead in [false, true] {
                            let mut beyond = cell.map(|c| c as isize);
                            beyond[axis] += if ahead { 1 } else { -1 };
                            if !self.is_filled(beyond) {
                                self.face(cell, axis, ahead, &wanted, &mut seen, &mut mesh);
                            }
                        }
                    }
                }
            }
        }
        mesh
    }

    fn cells(&self) -> [usize; 3] {
        std::array::from_fn(|a| self.lines[a].len().saturating_sub(1))
    }

    fn is_filled(&self, cell: [isize; 3]) -> bool {
        let n = self.cells();
        let inside = (0..3).all(|a| (0..n[a] as isize).contains(&cell[a]));
        inside && self.filled[cell[0] as usize + n[0] * (cell[1] as usize + n[1] * cell[2] as usize)]
    }

    fn face(
        &self,
        cell: [usize; 3],
        axis: usize,
        ahead: bool,
        wanted: impl Fn(Vec3, Vec3) -> bool,
        seen: &mut HashMap<[usize; 3], u32>,
        mesh: &mut Mesh,
    ) {
        let (b, c) = ((axis + 1) % 3, (axis + 2) % 3);
        let corner = |db: usize, dc: usize| {
            let mut id = cell;
            id[axis] += usize::from(ahead);
            id[b] += db;
            id[c] += dc;
            id
        };
        let point = |id: [usize; 3]| Vec3::from_array(std::array::from_fn(|a| self.lines[a][id[a]]));
        let ids = [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)];
        let normal = if ahead { Vec3::AXES[axis] } else { -Vec3::AXES[axis] };
        if !wanted(0.5 * (point(ids[0]) + point(ids[2])), normal) {
            return;
        }
        let [p, q, r, s] = ids.map(|id| {
            *seen.entry(id).or_insert_with(|| {
                mesh.points.push(point(id));
                mesh.points.len() as u32 - 1
            })
        });
        mesh.triangles.extend(if ahead { [[p, q, r], [p, r, s]] } else { [[p, r, q], [p, s, r]] });
    }
}

/// A closed box with no edge longer than `edge`.
pub fn block(lo: Vec3, hi: Vec3, edge: f32) -> Mesh {
    Lattice::new(Bounds::between(lo, hi), [&[], &[], &[]], edge).surface()
}

/// Lines from `lo` to `hi` through all `further` ones between, no two further apart than `step`.
pub fn lines(lo: f32, hi: f32, further: &[f32], step: f32) -> Vec<f32> {
    let step = step.max((hi - lo) / MOST_PARTS);
    let mut fixed: Vec<f32> = further.iter().copied().filter(|&l| l > lo + SAME && l < hi - SAME).collect();
    fixed.push(hi);
    fixed.sort_by(f32::total_cmp);
    let mut all = vec![lo];
    let mut last = lo;
    for line in fixed {
        if line - last < SAME && line < hi {
            continue;
        }
        let parts = ((line - last) / step - 1e-3).ceil().max(1.0);
        all.extend((1..parts as usize).map(|i| last + (line - last) * i as f32 / parts));
        all.push(line);
        last = line;
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_what_is_given_and_fill_the_rest() {
        let l = lines(0.0, 1.0, &[0.3, 0.300_01, -1.0, 2.0], 0.25);
        assert_eq!(l.first(), Some(&0.0));
        assert_eq!(l.last(), Some(&1.0));
        assert!(l.contains(&0.3));
        assert!(l.windows(2).all(|w| w[1] > w[0] && w[1] - w[0] < 0.2503));
        assert_eq!(l.len(), 6);
    }

    #[test]
    fn a_block_has_its_volume_and_short_edges() {
        let mesh = block(Vec3::ZERO, Vec3::new(1.0, 2.0, 0.5), 0.25);
        assert!((mesh.volume() - 1.0).abs() < 1e-5);
        assert!(mesh.longest_edge() <= 0.2505);
        assert!(mesh.is_closed());
    }
}
