//! A cable that is not made for the mains, or not for the mains outdoors.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::{Trouble, area_mm2},
    edit::Edit,
    scene::{Cable, Gauge, Item, MadeFor, limits},
};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mut list = power::of(case, Trouble::MadeFor, Matter::OutdoorCable, limits::MADE_FOR);
    list.extend(power::of(case, Trouble::IndoorLead, Matter::OutdoorCable, limits::INDOOR_LEAD));
    list.extend(power::of(case, Trouble::Thin, Matter::OutdoorCable, limits::OUTDOOR_MM2));
    list
}

/// A cord that is made for it, as thick as it is or as thick as such cords are.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cable) = case.yard.cables.iter().find(|cable| cable.name.0 == finding.of) else { return Vec::new() };
    let usual = match cable.gauge {
        Gauge::Awg(_) => Gauge::Awg(16),
        Gauge::Mm2(_) => Gauge::Mm2(1.5),
    };
    let gauge = if area_mm2(cable.gauge) < area_mm2(usual) { usual } else { cable.gauge };
    vec![Proposal {
        says: format!("Take an outdoor cord of {gauge} for “{}”", cable.name.0),
        edit: Edit::Change(Item::Cable(Cable { gauge, made_for: MadeFor::Outdoors, ..cable.clone() })),
    }]
}
