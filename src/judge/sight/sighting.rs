//! What an eye sees of a station, traced once and kept by source, so that an evening is a matter of weights.

use super::{
    Around, Limits, Sight, Word, beside,
    bright::{self, Gaze},
    lights::Lights,
    question::Question,
    rival::Rivals,
    sample::{self, Looking, Sample, Texel},
    weigh::{Detail, Sums},
};
use crate::{
    judge::{Landings, band::Scale, landings::Part, spot},
    light::{Beam, Night, luma},
    scene::Spot,
};
use glam::Vec3;
use rayon::prelude::*;
use std::sync::Arc;

/// Points of the figure and of the ground that an eye looks at.
const FIGURE_POINTS: usize = 240;
const GROUND_POINTS: usize = 96;
/// Points of the ground where more shows through than this: a second picture may lie behind any of them.
const SEEN_THROUGH: (f32, usize) = (0.1, 384);

/// What an eye sees of a station by each source of light. Luminance and veil are sums over sources, so that another evening
/// (a darker sky, lamps and stations on and off) is the same sighting under other [`Weights`].
#[derive(Clone, Debug, PartialEq)]
pub struct Sighting {
    pub(super) station: u32,
    pub(super) names: Arc<[String]>,
    pub(super) age: f64,
    pub(super) scale: Scale,
    pub(super) figure: Vec<Sample>,
    pub(super) ground: Vec<Sample>,
    in_sight: f64,
    distance: Option<f64>,
    gaze: Gaze,
    disc: usize,
    pub(super) detail: Detail,
    pub(super) sums: Sums,
    pub(super) rivals: Rivals,
}

/// How much of each source shines, over what shone when the sighting was traced, by the index of the source; 1 for one that
/// is not named.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Weights(pub Vec<f64>);

impl Weights {
    /// Of a source.
    #[inline]
    pub fn of(&self, source: usize) -> f64 {
        self.0.get(source).copied().unwrap_or(1.0)
    }

    /// The same with one source at another weight.
    #[must_use]
    pub fn with(mut self, source: usize, weight: f64) -> Self {
        if self.0.len() <= source {
            self.0.resize(source + 1, 1.0);
        }
        self.0[source] = weight;
        self
    }
}

/// What a sighting is taken by.
#[derive(Clone, Copy)]
pub(in crate::judge) struct By<'a> {
    /// The night.
    pub night: &'a Night,
    /// The station, by its index.
    pub station: u32,
    /// Where its raster lands.
    pub landings: &'a Landings,
    /// What is bright around the eye.
    pub around: &'a Around,
    /// The limits of the words.
    pub limits: &'a Limits,
}

impl Sighting {
    /// Looks at a station's figure and its ground from a spot. `scale` is what is not known of the station's own light there.
    pub fn of(night: &Night, station: u32, landings: &Landings, spot: &Spot, scale: Scale, limits: &Limits) -> Self {
        let around = Around::of(night, spot::eye(spot), |other| other != station);
        Self::by(By { night, station, landings, around: &around, limits }, spot, scale)
    }

    pub(in crate::judge) fn by(by: By<'_>, spot: &Spot, scale: Scale) -> Self {
        let By { night, station, landings, around, .. } = by;
        let (figure, ground) = spot::looked_at(landings);
        let beam = night.beams.iter().rfind(|beam| beam.station == station);
        let middle = beam.and_then(|beam| middle(beam, &figure));
        let eye = spot::eye(spot);
        let ahead = middle.map_or(Vec3::ZERO, |middle| (middle - eye).normalize_or_zero());
        let disc = night.disc().map_or(night.sources.len(), |moon| moon.source as usize);
        let mut sighting = Self {
            station,
            names: Arc::clone(&around.names),
            age: f64::from(spot.age.0),
            scale,
            figure: Vec::new(),
            ground: Vec::new(),
            in_sight: 0.0,
            distance: middle.map(|middle| f64::from((middle - eye).length())),
            gaze: Gaze { eye, ahead, age: f64::from(spot.age.0) },
            disc,
            detail: Detail::default(),
            sums: Sums::default(),
            rivals: Rivals::default(),
        };
        let (Some(beam), Some(middle)) = (beam, middle) else { return sighting };
        let targets = owners(&figure);
        let looking = Looking { night, beam, eye };
        let looked = looking.at(&sample::runs(&figure, FIGURE_POINTS));
        if looked.samples.is_empty() {
            return sighting;
        }
        (sighting.figure, sighting.in_sight) = (looked.samples, looked.in_sight);
        let ground: Vec<&Part> = ground.iter().collect();
        let through = ground.iter().filter_map(|part| part.landing.target).any(|touch| touch.through > SEEN_THROUGH.0);
        let points = if through { SEEN_THROUGH.1 } else { GROUND_POINTS };
        sighting.ground = looking.at(&sample::runs(&ground, points)).samples;
        if sighting.ground.is_empty() {
            let rays = beside::rays(night, beam, eye, ahead, &figure, &targets);
            let look = |&(ray, open)| Sample {
                ray,
                lights: Lights::of(&night.surfaces_by_source(ray)),
                open,
                cells: 0.0,
                texel: Texel::default(),
            };
            sighting.ground = rays.par_iter().map(look).collect();
        }
        sighting.detail = sighting.detail(beam, middle);
        let columns = night.sources.len().max(disc + 1);
        for sample in sighting.all_samples() {
            sample.lights.widen(columns);
        }
        let mut sums = vec![bright::Beside::default(); columns];
        sighting.see_beside((by, beam), &figure, &mut sums, |_| true);
        sighting.sums.veil = sums.iter().map(|sum| sum.veil).collect();
        sighting.sums.veil[disc] += sighting.disc_veil(night);
        sighting.rivals = Rivals::of(sums);
        sighting.add_up();
        sighting
    }

