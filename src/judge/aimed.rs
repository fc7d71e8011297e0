//! What a station is set up by, without asking for light.

use super::{
    Extent, Landings,
    extent::{self, Plane},
    piece::pieces,
    reading::{reads_right, targets_of},
    slack::{Slack, slack},
};
use crate::{light::Night, scene::Yard};

/// What a station is set up by: where its raster lands, and how far that may stray. Nothing of light is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Aimed {
    /// What it is meant to light: indices of the names.
    pub targets: Vec<u32>,
    /// From the lens to where the middle of the picture lands, by way of any mirrors, m; 0 where nothing lands.
    pub throw_m: f64,
    /// The same along the lens axis, m: a picture square to that is this wide over the throw ratio.
    pub depth_m: f64,
    /// The whole picture on the plane that it lands on.
    pub picture: Extent,
    /// How far the aim may stray.
    pub slack: Option<Slack>,
    /// Whether the picture reads the right way round from where most spots stand.
    pub reads_right: bool,
}

/// What a station is set up by; `None` for an index that the yard doesn't have and for a station that is off.
pub fn aimed(night: &Night, yard: &Yard, index: usize) -> Option<Aimed> {
    let station = yard.stations.get(index)?;
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32)?;
    let targets = targets_of(night, station, beam);
    let landings = Landings::of(night, beam, &targets);
    let pieces = pieces(night, beam, &landings.white(night, beam, &targets));
    let middle = extent::middle(night, beam, &targets, &pieces);
    let [throw_m, depth_m] = middle.map_or([0.0; 2], |touch| extent::throw(beam, &touch));
    Some(Aimed {
        throw_m,
        depth_m,
        picture: Plane::of(beam, &pieces).map_or_else(Extent::default, |plane| extent::picture(beam, &plane, &pieces)),
        slack: slack(night, beam, &targets, &landings),
        reads_right: reads_right(yard, station, &landings, beam),
        targets,
    })
}
