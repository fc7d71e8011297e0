//! A projector that throws a sign, a menu or a blue rectangle while nothing comes in.

use super::{Case, Finding, Level, Matter, moves, remedy::Attempt};
use crate::scene::{Idle, limits};

/// What is lit meanwhile, and the share of the raster that it covers; for signs and menus invented, typical.
const fn lit(idle: Idle) -> Option<(f64, &'static str)> {
    match idle {
        Idle::BlueRectangle => Some((1.0, "a blue rectangle")),
        Idle::Menu => Some((0.3, "a menu")),
        Idle::Logo => Some((0.1, "its maker's sign")),
        Idle::Nothing | Idle::Unknown => None,
    }
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::IDLE);
    let mut list = Vec::new();
    for (_, station, _) in case.lit() {
        let Some(class) = case.yard.projector(case.catalogue, &station.projector.0) else { continue };
        let Some((share, what)) = lit(class.shows).filter(|(share, _)| *share > bound.value) else { continue };
        let says = format!(
            "“{}” throws {what} over {:.0} % of its raster at its start or when its signal fails",
            station.name.0,
            100.0 * share
        );
        list.push(Finding::new(Matter::Idle, Level::Check, &station.name.0, None).against(share, &bound, says));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let station = case.yard.stations.iter().find(|station| station.name.0 == finding.of);
    let dark = |station| moves::other_class(case, station, |class, _| class.shows == Idle::Nothing);
    station.map_or_else(Vec::new, dark)
}
