//! Where rain and wind come: outside of houses.

use super::power::{behind_window, is_indoors};
use crate::scene::{Station, Yard};

/// Whether a station stands in the open: neither within the walls of a house, nor on the room side of a window whose film it
/// lights. A shelf keeps nothing off: it may hang on a porch.
pub fn is_outdoors(yard: &Yard, station: &Station) -> bool {
    let at = station.at.vec3().as_dvec3();
    let film = yard.films.iter().find(|film| station.lights(&film.name.0));
    let window = film.and_then(|film| film.window.as_ref());
    let behind_film = window.is_some_and(|window| behind_window(yard, &window.0, at));
    !behind_film && !is_indoors(yard, at)
}
