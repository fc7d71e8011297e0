//! A supply that rain gets into.

use super::{Case, Finding, Matter, power, remedy::Proposal};
use crate::{
    craft::power::{Trouble, brought_in},
    edit::Edit,
    scene::{IpCode, Item, Supply, limits},
};

/// As far a supply is carried to come indoors, m.
const CARRIED_M: f64 = 8.0;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    power::of(case, Trouble::Rain, Matter::SupplyRain, limits::RAIN_CODE)
}

/// A housing that is made for it, or the nearest house.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(supply) = power::supply(case, &finding.of) else { return Vec::new() };
    let code = IpCode { solids: Some(4), water: Some(finding.limit.clamp(0.0, 9.0).ceil() as u8) };
    let mut list = vec![Proposal {
        says: format!("Put “{}” into a box made for rain, {code} or better, or take one that is", supply.name.0),
        edit: Edit::Change(Item::Supply(Supply { ip: code, ..supply.clone() })),
    }];
    if let Some((house, item)) = brought_in(case.yard, &Item::Supply(supply.clone()), CARRIED_M) {
        list.push(Proposal {
            says: format!("Bring “{}” into “{house}”, cables in from below", supply.name.0),
            edit: Edit::Change(item),
        });
    }
    power::helpful(case, Trouble::Rain, &finding.of, list)
}
