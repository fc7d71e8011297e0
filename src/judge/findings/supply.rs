//! A supply gives more than it can, or for longer; the USB outlet of a projector among them.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::Trouble,
    edit::Edit,
    scene::{Battery, Cable, Item, Load, LoadFrom, Positive, Ref, Station, Supply, SupplyKind, TwelveVolt, limits},
};

/// Supplies of low voltage to buy, W, and batteries, Ah: usual sizes, from memory.
const WATTS: [f64; 11] = [30.0, 60.0, 100.0, 120.0, 150.0, 200.0, 240.0, 300.0, 350.0, 480.0, 600.0];
const AMP_HOURS: [f64; 12] = [7.0, 9.0, 12.0, 18.0, 20.0, 26.0, 35.0, 50.0, 75.0, 100.0, 150.0, 200.0];

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mut list = power::of(case, Trouble::Supply, Matter::Supply, limits::CONTINUOUS);
    list.extend(power::of(case, Trouble::Usb, Matter::Supply, limits::USB));
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    if let Some(station) = case.yard.stations.iter().find(|station| station.name.0 == finding.of) {
        return power::helpful(case, Trouble::Usb, &finding.of, vec![beside(station)]);
    }
    let Some(supply) = power::supply(case, &finding.of) else { return Vec::new() };
    let proposals = match &supply.kind {
        SupplyKind::Mains(_) => elsewhere(case, supply),
        SupplyKind::TwelveVolt(one) => {
            let larger = WATTS.into_iter().filter(|watts| *watts > one.watts.0);
            let with = |watts| TwelveVolt { watts: Positive(watts), ..one.clone() };
            larger.map(|watts| of_kind(supply, SupplyKind::TwelveVolt(with(watts)), &format!("{watts} W"))).collect()
        }
        SupplyKind::Battery(one) => {
            let larger = AMP_HOURS.into_iter().filter(|amp_hours| *amp_hours > one.amp_hours.0);
            let with = |amp_hours| Battery { amp_hours: Positive(amp_hours), ..one.clone() };
            larger
                .map(|amp_hours| of_kind(supply, SupplyKind::Battery(with(amp_hours)), &format!("{amp_hours} Ah")))
                .collect()
        }
    };
    power::helpful(case, Trouble::Supply, &finding.of, proposals)
}

/// What hangs on the projector's USB outlet on an adapter of its own.
fn beside(station: &Station) -> Proposal {
    let loads = station.loads.iter().map(|load| Load { from: LoadFrom::Supply, ..load.clone() }).collect();
    Proposal {
        says: format!("Give “{}” an adapter of its own for the loads on the projector's USB outlet", station.name.0),
        edit: Edit::Change(Item::Station(Station { loads, ..station.clone() })),
    }
}

fn of_kind(supply: &Supply, kind: SupplyKind, size: &str) -> Proposal {
    Proposal {
        says: format!("Take one of {size} for “{}”", supply.name.0),
        edit: Edit::Change(Item::Supply(Supply { kind, ..supply.clone() })),
    }
}

/// One of its cables from another outlet.
fn elsewhere(case: &Case, supply: &Supply) -> Vec<Proposal> {
    let others = case.yard.supplies.iter().filter(|other| other.kind.is_mains() && other.name != supply.name);
    let others: Vec<&Supply> = others.collect();
    let own = case.yard.cables.iter().filter(|cable| cable.from.0 == supply.name.0);
    own.flat_map(|cable| {
        others.iter().map(|other| Proposal {
            says: format!("Plug “{}” into “{}”, if that is on another breaker", cable.name.0, other.name.0),
            edit: Edit::Change(Item::Cable(Cable { from: Ref::to(&other.name.0), ..cable.clone() })),
        })
    })
    .collect()
}
