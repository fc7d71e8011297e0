//! What a figure has of a cell of the raster: strokes are finer than cells, so both are told apart, share and light.

use super::lattice::{self, RASTER};
use crate::light::{Beam, Rgb, luma};
use glam::{DMat3, DVec2, Mat3};
use std::ops::Range;

/// What a figure has of a cell of the raster. It is figure where a texel as drawn is brighter than a tenth of the picture's peak:
/// neither pixels nor focus change that.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drawn {
    /// Share of the cell that it covers, above 0; where texels lie aslant, as near to that as whole texels come.
    pub share: f32,
    /// What is sent there on average, as a share of white: black level and picture, as coarse as its pixels and as blurred as its focus
    /// make it.
    pub light: Rgb,
    /// A place of it in the raster where about as much is sent as there is on average.
    pub uv: [f32; 2],
    /// What is sent on average over what is sent at that place.
    pub times: f32,
    /// Such a place of the rest of the cell; `None` where the figure covers it all.
    pub beside: Option<[f32; 2]>,
}

/// Texels of a cell each way that are looked at one by one; of more, one in two, in three and so on, as no pixel is so fine.
const MOST: usize = 64;
/// Places each way of a cell that is smaller than a texel.
const PLACES: [usize; 2] = [6, 6];
/// What is sent at a place that stands for others may differ so far from their mean, over that.
const NEAR: f32 = 0.1;

/// A picture in its raster, cell by cell.
pub(super) struct Drawing<'a> {
    beam: &'a Beam,
    picture_from_raster: DMat3,
    raster_from_picture: DMat3,
}

/// Places of one kind in a cell.
#[derive(Default)]
struct Kind {
    /// Light of the picture as it is thrown, summed over the places by their weight.
    sum: Rgb,
    /// The weight of all places.
    weight: f32,
    /// The places in the raster, and the light there.
    places: Vec<([f32; 2], f32)>,
}

/// A place that is looked at.
struct Look {
    /// In the raster.
    uv: [f32; 2],
    /// In the picture.
    st: [f32; 2],
    /// How many texels, or parts of the cell, it stands for.
    weight: f32,
}

impl Kind {
    fn mean(&self) -> Rgb {
        self.sum / self.weight.max(f32::MIN_POSITIVE)
    }

    /// The place next to their middle at which about the mean is sent, and what is sent there.
    fn usual(&self) -> Option<([f32; 2], f32)> {
        let mean = luma(self.mean());
        let off = |(_, light): &([f32; 2], f32)| (light - mean).abs();
        let least = self.places.iter().map(off).min_by(f32::total_cmp)?;
        let count = self.places.len() as f32;
        let middle = [0, 1].map(|axis| self.places.iter().map(|(uv, _)| uv[axis]).sum::<f32>() / count);
        let apart = |(uv, _): &&([f32; 2], f32)| (uv[0] - middle[0]).powi(2) + (uv[1] - middle[1]).powi(2);
        let near = self.places.iter().filter(|place| off(place) <= least.max(NEAR * mean));
        near.min_by(|a, b| apart(a).total_cmp(&apart(b))).copied()
    }
}

impl<'a> Drawing<'a> {
    pub fn of(beam: &'a Beam) -> Self {
        let [a, b, c] = beam.map;
        let picture_from_raster = Mat3::from_cols(a, b, c).transpose().as_dmat3();
        Self { beam, picture_from_raster, raster_from_picture: picture_from_raster.inverse() }
    }

    /// What the figure has of a cell where the picture is blurred so far as this level of its pyramid says; `None` where it has nothing.
    pub fn drawn(&self, cell: usize, level: f32) -> Option<Drawn> {
        let Self { beam, .. } = *self;
        let frame = &beam.frame;
        if self.is_black(cell) {
            return None;
        }
        let (mut figure, mut rest) = (Kind::default(), Kind::default());
        let mut take = |Look { uv, st: [s, t], weight }: Look| {
            let kind = if frame.is_figure(s, t) { &mut figure } else { &mut rest };
            let light = frame.sample(s, t, level);
            kind.sum += weight * light;
            kind.weight += weight;
            kind.places.push((uv, luma(light)));
        };
        let whole = self.texels(cell);
        match whole {
            Some(_) => self.each(cell, &mut take),
            None => lattice::grid(cell, PLACES).for_each(|uv| {
                if let Some(st) = beam.picture_at(uv) {
                    take(Look { uv, st, weight: 1.0 });
                }
            }),
        }
        let (uv, read) = figure.usual()?;
        let share = figure.weight / whole.unwrap_or((PLACES[0] * PLACES[1]) as f32);
        let thrown = |picture: f32| beam.black + (1.0 - beam.black) * picture;
        let light = Rgb::splat(beam.black) + (1.0 - beam.black) * figure.mean();
        Some(Drawn {
            share,
            light,
            uv,
            times: luma(light) / thrown(read).max(f32::MIN_POSITIVE),
            beside: rest.usual().map(|(uv, _)| uv),
        })
    }

