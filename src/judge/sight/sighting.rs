//! What an eye sees of a station, traced once and kept by source, so that an evening is a matter of weights.

use super::{
    Limits, Sight, Word, field,
    rival::{Part, Patch, parts},
    weigh::{Rivals, Sums},
};
use crate::{
    geometry::Sight as Ray,
    judge::{Landing, RASTER, band::Scale, spot},
    light::{EyeRay, Night, eye as laws, luma},
    scene::Spot,
};
use glam::Vec3;
use rayon::prelude::*;

/// Points of the figure and of the ground that an eye looks at.
const FIGURE_POINTS: usize = 120;
const GROUND_POINTS: usize = 48;

/// A ray of an eye with what comes along it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sample {
    ray: EyeRay,
    /// Luminance by source, cd/m².
    pub lights: Vec<f32>,
    /// Solid angle that it stands for, sr.
    pub open: f64,
}

/// What an eye sees of a station by each source of light. Luminance and veil are sums over sources, so that another evening
/// (a darker sky, lamps and stations on and off) is the same sighting under other [`Weights`].
#[derive(Clone, Debug, PartialEq)]
pub struct Sighting {
    pub(super) station: u32,
    pub(super) names: Vec<String>,
    pub(super) age: f64,
    pub(super) scale: Scale,
    pub(super) figure: Vec<Sample>,
    pub(super) ground: Vec<Sample>,
    field: Vec<Sample>,
    /// Points of the figure that were looked for.
    looked_for: usize,
    distance: Option<f64>,
    eye: Vec3,
    ahead: Vec3,
    disc: usize,
    /// Width of the figure's strokes as it lands and as seen, minutes of arc.
    pub(super) stroke: f64,
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
    pub landings: &'a [Landing],
    /// What the other stations light.
    pub neighbours: &'a [Patch],
    /// The limits of the words.
    pub limits: &'a Limits,
}

impl Sighting {
    /// Looks at a station's figure and its ground from a spot. `scale` is what is not known of the station's own light there.
    pub fn of(night: &Night, station: u32, landings: &[Landing], spot: &Spot, scale: Scale, limits: &Limits) -> Self {
        let neighbours = super::neighbours(night, station);
        Self::by(By { night, station, landings, neighbours: &neighbours, limits }, spot, scale)
    }

    pub(in crate::judge) fn by(by: By<'_>, spot: &Spot, scale: Scale) -> Self {
        let By { night, station, landings, neighbours, limits } = by;
        let eye = spot::eye(spot);
        let (figure, ground) = spot::looked_at(landings);
        let all = figure.len();
        let (figure, ground) = (spot::thinned(&figure, FIGURE_POINTS), spot::thinned(&ground, GROUND_POINTS));
        let beam = night.beams.iter().rfind(|beam| beam.station == station);
        let cells = RASTER.0 * RASTER.1;
        let look = |points: &[&Landing]| -> Vec<Sample> {
            let sample = |landing: &&Landing| {
                let (ray, touch) = (sight_of(night, eye, landing)?, landing.target?);
                let area = beam.map_or(0.0, |beam| beam.patch(touch.point, touch.normal, cells));
                let distance = (touch.point - eye).length_squared().max(1e-4);
                let open = f64::from(area * touch.normal.dot(ray.along).abs() / distance);
                Some(Sample { ray, lights: night.luminance_by_source(ray), open })
            };
            points.par_iter().filter_map(sample).collect()
        };
        let middle = figure.iter().filter_map(|l| l.target).map(|t| t.point).sum::<Vec3>() / figure.len().max(1) as f32;
        let ahead = (middle - eye).normalize_or_zero();
        let (looked_for, distance) = (figure.len(), (!figure.is_empty()).then(|| f64::from((middle - eye).length())));
        let (mut lit, dark) = (look(&figure), look(&ground));
        // The brightest first, whatever is sent where.
        let own = |sample: &Sample| sample.lights.get(station as usize).copied().unwrap_or(0.0);
        lit.sort_by(|a, b| own(b).total_cmp(&own(a)));
        for sample in &mut lit {
            // Each stands for those that were left out as well.
            sample.open *= all as f64 / looked_for.max(1) as f64;
        }
        let target = landings.iter().find_map(|l| l.target).map(|touch| touch.owner);
        let rays = target
            .filter(|_| !lit.is_empty())
            .map_or_else(Vec::new, |target| field::rays(night, eye, ahead, target, limits.field as f32));
        let around = |ray: &EyeRay| Sample { ray: *ray, lights: night.surfaces_by_source(*ray), open: 0.0 };
        let stroke = beam.map_or(0.0, |beam| {
            // Mean solid angle of a cell of the raster, of those that are seen.
            let cell = lit.iter().map(|s| s.open).sum::<f64>() / lit.len().max(1) as f64 * looked_for as f64
                / all.max(1) as f64;
            let raster = (cell * cells as f64 * f64::from(beam.lens.w1 / beam.lens.h1)).sqrt();
            f64::from(beam.stroke(middle)) * raster.to_degrees() * 60.0
        });
        let mut sighting = Self {
            station,
            names: night.sources.iter().map(|source| source.name().to_owned()).collect(),
            age: f64::from(spot.age.0),
            scale,
            figure: lit,
            ground: dark,
            field: rays.par_iter().map(around).collect(),
            looked_for,
            distance,
            eye,
            ahead,
            disc: night.disc.map_or(night.sources.len(), |moon| moon.source as usize),
            stroke,
            sums: Sums::default(),
            rivals: Rivals::default(),
        };
        if sighting.figure.is_empty() {
            return sighting;
        }
        let columns = night.sources.len().max(sighting.disc + 1);
        for sample in sighting.all_samples() {
            sample.lights.resize(columns, 0.0);
        }
        let parts = parts(night, eye, neighbours);
        sighting.rivals = Rivals::of(parts.iter().map(|part| (part.source, part.lx, sighting.degrees(part.toward))));
        sighting.sums.veil = vec![0.0; columns];
        for part in &parts {
            sighting.sums.veil[part.source as usize] += sighting.veil(part);
        }
        sighting.veil_of_disc(night);
        sighting.add_up();
        sighting
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
        moved.all_samples().par_bridge().for_each(|sample| sample.lights[disc] = of_disc(night, sample));
        moved.sums.veil[disc] = 0.0;
        moved.veil_of_disc(night);
        moved.add_up();
        moved
    }

