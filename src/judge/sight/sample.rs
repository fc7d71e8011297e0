//! Points of a figure and of its ground, as an eye sees them.

use super::lights::Lights;
use crate::{
    geometry::Sight as Ray,
    judge::{
        Touch,
        landing::{fineness, open},
        landings::Part,
    },
    light::{Beam, EyeRay, Night, VeilSort, cells::GOLDEN, luma},
};
use glam::{Vec2, Vec3};
use rayon::prelude::*;

/// Of a point of which less than this comes through what stands before it, nothing is seen.
const HIDDEN: f64 = 0.005;

/// The target itself is no obstacle; so near before a point, m, nothing else is.
const BEFORE: f32 = 4e-3;

/// A ray of an eye with what comes along it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sample {
    pub ray: EyeRay,
    /// Luminance by source, without the bright bodies of lamps.
    pub lights: Lights,
    /// Solid angle that it stands for, sr.
    pub open: f64,
    /// How many cells of the raster it stands for.
    pub cells: f64,
    /// How a texel of the picture lies there; nothing beside the raster.
    pub texel: Texel,
}

/// How a texel of a picture lies at a place: its way across and its way down.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Texel {
    /// Over the raster, in its widths.
    pub thrown: [Vec2; 2],
    /// As seen, rad.
    pub seen: [Vec3; 2],
}

/// Who looks, and at what.
#[derive(Clone, Copy)]
pub(super) struct Looking<'a> {
    pub night: &'a Night,
    pub beam: &'a Beam,
    pub eye: Vec3,
}

/// What was seen of the points that were looked for.
pub(super) struct Looked {
    /// Those in sight.
    pub samples: Vec<Sample>,
    /// Share of their solid angle that is in sight.
    pub in_sight: f64,
}

/// A run of parts by the one that stands for it.
struct Chosen<'a> {
    part: &'a Part,
    touch: Touch,
    /// Share of the run that is seen, however dimmed.
    seen: f64,
    /// What is left of its light.
    left: f64,
}

