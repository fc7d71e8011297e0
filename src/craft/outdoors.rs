//! Where rain and wind come: outside of houses.

use super::power::is_indoors;
use crate::scene::{Aim, Mount, Station, Yard};

/// Whether a station stands in the open: neither on a shelf, nor within the walls of a house, nor behind the film of a window.
pub fn is_outdoors(yard: &Yard, station: &Station) -> bool {
    let lit = station.target.as_ref().or(match &station.aim {
        Aim::Thing(name) => Some(name),
        Aim::At(_) => None,
    });
    let behind_film =
        lit.is_some_and(|lit| yard.films.iter().any(|film| film.name.0 == lit.0 && film.window.is_some()));
    station.mount != Mount::Shelf && !behind_film && !is_indoors(yard, station.at.vec3().as_dvec3())
}
