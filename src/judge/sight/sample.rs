//! Points of a figure and of its ground, as an eye sees them.

use crate::{
    geometry::Sight as Ray,
    judge::{
        Landing, Touch,
        landing::{fineness, open, touch_on},
        meant::Meant,
    },
    light::{Beam, EyeRay, Night, VeilSort},
};
use glam::Vec3;
use rayon::prelude::*;

/// Of a point of which less than this comes through what stands before it, nothing is seen.
const HIDDEN: f64 = 0.02;

/// The target itself is no obstacle; so near before a point, m, nothing else is.
const BEFORE: f32 = 4e-3;

/// A ray of an eye with what comes along it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sample {
    pub ray: EyeRay,
    /// Luminance by source, cd/m²; without the bright bodies of lamps.
    pub lights: Vec<f32>,
    /// Solid angle that it stands for, sr.
    pub open: f64,
    /// How many cells of the raster it stands for.
    pub cells: f64,
    /// How far the raster's width and its height reach as seen at the scale that they have there, rad; nothing off the raster.
    pub reach: [Vec3; 2],
}

/// What of a cell is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::judge) enum Part {
    /// What the figure has of it.
    Figure,
    /// What the figure leaves of it.
    Ground,
    /// The same next to the figure, where a whole cell's light would be partly the figure's: its middle alone.
    Close,
}

/// A place that stands for a part of a cell.
#[derive(Clone, Copy)]
struct Chosen {
    uv: [f32; 2],
    /// Mean of the station's light over that of this place.
    times: f32,
}

impl Part {
    /// Share of the cell, and the place that stands for it; no place where the whole cell does.
    fn of(self, landing: &Landing) -> Option<(f32, Option<Chosen>)> {
        match (self, landing.figure) {
            (Self::Figure, drawn) => {
                drawn.map(|drawn| (drawn.share, Some(Chosen { uv: drawn.uv, times: drawn.times })))
            }
            (Self::Ground, None) => Some((1.0, None)),
            (Self::Close, None) => Some((1.0, Some(Chosen { uv: landing.uv, times: 1.0 }))),
            (Self::Ground | Self::Close, Some(drawn)) => {
                let rest = (drawn.share < 1.0).then_some(1.0 - drawn.share)?;
                Some((rest, Some(Chosen { uv: drawn.beside?, times: 1.0 })))
            }
        }
    }
}

/// Who looks, and at what.
#[derive(Clone, Copy)]
pub(super) struct Looking<'a> {
    pub night: &'a Night,
    pub beam: &'a Beam,
    pub meant: &'a Meant<'a>,
    pub eye: Vec3,
}

/// What was seen of the points that were looked for.
pub(super) struct Looked {
    /// Those in sight.
    pub samples: Vec<Sample>,
    /// Share of their solid angle that is in sight.
    pub in_sight: f64,
}

