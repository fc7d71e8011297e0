//! Stations that are put up from a ladder: a caution, once for a yard.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{Item, Mount, Point, Station, limits},
};

/// Height of a lens on a stand in place of a ladder, m.
const STAND_M: f64 = 1.9;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::LADDER);
    // What stands on a shelf stands in a room, whose floor may be high itself.
    let outside = |s: &&Station| s.on && s.mount != Mount::Shelf && !case.yard.is_hidden(&s.name.0);
    let high: Vec<&Station> =
        case.yard.stations.iter().filter(outside).filter(|station| station.at.0[1].m > bound.value).collect();
    let Some(highest) = high.iter().max_by(|a, b| a.at.0[1].m.total_cmp(&b.at.0[1].m)) else { return Vec::new() };
    let height = highest.at.0[1].m;
    let others = match high.len() {
        1 => String::new(),
        2 => " and another station".to_owned(),
        n => format!(" and {} other stations", n - 1),
    };
    let verb = if high.len() == 1 { "is" } else { "are" };
    let says = format!(
        "{}, {} up,{others} {verb} work on a ladder: never alone, and with a tether on the box",
        highest.name.0,
        moves::length(case, height)
    );
    vec![Finding::new(Matter::Ladder, Level::Check, &highest.name.0, None).against(height, &bound, says)]
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(station) = case.yard.stations.iter().find(|station| station.name.0 == finding.of) else {
        return Vec::new();
    };
    let [x, y, z] = &station.at.0;
    let at = Point([x.clone(), y.changed(STAND_M), z.clone()]);
    let edit = Edit::Change(Item::Station(Station { at, mount: Mount::Stand, ..station.clone() }));
    vec![Proposal { says: format!("Put {} on a stand, {} up", station.name.0, moves::length(case, STAND_M)), edit }]
}