    /// The sums alone with the disc where the night now has it: all that a word asks for. `None` where nothing of the figure is
    /// in sight.
    pub(in crate::judge) fn sums_with_disc(&self, night: &Night) -> Option<Sums> {
        if self.figure.is_empty() {
            return None;
        }
        let traced = |samples: &[Sample]| -> Vec<f32> { samples.par_iter().map(|s| of_disc(night, s)).collect() };
        let of = |lights: &[f32]| lights.iter().map(|l| f64::from(*l)).sum::<f64>() / lights.len().max(1) as f64;
        let (figure, mut sums) = (traced(&self.figure), self.sums.clone());
        let parts = [
            (&mut sums.white, of(&figure[..brightest(figure.len())])),
            (&mut sums.figure, of(&figure)),
            (&mut sums.ground, of(&traced(&self.ground))),
            (&mut sums.field, of(&traced(&self.field))),
        ];
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
        let word = |at: usize| answers[at].map_or(Word::Strong, |value| Word::by(value, limits.ladders[at]));
        Some([0, 1, 2, 3].map(word))
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

    /// Share of the figure that can be seen.
    pub fn in_sight(&self) -> f64 {
        self.figure.len() as f64 / self.looked_for.max(1) as f64
    }

    fn all_samples(&mut self) -> impl Iterator<Item = &mut Sample> + Send {
        self.figure.iter_mut().chain(&mut self.ground).chain(&mut self.field)
    }

    fn degrees(&self, toward: Vec3) -> f64 {
        f64::from(toward.dot(self.ahead).clamp(-1.0, 1.0).acos().to_degrees())
    }

    /// The veil by light that reaches the eye from aside.
    fn veil(&self, part: &Part) -> f64 {
        let degrees = self.degrees(part.toward);
        laws::veil(degrees, self.age) * part.lx * degrees.to_radians().cos().max(0.0)
    }

    fn veil_of_disc(&mut self, night: &Night) {
        self.sums.veil[self.disc] += self.disc_veil(night);
    }

    fn disc_veil(&self, night: &Night) -> f64 {
        let Some(moon) = night.disc else { return 0.0 };
        let sight = Ray::endless(self.eye, moon.toward);
        if night.blocked(sight) {
            return 0.0;
        }
        let lx = f64::from(luma(moon.square * night.through(sight, [u32::MAX; 2])));
        self.veil(&Part { source: moon.source, lx, toward: moon.toward })
    }

    fn add_up(&mut self) {
        let own = self.station as usize;
        self.sums.figure = mean(&self.figure);
        // The brightest stand first.
        self.sums.white = mean(&self.figure[..brightest(self.figure.len())]);
        self.sums.ground = mean(&self.ground);
        self.sums.field = mean(&self.field);
        self.sums.figure_lx = self.figure.iter().map(|s| f64::from(s.lights[own]) * s.open).sum();
    }
}

/// How many of a figure's points are its brightest tenth.
fn brightest(points: usize) -> usize {
    points.div_ceil(10)
}

/// Luminance along a sample's ray by the disc, cd/m².
fn of_disc(night: &Night, sample: &Sample) -> f32 {
    night.disc.map_or(0.0, |moon| luma(night.luminance_of(sample.ray, moon.source)))
}

/// Mean luminance by source; empty where there is no sample.
fn mean(samples: &[Sample]) -> Vec<f64> {
    let Some(first) = samples.first() else { return Vec::new() };
    let mut sums = vec![0.0; first.lights.len()];
    for sample in samples {
        sums.iter_mut().zip(&sample.lights).for_each(|(sum, light)| *sum += f64::from(*light));
    }
    sums.iter_mut().for_each(|sum| *sum /= samples.len() as f64);
    sums
}

/// The ray on which an eye sees a landing; `None` where something opaque stands between.
fn sight_of(night: &Night, eye: Vec3, landing: &Landing) -> Option<EyeRay> {
    let touch = landing.target?;
    let along = (touch.point - eye).normalize_or_zero();
    let side = if touch.normal.dot(along) > 0.0 { -touch.normal } else { touch.normal };
    // An opaque target turned away from the eye shows it another face.
    if touch.veil.is_none() && touch.normal.dot(along) > 0.0 {
        return None;
    }
    let blocked = night.blocked(Ray::between(eye, touch.point + 4e-3 * side));
    (!blocked).then_some(EyeRay { from: eye, along, width: 0.0 })
}
