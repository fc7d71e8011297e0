//! What an eye looks at that looks at the figures: they and their ground, as the words take them.

use super::sample::{self, Looking};
use crate::{
    judge::{landings::Part, reading::landings, spot},
    light::Night,
    scene::Yard,
};
use glam::Vec3;
use rayon::prelude::*;

/// Points of each figure and of each ground.
const POINTS: usize = 60;

/// Where the figures of a night and their grounds lie, from wherever they may be looked at.
#[derive(Clone, Debug, Default)]
pub struct Figures(Vec<Figure>);

#[derive(Clone, Debug)]
struct Figure {
    station: u32,
    /// What of it and of its ground is looked at.
    parts: [Vec<Part>; 2],
}

/// A place of a figure or of its ground, as an eye sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Unit vector from the eye.
    pub along: Vec3,
    /// Luminance without any veil, cd/m².
    pub luminance: f64,
    /// Solid angle that it stands for, sr.
    pub open: f64,
}

impl Figures {
    /// Those of all stations that are on and throw one.
    pub fn of(night: &Night, yard: &Yard) -> Self {
        let figure = |index: usize| {
            let landings = landings(night, yard, index)?;
            let (figure, ground) = spot::looked_at(&landings);
            let own: Vec<Part> = figure.into_iter().copied().collect();
            (!own.is_empty()).then_some(Figure { station: index as u32, parts: [own, ground] })
        };
        Self((0..yard.stations.len()).into_par_iter().filter_map(figure).collect())
    }

    /// The places of them that an eye has in sight.
    pub fn seen(&self, night: &Night, eye: Vec3) -> Vec<Place> {
        let mut places = Vec::new();
        for Figure { station, parts } in &self.0 {
            let Some(beam) = night.beams.iter().rfind(|beam| beam.station == *station) else { continue };
            let looking = Looking { night, beam, eye };
            for parts in parts {
                let parts: Vec<&Part> = parts.iter().collect();
                let samples = looking.at(&sample::runs(&parts, POINTS)).samples;
                places.extend(samples.into_iter().map(|sample| Place {
                    along: sample.ray.along,
                    luminance: sample.lights.all(),
                    open: sample.open,
                }));
            }
        }
        places
    }
}
