//! A lens shines into the eyes of people who watch.

use super::{Case, Finding, Level, Matter, moves, people, remedy::Attempt};
use crate::scene::{Station, limits};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::DAZZLE);
    let mut list = Vec::new();
    for (index, station, beams) in people::shining(case) {
        let [low, high] = people::doubt(case, index);
        for spot in people::on_foot(case) {
            let Some(seen) = people::seen_from(case, &beams, spot).filter(|seen| seen.lx * high > bound.value) else {
                continue;
            };
            let level = if seen.lx > bound.value { Level::Fix } else { Level::Check };
            let (of, from) = (&station.name.0, &spot.name.0);
            let whose = if seen.child { "a child's eyes" } else { "the eyes" };
            let says =
                format!("The lens of “{of}” shines with {} into {whose} at “{from}”", people::lux(case, seen.lx));
            let finding = Finding::new(Matter::Dazzle, level, of, Some(from));
            list.push(finding.against(seen.lx, &bound, says).unsure(seen.lx * low <= bound.value));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let found = people::shining(case).find(|(_, station, _)| station.name.0 == finding.of);
    found.map_or_else(Vec::new, |(_, station, _)| out_of_the_beam(case, station))
}

/// Ways to take a lens out of somebody's line of sight.
pub(super) fn out_of_the_beam(case: &Case, station: &Station) -> Vec<Attempt> {
    let mut list = moves::lifted(case, station, &[-0.8, 0.8]);
    list.extend(moves::sideways(case, station, &[-1.5, 1.5]));
    list.extend(moves::aimed_higher(case, station, &[-0.6]));
    list.extend(moves::along(case, station, &[1.5]));
    list
}
