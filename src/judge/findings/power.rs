//! What findings about power share: the plan's own problems as findings, and a quick trial of what would help.

use super::{Case, Finding, Level, Matter, finding::Bound, remedy::Proposal};
use crate::{
    craft::{
        money::Running,
        power::{PowerReport, Trouble, area_mm2, sizes},
    },
    edit::Edit,
    scene::{Cable, Gauge, Item, Supply},
};

/// The plan's problems of one kind; the limit of this name says why.
pub(super) fn of(case: &Case, trouble: Trouble, matter: Matter, limit: &str) -> Vec<Finding> {
    let problems = case.power().problems.iter().filter(|problem| problem.trouble == trouble);
    let finding = |problem: &crate::craft::power::Problem| {
        let level = if problem.grave { Level::Fix } else { Level::Check };
        let why = case.limit(limit).why;
        let bound = Bound { value: problem.limit, unit: problem.unit.to_owned(), why };
        Finding::new(matter, level, &problem.of, None).against(problem.number, &bound, problem.says.clone())
    };
    problems.map(finding).collect()
}

/// Those proposals after which the plan no longer has that problem: far quicker told than by judging the whole yard.
pub(super) fn helpful(case: &Case, trouble: Trouble, of: &str, proposals: Vec<Proposal>) -> Vec<Proposal> {
    let helps = |proposal: &Proposal| {
        let Ok(yard) = proposal.edit.apply(case.yard, case.catalogue, None) else { return false };
        let report = PowerReport::of(&yard, case.catalogue, Running::of(&yard, 1));
        !report.problems.iter().any(|problem| problem.trouble == trouble && problem.of == of)
    };
    proposals.into_iter().filter(helps).collect()
}

/// The supply of this name.
pub(super) fn supply<'a>(case: &Case<'a>, name: &str) -> Option<&'a Supply> {
    case.yard.supplies.iter().find(|supply| supply.name.0 == name)
}

/// The way up from a cable, itself first.
pub(super) fn way_up<'a>(case: &Case<'a>, cable: &'a Cable) -> Vec<&'a Cable> {
    let mut way = vec![cable];
    while let Some(last) = way.last().copied() {
        let before = case.yard.cables.iter().find(|one| one.name.0 == last.from.0 || one.to.0 == last.from.0);
        match before.filter(|before| !way.iter().any(|one| one.name == before.name)) {
            Some(before) => way.push(before),
            None => break,
        }
    }
    way
}

/// Sizes on sale that are thicker than one, thinnest first.
pub(super) fn thicker(gauge: Gauge) -> impl Iterator<Item = Gauge> {
    sizes(gauge).iter().copied().filter(move |size| area_mm2(*size) > area_mm2(gauge) * (1.0 + 1e-9))
}

/// Cables in another size, those that are as thick already left alone.
pub(super) fn in_size(cables: &[&Cable], gauge: Gauge) -> Edit {
    let thinner = cables.iter().filter(|cable| area_mm2(cable.gauge) < area_mm2(gauge));
    Edit::All(thinner.map(|cable| Edit::Change(Item::Cable(Cable { gauge, ..(*cable).clone() }))).collect())
}
