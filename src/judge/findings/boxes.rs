//! Stations in boxes, and boxes changed.

use super::{Case, remedy::Proposal};
use crate::{
    craft::shelter::{self, ShelterReport},
    edit::Edit,
    scene::{Clock, Item, Shelter, Station},
};

/// Height of the sun from which it warms a box, as the sine of the angle: 5°.
const WARMS: f32 = 0.087;

/// Every station that is on and stands in a box, with what is known of that.
pub(super) fn boxed<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a Station, &'a Shelter, ShelterReport)> {
    let (yard, catalogue) = (case.yard, case.catalogue);
    let on = yard.stations.iter().filter(|station| station.on && !yard.is_hidden(&station.name.0));
    on.filter_map(|station| Some((station, station.shelter.as_ref()?, shelter::report(yard, catalogue, station)?)))
}

/// The station that a finding is about, with its box.
pub(super) fn boxed_by<'a>(case: &Case<'a>, name: &str) -> Option<(&'a Station, &'a Shelter, ShelterReport)> {
    boxed(case).find(|(station, ..)| station.name.0 == name)
}

/// The station in another box.
pub(super) fn in_box(station: &Station, shelter: Shelter, says: String) -> Proposal {
    let edit = Edit::Change(Item::Station(Station { shelter: Some(shelter), ..station.clone() }));
    Proposal { says, edit }
}

/// Whether the sun stands high enough to warm a box while visitors come, on some day of the season.
pub(super) fn runs_in_the_sun(case: &Case) -> bool {
    let (from, until) = case.yard.visitors;
    let open = |clock: Clock| {
        if from <= until { from <= clock && clock <= until } else { clock >= from || clock <= until }
    };
    case.suns().iter().any(|time| time.toward.y > WARMS && open(time.clock))
}