impl Looking<'_> {
    /// Looks at parts of cells of the raster: of each run, whose parts are much alike, at one, of the first at its first. Where anything
    /// stands before them, all are asked whether they are in sight.
    pub fn at(&self, runs: &[&[&Part]]) -> Looked {
        let choose = |closely: bool| -> Vec<Option<Chosen>> {
            runs.par_iter().enumerate().map(|(index, run)| self.choose(run, index, closely)).collect()
        };
        let mut chosen = choose(false);
        if chosen.iter().flatten().any(|one| one.left < 1.0) {
            chosen = choose(true);
        }
        let look = |(run, chosen): (&&[&Part], &Option<Chosen>)| {
            let Chosen { part, touch, seen, left } = chosen.as_ref()?;
            let cells: f64 = run.iter().map(|part| f64::from(part.share)).sum();
            // The light of an area is that of its place times the size of its place.
            let open = open(self.beam, self.eye, touch);
            let sample = (*seen > 0.0).then(|| self.sample(part, touch, (seen * cells, seen * cells * open)));
            Some((cells * open, *left, sample))
        };
        let all: Vec<_> = runs.par_iter().zip(&chosen).filter_map(look).collect();
        let whole: f64 = all.iter().map(|(open, ..)| open).sum();
        let seen: f64 = all.iter().filter(|(.., s)| s.is_some()).map(|(open, left, _)| open * left).sum();
        let in_sight = if whole > 0.0 { seen / whole } else { 0.0 };
        Looked { samples: all.into_iter().filter_map(|(.., sample)| sample).collect(), in_sight }
    }

    /// The part that stands for a run: not at the same place of each, as that may go with the rows. Closely, it is one that is seen.
    fn choose<'a>(&self, run: &[&'a Part], index: usize, closely: bool) -> Option<Chosen<'a>> {
        let turn = (index as f64 * GOLDEN).fract();
        let at = |count: usize| (turn * count as f64) as usize;
        let (part, touch) = run.get(at(run.len())).and_then(|part| Some((*part, part.landing.target?)))?;
        if !closely {
            let left = self.left(&touch);
            return Some(Chosen { part, touch, seen: f64::from(u8::from(left >= HIDDEN)), left });
        }
        let each = run.iter().filter_map(|part| {
            let touch = part.landing.target?;
            Some((*part, touch, f64::from(part.share) * open(self.beam, self.eye, &touch), self.left(&touch)))
        });
        let each: Vec<(&Part, Touch, f64, f64)> = each.collect();
        let whole: f64 = each.iter().map(|(.., open, _)| open).sum::<f64>().max(f64::MIN_POSITIVE);
        let left = each.iter().map(|(.., open, left)| open * left).sum::<f64>() / whole;
        let shown: Vec<_> = each.into_iter().filter(|(.., left)| *left >= HIDDEN).collect();
        let seen = shown.iter().map(|(.., open, _)| open).sum::<f64>() / whole;
        let (part, touch) = shown.get(at(shown.len())).map_or((part, touch), |(part, touch, ..)| (*part, *touch));
        Some(Chosen { part, touch, seen, left })
    }

    /// What is seen of a part that stands for so many cells and for such a solid angle.
    fn sample(&self, part: &Part, touch: &Touch, (cells, open): (f64, f64)) -> Sample {
        let ray = self.ray(touch);
        let mut lights = self.night.surfaces_by_source(ray);
        // Its own light as it is on average; what is seen through it as finely as its cells are: a second picture shows in some of them.
        if let Some(own) = lights.get_mut(self.beam.station as usize) {
            let [past, shown] =
                touch.veil.map_or([0.0; 2], |_| [0.0, self.cell_behind(part)].map(|width| self.past(touch, width)));
            *own = (*own - past) * part.times + shown;
        }
        let texel = self.texel(part.landing.uv, touch);
        Sample { ray, lights: Lights::of(&lights), open, cells, texel }
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

    /// What of the station's light is seen through a place, each metre behind it read so finely, m, as it comes to the eye, cd/m².
    fn past(&self, touch: &Touch, width: f32) -> f32 {
        let along = (touch.point - self.eye).normalize_or_zero();
        let from = touch.point + BEFORE * along;
        let passes = luma(self.night.through(Ray::between(self.eye, from), [u32::MAX; 2]));
        let ray = EyeRay { from, along, width };
        if passes > 0.0 { passes * self.night.surface_light_of(ray, self.beam.station) } else { 0.0 }
    }

    /// How wide a cell is where its light lands behind the target, over its way from there.
    fn cell_behind(&self, part: &Part) -> f32 {
        let (Some(touch), Some(behind)) = (part.landing.target, part.landing.beyond) else { return 0.0 };
        fineness(self.beam, self.beam.depth(behind.point)) / (behind.point - touch.point).length().max(0.01)
    }

    /// How a texel of the picture lies at a place of the raster.
    fn texel(&self, uv: [f32; 2], touch: &Touch) -> Texel {
        let Some(at) = self.beam.picture_at(uv) else { return Texel::default() };
        let thrown = self.beam.texel_at(Vec2::from(at));
        let way = touch.point - self.eye;
        let (far, along) = (way.length().max(1e-3), way.normalize_or_zero());
        let reach = self.beam.stretch(touch.point, touch.normal);
        let raster = reach.map(|reach| (reach - along * reach.dot(along)) / far);
        let aspect = self.beam.lens.h1 / self.beam.lens.w1;
        Texel {
            thrown: thrown.map(|[u, v]| Vec2::new(u, v * aspect)),
            seen: thrown.map(|[u, v]| u * raster[0] + v * raster[1]),
        }
    }

    /// The ray to a place of the raster, read as finely as it is thrown.
    fn ray(&self, touch: &Touch) -> EyeRay {
        EyeRay { from: self.eye, along: (touch.point - self.eye).normalize_or_zero(), width: 0.0 }
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
    let (mut sums, mut open) = (vec![0.0; first.lights.sources()], f64::MIN_POSITIVE);
    for sample in samples {
        open += sample.open;
        sample.lights.each().for_each(|(source, light)| sums[source] += sample.open * f64::from(light));
    }
    sums.iter_mut().for_each(|sum| *sum /= open);
    sums
}

/// Which of a figure's points, the brightest first, make a tenth of its solid angle: by how bright each is, one at least.
pub(super) fn tenth(samples: &[Sample], shines: &[f64]) -> Vec<usize> {
    let all: f64 = samples.iter().map(|sample| sample.open).sum();
    let mut order: Vec<usize> = (0..samples.len()).collect();
    order.sort_by(|a, b| shines[*b].total_cmp(&shines[*a]));
    let mut sum = 0.0;
    let enough = order.iter().position(|at| {
        sum += samples[*at].open;
        sum >= 0.1 * all - 1e-9 * all
    });
    order.truncate(enough.map_or(1, |last| last + 1));
    order
}

/// A sorted list in at most so many runs of about as many cells.
pub(super) fn runs<'a, 'b>(list: &'a [&'b Part], most: usize) -> Vec<&'a [&'b Part]> {
    let count = list.len().min(most);
    (0..count).map(|i| &list[i * list.len() / count..(i + 1) * list.len() / count]).collect()
}
