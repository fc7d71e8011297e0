//! Mains outdoors that no GFCI or RCD guards.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::Trouble,
    edit::Edit,
    scene::{Item, Mains, Supply, SupplyKind, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    power::of(case, Trouble::NoGuard, Matter::Guard, limits::GUARD)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(supply) = power::supply(case, &finding.of) else { return Vec::new() };
    let SupplyKind::Mains(outlet) = &supply.kind else { return Vec::new() };
    let kind = SupplyKind::Mains(Mains { gfci: true, ..outlet.clone() });
    vec![Proposal {
        says: format!("Have a GFCI or RCD fitted before “{}”, or plug in a portable one, and test it", supply.name.0),
        edit: Edit::Change(Item::Supply(Supply { kind, ..supply.clone() })),
    }]
}
