//! What an eye looks at that looks at the figures: they and their ground, as the words take them.

use super::{
    sample::{self, Looking, Part},
    sighting::owners,
};
use crate::{
    judge::{Landing, meant::Meant, reading::landings, spot},
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
    /// The things, by their names' indices, that it lies on.
    targets: Vec<u32>,
    /// Cells of the figure and of its ground, and what of them is looked at.
    parts: [(Part, Vec<Landing>); 2],
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
            let (figure, ground, part) = spot::looked_at(&landings);
            let own = |cells: &[&Landing]| cells.iter().map(|cell| **cell).collect();
            let parts = [(Part::Figure, own(&figure)), (part, own(&ground))];
            (!figure.is_empty()).then(|| Figure { station: index as u32, targets: owners(&figure), parts })
        };
        Self((0..yard.stations.len()).into_par_iter().filter_map(figure).collect())
    }

    /// The places of them that an eye has in sight.
    pub fn seen(&self, night: &Night, eye: Vec3) -> Vec<Place> {
        let mut places = Vec::new();
        for Figure { station, targets, parts } in &self.0 {
            let Some(beam) = night.beams.iter().rfind(|beam| beam.station == *station) else { continue };
            let meant = Meant::of(night, beam, targets);
            let looking = Looking { night, beam, meant: &meant, eye };
            for (part, cells) in parts {
                let cells: Vec<&Landing> = cells.iter().collect();
                let samples = looking.at(*part, &sample::runs(&cells, POINTS)).samples;
                places.extend(samples.into_iter().map(|sample| Place {
                    along: sample.ray.along,
                    luminance: sample.lights.iter().map(|light| f64::from(*light)).sum(),
                    open: sample.open,
                }));
            }
        }
        places
    }
}
