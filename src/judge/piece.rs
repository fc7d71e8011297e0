//! Pieces of a raster as they lie on what is meant to be lit: whole cells, and where an edge runs through a cell, parts of it.

use super::{
    Landing, Touch,
    landing::touch_on,
    lattice::{POINTS, RASTER, beside, points},
    meant::{Meant, ONE_SIDE},
};
use crate::light::{Beam, Night, luma};
use rayon::prelude::*;

/// A piece of a raster on a target.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    /// Index of its cell.
    pub cell: usize,
    /// Its middle in the raster.
    pub uv: [f32; 2],
    /// Where that meets the target.
    pub touch: Touch,
    /// Share of the raster's light that it has, when all is white.
    pub white: f32,
    /// What of this light reaches the target through what it crosses before.
    pub left: f32,
    /// Area that it covers on the target, m².
    pub area: f32,
    /// Whether it is a whole cell.
    pub whole: bool,
}

impl Piece {
    /// The light that lands there, when all is white, as a share of the raster's.
    pub fn lands(&self) -> f64 {
        f64::from(self.white * self.left)
    }
}

/// What of a raster lies on its targets. `landings` is that raster followed, cell by cell.
pub(super) fn pieces(night: &Night, beam: &Beam, targets: &[u32], landings: &[Landing]) -> Vec<Piece> {
    let cells = RASTER.0 * RASTER.1;
    let meant = Meant::of(night, beam, targets);
    let of_cell = |cell: usize| -> Vec<Piece> {
        let landing = &landings[cell];
        if !has_an_edge(landings, cell) {
            let whole = landing.target.map(|touch| Piece {
                cell,
                uv: landing.uv,
                touch,
                white: landing.white,
                left: left(night, beam, &touch),
                area: beam.patch(touch.point, touch.normal, cells),
                whole: true,
            });
            return whole.into_iter().collect();
        }
        let met = points(cell).filter_map(|uv| Some((uv, touch_on(night, beam, uv, &meant)?)));
        let mut crossed = None;
        met.map(|(uv, touch)| Piece {
            cell,
            uv,
            touch,
            white: beam.evenness(uv[0], uv[1]) / (cells * POINTS) as f32,
            // What stands before the target is taken as alike over one cell.
            left: *crossed.get_or_insert_with(|| left(night, beam, &touch)),
            area: beam.patch(touch.point, touch.normal, cells * POINTS),
            whole: false,
        })
        .collect()
    };
    (0..landings.len()).into_par_iter().flat_map_iter(of_cell).collect()
}

fn left(night: &Night, beam: &Beam, touch: &Touch) -> f32 {
    luma(beam.transmittance(night, touch.point, touch.normal))
}

/// Whether one of the cells beside lands on something else, or on another face of it.
fn has_an_edge(landings: &[Landing], cell: usize) -> bool {
    let here = landings[cell].target;
    let differs = |there: Option<Touch>| match (here, there) {
        (None, None) => false,
        (Some(a), Some(b)) => a.owner != b.owner || a.normal.dot(b.normal) < ONE_SIDE,
        _ => true,
    };
    beside(cell).any(|other| differs(landings[other].target))
}