    /// How many texels that are looked at a cell holds by its area; `None` where they are larger than it.
    fn texels(&self, cell: usize) -> Option<f32> {
        let [across, down] = self.reach(cell);
        let area = across.perp_dot(down).abs() as f32;
        let step = self.step(cell) as f32;
        (across.abs().max(down.abs()).min_element() >= 1.0).then_some(area / (step * step))
    }

    /// How far a cell reaches over the picture across and down, in texels.
    fn reach(&self, cell: usize) -> [DVec2; 2] {
        let [u, v] = lattice::middle(cell).map(f64::from);
        let half = [0.5 / RASTER.0 as f64, 0.5 / RASTER.1 as f64];
        let from = |u: f64, v: f64| self.texel_at(DVec2::new(u, v));
        [from(u + half[0], v) - from(u - half[0], v), from(u, v + half[1]) - from(u, v - half[1])]
    }

    fn texel_at(&self, uv: DVec2) -> DVec2 {
        let (width, height) = self.beam.frame.size();
        through(self.picture_from_raster, uv) * DVec2::new(f64::from(width), f64::from(height))
    }

    /// Texels from one that is looked at to the next.
    fn step(&self, cell: usize) -> usize {
        let [across, down] = self.reach(cell);
        (across.length().max(down.length()) as usize).div_ceil(MOST).max(1)
    }

    /// The texels of a cell. Where rows of texels lie along rows of cells a texel counts by its part in the cell, else it lies in the
    /// one cell that has its middle.
    fn each(&self, cell: usize, take: &mut impl FnMut(Look)) {
        let (width, height) = self.beam.frame.size();
        let corners = lattice::corners(cell).map(|uv| self.texel_at(DVec2::from(uv.map(f64::from))));
        let (low, high) =
            corners.iter().fold((DVec2::MAX, DVec2::MIN), |(low, high), at| (low.min(*at), high.max(*at)));
        let range = |low: f64, high: f64, count: u32| -> Range<usize> {
            low.floor().max(0.0) as usize..high.ceil().clamp(0.0, f64::from(count)) as usize
        };
        let (step, [across, down]) = (self.step(cell), self.reach(cell));
        let turned = |way: DVec2| way.abs().min_element() > 1e-6 * way.length();
        let cut = step == 1 && !turned(across) && !turned(down);
        let part = |at: usize, low: f64, high: f64| (high.min(at as f64 + 1.0) - low.max(at as f64)).max(0.0);
        for row in range(low.y, high.y, height).filter(|row| row % step == 0) {
            for column in range(low.x, high.x, width).filter(|column| column % step == 0) {
                let st = [(column as f64 + 0.5) / f64::from(width), (row as f64 + 0.5) / f64::from(height)];
                let uv = through(self.raster_from_picture, DVec2::from(st)).to_array();
                let weight = if cut {
                    part(column, low.x, high.x) * part(row, low.y, high.y)
                } else {
                    f64::from(u8::from(lattice::cell_at(uv) == Some(cell)))
                };
                if weight > 1e-6 {
                    take(Look { uv: uv.map(|at| at as f32), st: st.map(|at| at as f32), weight: weight as f32 });
                }
            }
        }
    }

    /// Whether nothing is drawn in a cell nor near it: most of a picture is black, and one look tells so.
    fn is_black(&self, cell: usize) -> bool {
        let [across, down] = self.reach(cell);
        // Texels twice as large as the cell, of which the four around its middle are blended, cover it however it lies.
        let level = (across.length().max(down.length()).max(1.0) as f32).log2().ceil() + 1.0;
        let middle = self.beam.picture_at(lattice::middle(cell));
        middle.is_some_and(|[s, t]| self.beam.frame.sample(s, t, level) == Rgb::ZERO)
    }
}

/// A place by a projective map.
fn through(map: DMat3, at: DVec2) -> DVec2 {
    let at = map * at.extend(1.0);
    at.truncate() / at.z
}
