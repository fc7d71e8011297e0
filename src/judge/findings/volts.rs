//! Too little is left of the volts at the end of a cable, or a supply gives other volts than a station runs on.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::Trouble,
    edit::Edit,
    scene::{Battery, Cable, Item, Positive, Ref, Supply, SupplyKind, TwelveVolt, limits},
};

/// What supplies of low voltage are changed to, V.
const TWELVE: Positive = Positive(12.0);

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mains = |name: &str| power::supply(case, name).is_some_and(|supply| supply.kind.is_mains());
    let at_mains =
        |finding: &Finding| case.power().cables.iter().any(|cable| cable.to == finding.of && mains(&cable.supply));
    // The same problem, each with the reason of its own limit.
    let low = power::of(case, Trouble::Drop, Matter::Volts, limits::DROP_LOW);
    let high = power::of(case, Trouble::Drop, Matter::Volts, limits::DROP_MAINS);
    let lost = low.into_iter().zip(high).map(|(low, high)| if at_mains(&high) { high } else { low });
    // How much of them is lost matters only where they are the right ones.
    let mut list = power::of(case, Trouble::Volts, Matter::Volts, limits::VOLTS_OFF);
    let right: Vec<Finding> = lost.filter(|finding| !list.iter().any(|wrong| wrong.of == finding.of)).collect();
    list.extend(right);
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cable) = case.yard.cables.iter().find(|cable| cable.to.0 == finding.of) else { return Vec::new() };
    let is_wrong =
        |problem: &crate::craft::power::Problem| problem.trouble == Trouble::Volts && problem.of == finding.of;
    if case.power().problems.iter().any(is_wrong) {
        other_volts(case, finding, cable)
    } else {
        thicker(case, finding, cable)
    }
}

/// Its cable from an outlet of the mains, or its supply in 12 V.
fn other_volts(case: &Case, finding: &Finding, cable: &Cable) -> Vec<Proposal> {
    let outlets = case.yard.supplies.iter().filter(|supply| supply.kind.is_mains());
    let mut list: Vec<Proposal> = outlets
        .map(|outlet| Proposal {
            says: format!("Plug “{}” into “{}”", cable.name.0, outlet.name.0),
            edit: Edit::Change(Item::Cable(Cable { from: Ref::to(&outlet.name.0), ..cable.clone() })),
        })
        .collect();
    let fed = case.power().stations.iter().find(|station| station.station == finding.of);
    let supply = fed.and_then(|fed| power::supply(case, fed.supply.as_ref()?));
    list.extend(supply.and_then(in_twelve_volts));
    power::helpful(case, Trouble::Volts, &finding.of, list)
}

/// A supply of low voltage in 12 V; a battery that holds as much.
fn in_twelve_volts(supply: &Supply) -> Option<Proposal> {
    let (kind, says) = match &supply.kind {
        SupplyKind::Mains(_) => return None,
        SupplyKind::TwelveVolt(one) => {
            (SupplyKind::TwelveVolt(TwelveVolt { volts: TWELVE, ..one.clone() }), "Take one of 12 V".to_owned())
        }
        SupplyKind::Battery(one) => {
            let amp_hours = (one.amp_hours.0 * one.volts.0 / TWELVE.0).ceil();
            let kind = SupplyKind::Battery(Battery { volts: TWELVE, amp_hours: Positive(amp_hours), ..one.clone() });
            (kind, format!("Take one of 12 V and {amp_hours} Ah"))
        }
    };
    let says = format!("{says} for “{}”", supply.name.0);
    Some(Proposal { says, edit: Edit::Change(Item::Supply(Supply { kind, ..supply.clone() })) })
}

/// A thicker last cable, or a thicker way from the supply on.
fn thicker(case: &Case, finding: &Finding, cable: &Cable) -> Vec<Proposal> {
    let way = power::way_up(case, cable);
    let alone = power::thicker(cable.gauge).map(|size| Proposal {
        says: format!("Take {size} for “{}” in place of {}", cable.name.0, cable.gauge),
        edit: power::in_size(&[cable], size),
    });
    let thinnest = way
        .iter()
        .map(|cable| cable.gauge)
        .min_by(|a, b| crate::craft::power::area_mm2(*a).total_cmp(&crate::craft::power::area_mm2(*b)));
    let all = power::thicker(thinnest.unwrap_or(cable.gauge)).filter(|_| way.len() > 1).map(|size| Proposal {
        says: format!("Take {size} all the way to “{}”", finding.of),
        edit: power::in_size(&way, size),
    });
    power::helpful(case, Trouble::Drop, &finding.of, alone.chain(all).collect())
}
