//! A projector that does not start by itself when power returns.

use super::{Case, Finding, Level, Matter, moves, remedy::Attempt};
use crate::scene::{Wakes, limits};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::BY_HAND);
    let season = case.yard.season.map(|(first, last)| f64::from((last.civil() - first.civil()).get_days() + 1));
    let evenings = season.unwrap_or(1.0);
    let waits =
        |name: &str| case.yard.projector(case.catalogue, name).is_some_and(|class| class.wakes == Wakes::ByRemote);
    let lit = case.lit().filter(|(_, station, _)| waits(&station.projector.0));
    lit.filter(|_| evenings >= bound.value)
        .map(|(_, station, _)| {
            let often = match season {
                Some(evenings) => format!("on each of {evenings:.0} evenings"),
                None => "each evening".to_owned(),
            };
            let says =
                format!("“{}” waits for a button when power returns: somebody starts it {often}", station.name.0);
            Finding::new(Matter::ByHand, Level::Check, &station.name.0, None).against(evenings, &bound, says)
        })
        .collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let station = case.yard.stations.iter().find(|station| station.name.0 == finding.of);
    let by_itself = |station| moves::other_class(case, station, |class, _| class.wakes == Wakes::ByItself);
    station.map_or_else(Vec::new, by_itself)
}
