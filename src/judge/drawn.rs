//! What a figure has of a cell of the raster: strokes are finer than cells, so both are told apart, share and light.

use super::lattice::{self, Lattice, RASTER};
use crate::light::{Beam, Rgb, luma};

/// What a figure has of a cell of the raster. It is figure where a texel as drawn is brighter than a tenth of the picture's peak:
/// neither pixels nor focus change that.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drawn {
    /// Share of the cell that it covers, above 0.
    pub share: f32,
    /// What is sent there on average, as a share of white: black level and picture, as coarse as its pixels and as blurred as its focus
    /// make it.
    pub light: Rgb,
    /// A place of it in the raster where as much is sent as there is on average, or as nearly as anywhere.
    pub uv: [f32; 2],
    /// Such a place of the rest of the cell; `None` where the figure covers it all.
    pub beside: Option<[f32; 2]>,
}

/// Texels of one kind in a cell.
#[derive(Default)]
struct Kind {
    /// Picture as it is thrown, summed over the places.
    sum: Rgb,
    /// The places in the picture, and what is read there.
    read: Vec<([f32; 2], f32)>,
}

impl Kind {
    fn mean(&self) -> Rgb {
        self.sum / self.read.len().max(1) as f32
    }

    /// The place at which most nearly the mean is sent.
    fn usual(&self, beam: &Beam) -> Option<[f32; 2]> {
        let mean = luma(self.mean());
        let off = |(_, light): &&([f32; 2], f32)| (light - mean).abs();
        let (st, _) = self.read.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
        beam.raster_of(*st)
    }
}

/// What the figure has of a cell where the picture is blurred so far as this level of its pyramid says; `None` where it has nothing.
pub(super) fn drawn(beam: &Beam, cell: usize, level: f32) -> Option<Drawn> {
    let frame = &beam.frame;
    let small = beam.texels_across() >= RASTER.0 as f32;
    if is_black(beam, cell) {
        return None;
    }
    let (mut figure, mut rest) = (Kind::default(), Kind::default());
    for uv in Lattice::FINE.of(cell) {
        let Some([s, t]) = beam.picture_at(uv) else { continue };
        let kind = if frame.is_figure(s, t) { &mut figure } else { &mut rest };
        let light = frame.drawn(s, t, level);
        kind.sum += light;
        // In the middle of a texel nothing is read of those beside it; one that is larger than cells has its middle elsewhere.
        kind.read.push((if small { frame.texel_middle(s, t) } else { [s, t] }, luma(light)));
    }
    let share = figure.read.len() as f32 / Lattice::FINE.points as f32;
    let uv = figure.usual(beam)?;
    let light = Rgb::splat(beam.black) + (1.0 - beam.black) * figure.mean();
    Some(Drawn { share, light, uv, beside: rest.usual(beam) })
}

/// Whether nothing is drawn in a cell nor near it: most of a picture is black, and one look tells so.
fn is_black(beam: &Beam, cell: usize) -> bool {
    let [u, v] = lattice::middle(cell);
    let (_, height) = beam.frame.size();
    let texels = (beam.texels_across() / RASTER.0 as f32).max(height as f32 / RASTER.1 as f32);
    // Texels twice as large as the cell, of which the four around its middle are blended, cover it however it lies.
    let level = texels.max(1.0).log2().ceil() + 1.0;
    beam.picture_at([u, v]).is_some_and(|[s, t]| beam.frame.sample(s, t, level) == Rgb::ZERO)
}