    /// Adds what the things do that are bright beside the figure, of the sources that `counts` picks.
    fn see_beside(
        &self,
        (By { station, around, limits, .. }, beam): (By<'_>, &Beam),
        figure: &[&Part],
        sums: &mut [bright::Beside],
        counts: impl Fn(u32) -> bool,
    ) {
        let near = spot::surround(figure);
        let own = |point: Vec3| beam.lens.project(point).is_some_and(|(u, v, _)| near([u, v]));
        let targets = owners(figure);
        for piece in around.beside(station, &targets, own).filter(|piece| counts(piece.source)) {
            self.gaze.see(&piece, limits, &mut sums[piece.source as usize]);
        }
    }

    /// The same in a night that differs by the light of some other stations alone: only that is traced anew. `by` is as it was but
    /// for that night and for what is bright in it.
    pub(in crate::judge) fn with_stations(&self, by: By<'_>, changed: &[u32]) -> Self {
        let mut sighting = self.clone();
        let beam = by.night.beams.iter().rfind(|beam| beam.station == by.station);
        let Some(beam) = beam.filter(|_| !self.figure.is_empty()) else { return sighting };
        sighting.all_samples().par_bridge().for_each(|sample| {
            for station in changed {
                sample.lights.set(*station as usize, by.night.surface_light_of(sample.ray, *station));
            }
        });
        let (figure, _) = spot::looked_at(by.landings);
        let mut sums = vec![bright::Beside::default(); self.sums.veil.len()];
        sighting.see_beside((by, beam), &figure, &mut sums, |source| changed.contains(&source));
        for station in changed {
            let does = std::mem::take(&mut sums[*station as usize]);
            sighting.sums.veil[*station as usize] = does.veil;
            sighting.rivals.with(*station, does);
        }
        sighting.add_up();
        sighting
    }

    /// How fine the figure is. Its strokes are as wide as they are seen; pixels and blur are to them as they are where they land, however
    /// aslant that is seen.
    fn detail(&self, beam: &Beam, middle: Vec3) -> Detail {
        let arcmin = |radians: f64| radians.to_degrees() * 60.0;
        let open: f64 = self.figure.iter().map(|sample| sample.open).sum();
        let [thrown, seen] = self.strokes(beam).map(f64::from);
        let stroke = arcmin(seen);
        let wide = |share: f32| f64::from(share) * stroke / thrown.max(f64::MIN_POSITIVE);
        let size = arcmin(2.0 * (open / std::f64::consts::PI).sqrt());
        Detail { stroke, pixel: wide(beam.pixel), blur: wide(beam.blur(middle)), size }
    }

    /// Mean width of the figure's strokes over the raster, in its widths, and as seen, rad: twice their area over their outline's length,
    /// both by the mean over the figure's places.
    fn strokes(&self, beam: &Beam) -> [f32; 2] {
        let Some(outline) = beam.frame.outline else { return [0.0; 2] };
        let weights = || self.figure.iter().map(|sample| sample.cells as f32);
        let all: f32 = weights().sum();
        let mean = |of: &dyn Fn(&Texel) -> f32| {
            weights().zip(&self.figure).map(|(weight, sample)| weight * of(&sample.texel)).sum::<f32>() / all
        };
        let thrown = outline.stroke_by(mean(&|Texel { thrown: [a, b], .. }| a.perp_dot(*b).abs()), |x, y| {
            mean(&|Texel { thrown: [a, b], .. }| (x * *a + y * *b).length())
        });
        let seen = outline.stroke_by(mean(&|Texel { seen: [a, b], .. }| a.cross(*b).length()), |x, y| {
            mean(&|Texel { seen: [a, b], .. }| (x * *a + y * *b).length())
        });
        [thrown, seen]
    }

    /// The same with the disc (the moon or the sun) where the night now has it, all else as it was: only the disc's light is
    /// traced anew. For an evening that is enough whenever it has moved by a few degrees; in between, its weight.
    #[must_use]
    pub fn with_disc(&self, night: &Night) -> Self {
        let mut moved = self.clone();
        if moved.figure.is_empty() {
            return moved;
        }
        let disc = self.disc;
        moved.all_samples().par_bridge().for_each(|sample| sample.lights.set(disc, of_disc(night, sample)));
        moved.sums.veil[disc] = self.disc_veil(night);
        moved.add_up();
        moved
    }

    /// The sums alone with the disc where the night now has it: all that a word asks for. `None` where nothing of the figure is
    /// in sight.
    pub(in crate::judge) fn sums_with_disc(&self, night: &Night) -> Option<Sums> {
        if self.figure.is_empty() {
            return None;
        }
        let traced =
            |samples: &[Sample]| -> Vec<f32> { samples.par_iter().map(|sample| of_disc(night, sample)).collect() };
        let mean = |samples: &[Sample], lights: &[f32]| {
            let opens = samples.iter().map(|sample| sample.open);
            sample::mean(&opens.zip(lights.iter().map(|light| f64::from(*light))).collect::<Vec<_>>())
        };
        let (mut sums, ground) = (self.sums.clone(), traced(&self.ground));
        sums.disc = traced(&self.figure);
        let parts =
            [(&mut sums.figure, mean(&self.figure, &sums.disc)), (&mut sums.ground, mean(&self.ground, &ground))];
        for (lights, light) in parts {
            lights.iter_mut().skip(self.disc).take(1).for_each(|of_disc| *of_disc = light);
        }
        sums.veil[self.disc] = self.disc_veil(night);
        Some(sums)
    }

    /// The word of each question at typical values, by these sums; `None` where nothing of the figure is in sight.
    pub(in crate::judge) fn words(&self, sums: &Sums, weights: &Weights, limits: &Limits) -> Option<[Word; 4]> {
        if self.figure.is_empty() {
            return None;
        }
        let answers = self.weighed_by(sums, weights, limits, 1.0).answers;
        Some(Question::ALL.map(|question| {
            let at = question as usize;
            answers[at].map_or(Word::Strong, |value| question.word(value, limits.ladders[at]))
        }))
    }

    /// The sums as they were traced.
    pub(in crate::judge) fn sums(&self) -> &Sums {
        &self.sums
    }

    /// What is seen under these weights; `None` where nothing of the figure is in sight. A matter of microseconds.
    pub fn under(&self, weights: &Weights, limits: &Limits) -> Option<Sight> {
        (!self.figure.is_empty()).then(|| Sight::of(self, weights, limits))
    }

    /// Index by which [`Weights`] name the disc, the moon or the sun, whether it is up or not.
    pub fn disc(&self) -> usize {
        self.disc
    }

    /// Distance from the eye to the middle of the figure, m; `None` where nothing of it lands on the target.
    pub fn distance(&self) -> Option<f64> {
        self.distance
    }

    /// Share of the figure that can be seen: of its solid angle, less what leaves and cloth before it take; glass counts as clear.
    pub fn in_sight(&self) -> f64 {
        self.in_sight
    }

    fn all_samples(&mut self) -> impl Iterator<Item = &mut Sample> + Send {
        self.figure.iter_mut().chain(&mut self.ground)
    }

    /// The veil that the disc draws, cd/m².
    fn disc_veil(&self, night: &Night) -> f64 {
        let piece = bright::disc(night, self.gaze.eye);
        piece.map_or(0.0, |piece| self.gaze.veil(&piece))
    }

    fn add_up(&mut self) {
        let own = self.station as usize;
        self.sums.figure = sample::by_source(&self.figure);
        self.sums.disc = self.figure.iter().map(|sample| sample.lights.at(self.disc)).collect();
        self.sums.ground = sample::by_source(&self.ground);
        self.sums.figure_lx = self.figure.iter().map(|s| f64::from(s.lights.at(own)) * s.open).sum();
    }
}

/// The things, by their names' indices, that a figure lies on.
pub(super) fn owners(figure: &[&Part]) -> Vec<u32> {
    let mut owners: Vec<u32> = figure.iter().filter_map(|part| part.landing.target).map(|touch| touch.owner).collect();
    owners.sort_unstable();
    owners.dedup();
    owners
}

/// The middle of a figure as it lies on its target: the mean of its points by area.
fn middle(beam: &Beam, figure: &[&Part]) -> Option<Vec3> {
    let (mut sum, mut all) = (Vec3::ZERO, 0.0);
    for (touch, share) in figure.iter().filter_map(|part| Some((part.landing.target?, part.share))) {
        let area = share * beam.patch(touch.point, touch.normal, 1);
        sum += area * touch.point;
        all += area;
    }
    (all > 0.0).then(|| sum / all)
}

/// Luminance along a sample's ray by the disc, cd/m².
fn of_disc(night: &Night, sample: &Sample) -> f32 {
    night.disc().map_or(0.0, |moon| luma(night.luminance_of(sample.ray, moon.source)))
}
