//! No fuse at a supply of low voltage, or one that does not fit.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::{Trouble, ampacity_a, fuse_a},
    edit::Edit,
    scene::{Battery, Cable, Item, Positive, Supply, SupplyKind, TwelveVolt, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    power::of(case, Trouble::Fuse, Matter::Fuse, limits::FUSE_OVER)
}

/// A fuse that fits its cables; or thicker cables, and the fuse that fits those.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(supply) = power::supply(case, &finding.of) else { return Vec::new() };
    let Some(plan) = case.power().supplies.iter().find(|one| one.supply == finding.of) else { return Vec::new() };
    let mut proposals = Vec::new();
    if let Some(fuse) = plan.fuse_to_buy_a {
        let says = format!("Put a fuse of {fuse} A at the output of “{}”", supply.name.0);
        proposals.extend(fused(supply, fuse).map(|edit| Proposal { says, edit }));
    }
    let hung = case.power().cables.iter().filter(|cable| cable.supply == finding.of);
    let own: Vec<&Cable> =
        hung.filter_map(|one| case.yard.cables.iter().find(|cable| cable.name.0 == one.cable)).collect();
    let over = case.limit(limits::FUSE_OVER).value;
    for size in own.first().into_iter().flat_map(|cable| power::thicker(cable.gauge)) {
        let bears = own.iter().filter_map(|cable| ampacity_a(size, cable.cord)).fold(f64::INFINITY, f64::min);
        let Some(fuse) = fuse_a(plan.running_a, over, bears) else { continue };
        let says = format!("Take {size} from “{}” on, and put a fuse of {fuse} A at its output", supply.name.0);
        let edits = [Some(power::in_size(&own, size)), fused(supply, fuse)].into_iter().flatten().collect();
        proposals.push(Proposal { says, edit: Edit::All(edits) });
    }
    power::helpful(case, Trouble::Fuse, &finding.of, proposals)
}

/// The supply with this fuse; an outlet of the mains has none.
fn fused(supply: &Supply, fuse: f64) -> Option<Edit> {
    let fuse_a = Some(Positive(fuse));
    let kind = match &supply.kind {
        SupplyKind::Mains(_) => return None,
        SupplyKind::TwelveVolt(one) => SupplyKind::TwelveVolt(TwelveVolt { fuse_a, ..one.clone() }),
        SupplyKind::Battery(one) => SupplyKind::Battery(Battery { fuse_a, ..one.clone() }),
    };
    Some(Edit::Change(Item::Supply(Supply { kind, ..supply.clone() })))
}
