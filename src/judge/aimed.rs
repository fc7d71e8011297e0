//! What a station is set up by, without asking for light.

use super::{
    Extent,
    extent::{extent, throw},
    landing::follow,
    reading::{reads_right, target_of},
    slack::{Slack, slack},
};
use crate::{light::Night, scene::Yard};

/// What a station is set up by: where its raster lands, and how far that may stray. Nothing of light is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Aimed {
    /// What it is meant to light: index of the name.
    pub target: Option<u32>,
    /// From the lens to the target along its axis, by way of any mirrors, m; 0 where nothing lands there.
    pub throw_m: f64,
    /// The lit picture on the target.
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
    let target = target_of(night, station, beam);
    let landings = follow(night, beam, target);
    let landed = landings.iter().filter_map(|l| l.target.map(|t| t.point));
    Some(Aimed {
        target,
        throw_m: throw(beam, &landings),
        picture: extent(landed, beam, &landings),
        slack: slack(night, beam, target, &landings),
        reads_right: reads_right(yard, station, &landings, beam),
    })
}
