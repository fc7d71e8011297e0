//! Stations that are put up from a ladder: a caution, once for a yard.

use super::{
    Case, Finding, Level, Matter, moves,
    on_a_stand::{STAND_M, stood, weighed},
    rear,
    remedy::Proposal,
};
use crate::{
    craft::is_outdoors,
    edit::Edit,
    scene::{Item, Mount, Station, limits},
};

/// Stations that are reached from a ladder, with how high each is over what somebody stands on, m.
fn high<'a>(case: &Case<'a>, above: f64) -> Vec<(&'a Station, f64)> {
    let shown = |s: &&Station| s.on && !case.yard.is_hidden(&s.name.0);
    let stations = case.yard.stations.iter().filter(shown);
    stations.filter_map(|station| Some((station, reach(case, station)?))).filter(|(_, reach)| *reach > above).collect()
}

/// How high a lens is over the ground, or over the floor of its room where that is said, m. `None` for what stands on a shelf in
/// a room of which nobody says it: its floor may be high itself.
fn reach(case: &Case, station: &Station) -> Option<f64> {
    let height = station.at.0[1].m;
    let outdoors = is_outdoors(case.yard, station);
    match floor(case, station).filter(|_| !outdoors) {
        Some(floor) => Some(height - floor),
        None => (outdoors || station.mount != Mount::Shelf).then_some(height),
    }
}

/// The floor of the room behind the window whose film a station lights, where that is said, m above the ground.
fn floor(case: &Case, station: &Station) -> Option<f64> {
    let film = rear::film(case, &station.lit().first()?.0)?;
    let (host, window) = rear::window(case, &film.window.as_ref()?.0)?;
    let house = case.yard.houses.iter().find(|house| house.name.0 == host).map(|house| &house.at);
    let wall = || case.yard.walls.iter().find(|wall| wall.name.0 == host).map(|wall| &wall.at);
    Some(house.or_else(wall)?.0[1].m + window.room.floor.as_ref()?.m)
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::LADDER);
    let high = high(case, bound.value);
    let Some((highest, height)) = high.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1)) else { return Vec::new() };
    let others = match high.len() {
        1 => String::new(),
        2 => " and 1 other station".to_owned(),
        n => format!(" and {} other stations", n - 1),
    };
    let verb = if high.len() == 1 { "is" } else { "are" };
    let says = format!("“{}”, {} up,{others} {verb} work on a ladder", highest.name.0, moves::length(case, height));
    let others =
        high.iter().map(|(station, _)| station.name.0.clone()).filter(|name| *name != highest.name.0).collect();
    let finding = Finding::new(Matter::Ladder, Level::Check, &highest.name.0, None).against(height, &bound, says);
    vec![finding.with(others)]
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let high: Vec<&Station> = high(case, finding.limit).into_iter().map(|(station, _)| station).collect();
    let names: Vec<&str> = high.iter().map(|station| station.name.0.as_str()).collect();
    let (lowered, kg) = stood(case, &high);
    let says = format!(
        "Put “{}” on stands, {} up{}",
        names.join("” and “"),
        moves::length(case, STAND_M),
        weighed(case, kg, "the foot of each")
    );
    let edits = lowered.into_iter().map(|station| Edit::Change(Item::Station(station)));
    vec![Proposal { says, edit: Edit::All(edits.collect()) }]
}
