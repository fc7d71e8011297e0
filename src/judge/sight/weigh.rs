//! The sums of a sighting, and what they come to under weights.

use super::{
    Coarsest, Limits, Sighting, Weights,
    sample::{self, Sample},
};
use crate::light::eye as laws;

/// Luminance and veil by source; means are by solid angle.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::judge) struct Sums {
    /// Mean of the figure, cd/m².
    pub figure: Vec<f64>,
    /// Light of the disc, sun or moon, at each of its places, cd/m².
    pub disc: Vec<f32>,
    /// Mean of the ground beside it, cd/m²; empty where there is none.
    pub ground: Vec<f64>,
    /// The veil, cd/m².
    pub veil: Vec<f64>,
    /// The figure's own light at the eye, lx.
    pub figure_lx: f64,
}

/// How fine a figure is drawn and how fine it can be, minutes of arc as seen.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Detail {
    /// Mean width of its strokes as they are drawn.
    pub stroke: f64,
    /// Width of a pixel of the projector.
    pub pixel: f64,
    /// Width of the blur of its focus.
    pub blur: f64,
    /// Diameter of the disc that has the figure's solid angle.
    pub size: f64,
}

impl Detail {
    /// The coarsest of eye, pixel and blur for a figure of this luminance, cd/m².
    pub fn coarsest(&self, luminance: f64) -> (Coarsest, f64) {
        let all =
            [(Coarsest::Eye, laws::finest(luminance)), (Coarsest::Pixel, self.pixel), (Coarsest::Blur, self.blur)];
        all.into_iter().fold((Coarsest::Eye, 0.0), |most, one| if one.1 > most.1 { one } else { most })
    }
}

/// What a sighting comes to under weights, at one end of what is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    pub adaptation: f64,
    pub veil: f64,
    pub coarsest: Coarsest,
    /// The answers to the questions, in their order.
    pub answers: [Option<f64>; 4],
}

impl Sighting {
    /// With the station's own light so many times what it typically is.
    pub(super) fn weighed(&self, weights: &Weights, limits: &Limits, own_factor: f64) -> Seen {
        self.weighed_by(&self.sums, weights, limits, own_factor)
    }

    /// The same by other sums than its own.
    pub(super) fn weighed_by(&self, sums: &Sums, weights: &Weights, limits: &Limits, own_factor: f64) -> Seen {
        let own = self.station as usize;
        let parted = |list: &[f64]| {
            let rest = |(i, light): (usize, &f64)| if i == own { 0.0 } else { weights.of(i) * light };
            let other: f64 = list.iter().enumerate().map(rest).sum();
            (own_factor * weights.of(own) * list.get(own).unwrap_or(&0.0), other)
        };
        let (figure, _) = parted(&sums.figure);
        let (ground, ground_rest) = parted(&sums.ground);
        let veil = sums.veil.iter().enumerate().map(|(i, light)| weights.of(i) * light).sum::<f64>();
        let behind = ground + ground_rest + veil;
        let size = self.detail.size.min(limits.light_size);
        let task = laws::Task { age: Some(self.age), ..laws::Task::bright(size) };
        let visibility = (figure - ground).max(0.0) / laws::threshold(behind, task);
        let [white, white_rest] = self.brightest_tenth(&sums.disc, weights);
        let stands_out =
            (behind > 0.0 && !sums.ground.is_empty()).then(|| (own_factor * white + white_rest + veil) / behind);
        let lx = own_factor * weights.of(own) * sums.figure_lx;
        let rival = self.rivals.strongest(weights);
        // By its own light alone: more light on everything around makes no picture easier to read.
        let (coarsest, finest) = self.detail.coarsest(figure);
        Seen {
            adaptation: behind,
            veil,
            coarsest,
            answers: [
                Some(visibility),
                Some(self.detail.stroke / finest),
                stands_out,
                rival.map(|rival| lx / rival.counted),
            ],
        }
    }

    /// Mean over the figure's brightest tenth by all light under weights: the station's own and all other, cd/m². `disc` is the light of
    /// sun or moon at each place.
    fn brightest_tenth(&self, disc: &[f32], weights: &Weights) -> [f64; 2] {
        let own = self.station as usize;
        let light = |(sample, of_disc): (&Sample, &f32)| {
            let weighed = |source: usize, light: f32| weights.of(source) * f64::from(light);
            let others = sample.lights.each().filter(|(source, _)| *source != own && *source != self.disc());
            let rest =
                others.map(|(source, light)| weighed(source, light)).sum::<f64>() + weighed(self.disc(), *of_disc);
            [weighed(own, sample.lights.at(own)), rest]
        };
        let lights: Vec<[f64; 2]> = self.figure.iter().zip(disc).map(light).collect();
        let shines: Vec<f64> = lights.iter().map(|[own, rest]| own + rest).collect();
        let tenth = sample::tenth(&self.figure, &shines);
        [0, 1].map(|kind| {
            sample::mean(&tenth.iter().map(|at| (self.figure[*at].open, lights[*at][kind])).collect::<Vec<_>>())
        })
    }
}