impl Looking<'_> {
    /// Looks at a part of cells of the raster: of each run, whose cells are much alike, at the middle one, of the first at its first.
    pub fn at(&self, part: Part, runs: &[&[&Landing]]) -> Looked {
        let look = |(index, run): (usize, &&[&Landing])| {
            let landing = run.get(if index == 0 { 0 } else { run.len() / 2 })?;
            let (_, place) = part.of(landing)?;
            let touch = match place {
                Some(Chosen { uv, .. }) => touch_on(self.night, self.beam, uv, self.meant)?,
                None => landing.target?,
            };
            // What the part has of each may differ much where strokes are regular, how large a cell looks does not.
            let cells: f64 = run.iter().filter_map(|landing| part.of(landing)).map(|(share, _)| f64::from(share)).sum();
            let open = cells * open(self.beam, self.eye, &touch);
            let left = self.left(&touch);
            // A place within a stroke is read as finely as the picture is thrown, a whole cell as a cell.
            let width = if place.is_some() { 0.0 } else { fineness(self.beam, self.beam.depth(touch.point)) };
            let sample = (left >= HIDDEN).then(|| {
                let ray = self.ray(&touch, width);
                let mut lights = self.night.surfaces_by_source(ray);
                let own = lights.get_mut(self.beam.station as usize);
                own.into_iter().zip(place).for_each(|(own, chosen)| *own *= chosen.times);
                Sample { ray, lights, open, cells, reach: self.reach(&touch) }
            });
            Some((open, left, sample))
        };
        let all: Vec<_> = runs.par_iter().enumerate().filter_map(look).collect();
        let whole: f64 = all.iter().map(|(open, ..)| open).sum();
        let seen: f64 = all.iter().filter(|(.., s)| s.is_some()).map(|(open, left, _)| open * left).sum();
        let in_sight = if whole > 0.0 { seen / whole } else { 0.0 };
        Looked { samples: all.into_iter().filter_map(|(.., sample)| sample).collect(), in_sight }
    }

    /// What is left of a point behind all that stands before it; glass counts as clear. Nothing of an opaque one that is turned
    /// away.
    fn left(&self, touch: &Touch) -> f64 {
        let way = touch.point - self.eye;
        let (far, along) = (way.length(), way.normalize_or_zero());
        if touch.veil.is_none() && touch.normal.dot(along) > 0.0 {
            return 0.0;
        }
        let touches = self.night.touches(Ray { origin: self.eye, direction: along, reach: far });
        let before = touches.iter().take_while(|t| (t.point - self.eye).length() < far - BEFORE);
        let counts = |t: &&Touch| match t.veil {
            Some(veil) => t.owner != touch.owner && self.night.veils[veil as usize].sort != VeilSort::Pane,
            None => true,
        };
        before.filter(counts).map(|t| f64::from(t.through)).product()
    }

    /// How far the raster's width and its height reach as seen, rad.
    fn reach(&self, touch: &Touch) -> [Vec3; 2] {
        let way = touch.point - self.eye;
        let (far, along) = (way.length().max(1e-3), way.normalize_or_zero());
        self.beam.stretch(touch.point, touch.normal).map(|reach| (reach - along * reach.dot(along)) / far)
    }

    /// The ray to a place that is read so finely, m.
    fn ray(&self, touch: &Touch, width: f32) -> EyeRay {
        let way = touch.point - self.eye;
        let far = way.length().max(1e-3);
        EyeRay { from: self.eye, along: way / far, width: width / far }
    }
}

/// Mean of values, each with the solid angle that it stands for; 0 where there is none.
pub(super) fn mean(values: &[(f64, f64)]) -> f64 {
    let (open, sum) = values.iter().fold((0.0, 0.0), |(all, sum), (open, value)| (all + open, sum + open * value));
    if open > 0.0 { sum / open } else { 0.0 }
}

/// Mean luminance by source; empty where there is no sample.
pub(super) fn by_source(samples: &[Sample]) -> Vec<f64> {
    let Some(first) = samples.first() else { return Vec::new() };
    let (mut sums, mut open) = (vec![0.0; first.lights.len()], f64::MIN_POSITIVE);
    for sample in samples {
        open += sample.open;
        sums.iter_mut().zip(&sample.lights).for_each(|(sum, light)| *sum += sample.open * f64::from(*light));
    }
    sums.iter_mut().for_each(|sum| *sum /= open);
    sums
}

/// How many of a figure's points, the brightest first, make a tenth of its solid angle.
pub(super) fn tenth(samples: &[Sample]) -> usize {
    let all: f64 = samples.iter().map(|sample| sample.open).sum();
    let mut sum = 0.0;
    let more = samples.iter().take_while(|sample| {
        let goes_on = sum < 0.1 * all - 1e-9 * all;
        sum += sample.open;
        goes_on
    });
    more.count().max(1).min(samples.len())
}

/// A sorted list in at most so many runs of about as many cells.
pub(super) fn runs<'a, 'b>(list: &'a [&'b Landing], most: usize) -> Vec<&'a [&'b Landing]> {
    let count = list.len().min(most);
    (0..count).map(|i| &list[i * list.len() / count..(i + 1) * list.len() / count]).collect()
}
