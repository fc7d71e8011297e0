//! Pieces of a raster as they lie on what is meant to be lit: whole cells, and where an edge runs through a cell, parts of it.

use super::{Landing, RASTER, Touch};
use crate::light::{
    Beam, Night,
    cells::{POINTS, middle},
    luma,
};
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

/// What of a raster's [white](super::Landings::white) light lies on its targets.
pub(super) fn pieces(night: &Night, beam: &Beam, white: &[Landing]) -> Vec<Piece> {
    let cells = RASTER.0 * RASTER.1;
    let piece = |landing: &Landing| {
        let Landing { uv, white, target, .. } = *landing;
        let cell = landing.cell as usize;
        let whole = uv == middle(cell);
        target.map(|touch| Piece {
            cell,
            uv,
            touch,
            white,
            left: luma(beam.transmittance(night, touch.point, touch.normal)),
            area: beam.patch(touch.point, touch.normal, if whole { cells } else { cells * POINTS }),
            whole,
        })
    };
    white.par_iter().filter_map(piece).collect()
}
