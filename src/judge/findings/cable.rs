//! A cable carries more than it may.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{craft::power::Trouble, scene::limits};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    power::of(case, Trouble::Cable, Matter::Cable, limits::CONTINUOUS)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cable) = case.yard.cables.iter().find(|cable| cable.name.0 == finding.of) else { return Vec::new() };
    let sizes = power::thicker(cable.gauge).map(|size| Proposal {
        says: format!("Take {size} for “{}” in place of {}", cable.name.0, cable.gauge),
        edit: power::in_size(&[cable], size),
    });
    power::helpful(case, Trouble::Cable, &finding.of, sizes.collect())
}
