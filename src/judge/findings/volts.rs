//! Too little is left of the volts at the end of a cable.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{craft::power::Trouble, scene::limits};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mains = |name: &str| power::supply(case, name).is_some_and(|supply| supply.kind.is_mains());
    let at_mains =
        |finding: &Finding| case.power().cables.iter().any(|cable| cable.to == finding.of && mains(&cable.supply));
    // The same problem, each with the reason of its own limit.
    let low = power::of(case, Trouble::Drop, Matter::Volts, limits::DROP_LOW);
    let high = power::of(case, Trouble::Drop, Matter::Volts, limits::DROP_MAINS);
    low.into_iter().zip(high).map(|(low, high)| if at_mains(&high) { high } else { low }).collect()
}

/// A thicker last cable, or a thicker way from the supply on.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cable) = case.yard.cables.iter().find(|cable| cable.to.0 == finding.of) else { return Vec::new() };
    let way = power::way_up(case, cable);
    let alone = power::thicker(cable.gauge).map(|size| Proposal {
        says: format!("Take {size} for {} in place of {}", cable.name.0, cable.gauge),
        edit: power::in_size(&[cable], size),
    });
    let thinnest = way
        .iter()
        .map(|cable| cable.gauge)
        .min_by(|a, b| crate::craft::power::area_mm2(*a).total_cmp(&crate::craft::power::area_mm2(*b)));
    let all = power::thicker(thinnest.unwrap_or(cable.gauge)).filter(|_| way.len() > 1).map(|size| Proposal {
        says: format!("Take {size} all the way to {}", finding.of),
        edit: power::in_size(&way, size),
    });
    power::helpful(case, Trouble::Drop, &finding.of, alone.chain(all).collect())
}
