//! What a meter should read of a station: the two numbers that are checked on its first night, without any look from a spot.

use super::{Banded, Landings, PhoneCheck, band::Scale, mean, phone, piece::pieces, reading::targets_of};
use crate::{
    light::{Night, lumens},
    scene::{Catalogue, Yard},
};

/// Mean on the target, lx, and the phone check of the station at an index of the yard's list, as its readings have them; `None` for an
/// index that the yard doesn't have, and for a station that is off.
pub fn lux_to_expect(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<(Banded, PhoneCheck)> {
    let station = yard.stations.get(index)?;
    let class = yard.projector(catalogue, &station.projector.0)?;
    let own = lumens(yard, catalogue, station)?;
    let beam = night.beams.iter().rfind(|beam| beam.station as usize == index)?;
    let targets = targets_of(night, station, beam);
    let white = Landings::of(night, beam, &targets).white(night, beam, &targets);
    let pieces = pieces(night, beam, &white);
    let flux = Scale::of(own.low, own.typical, own.high);
    let new = station.lumens.unwrap_or(class.lumens).typical;
    Some((mean::white(beam, pieces.iter(), flux), phone::check(night, beam, &targets, flux, new)))
}
