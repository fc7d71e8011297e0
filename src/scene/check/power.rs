//! Supplies, cables and loads: what feeds what.

use super::known::Known;
use super::range::{above_ground, unless, within};
use crate::scene::{Cable, Faults, Load, Positive, Ref, Supply, SupplyKind};
use std::ops::RangeInclusive;

/// More joints than this are a slip of the pen.
const MOST_JOINTS: u32 = 100;

/// Low voltage that a hand may touch, V.
const LOW_VOLTS: RangeInclusive<f64> = 3.0..=60.0;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("supplies", &known.yard.supplies, |faults, noun| supply(known, noun, faults));
    faults.in_field("cables", |faults| {
        for (index, noun) in known.yard.cables.iter().enumerate() {
            faults.in_item(index, |faults| cable(known, index, noun, faults));
        }
    });
}

/// Devices of a station.
pub(super) fn loads(loads: &[Load], faults: &mut Faults) {
    faults.in_each("loads", loads, |faults, load| {
        within(faults, "watts", load.watts.0, 0.01..=5000.0, "from 0.01 to 5000 W");
        inrush(load.inrush, faults);
    });
}

/// What starts draws no less than what runs.
pub(super) fn inrush(times: Positive, faults: &mut Faults) {
    within(faults, "inrush", times.0, 1.0..=100.0, "times of what it draws later, from 1 to 100");
}

fn supply(known: &Known<'_>, supply: &Supply, faults: &mut Faults) {
    above_ground(faults, "at", supply.at.0[1].m, "this supply", "the second number is its height above the ground");
    let fuse = |faults: &mut Faults, fuse: Option<Positive>| {
        if let Some(fuse) = fuse {
            within(faults, "kind.fuse_a", fuse.0, 0.1..=200.0, "from 0.1 to 200 A");
        }
    };
    let low = "from 3 to 60 V";
    match &supply.kind {
        SupplyKind::Mains(one) => {
            within(faults, "kind.volts", one.volts.0, 90.0..=260.0, "from 90 to 260 V");
            within(faults, "kind.breaker_a", one.breaker_a.0, 0.5..=125.0, "from 0.5 to 125 A");
        }
        SupplyKind::TwelveVolt(one) => {
            within(faults, "kind.volts", one.volts.0, LOW_VOLTS, low);
            within(faults, "kind.watts", one.watts.0, 0.5..=5000.0, "from 0.5 to 5000 W");
            fuse(faults, one.fuse_a);
            if let Some(from) = &one.from {
                let outlets = known.yard.supplies.iter().filter(|other| other.kind.is_mains());
                let names: Vec<&str> = outlets.map(|other| other.name.0.as_str()).collect();
                known.among(Known::OUTLET, "kind.from", from, &names, faults);
                let cable = known.yard.cables.iter().find(|cable| cable.to.0 == supply.name.0);
                let what = format!("it is fed twice: by “{}” and by a cable", from.0);
                unless(cable.is_none(), faults, "kind.from", what, "leave out from, or take the cable away");
            }
        }
        SupplyKind::Battery(one) => {
            within(faults, "kind.volts", one.volts.0, LOW_VOLTS, low);
            within(faults, "kind.amp_hours", one.amp_hours.0, 0.1..=5000.0, "from 0.1 to 5000 Ah");
            within(faults, "kind.usable", one.usable.0, 0.05..=1.0, "from 0.05 to 1");
            fuse(faults, one.fuse_a);
        }
    }
}

fn cable(known: &Known<'_>, index: usize, cable: &Cable, faults: &mut Faults) {
    let yard = known.yard;
    let what = format!("{} joints", cable.joints);
    unless(cable.joints <= MOST_JOINTS, faults, "joints", what, format!("at most {MOST_JOINTS}"));
    // A cable may wait for a station of another arrangement.
    let elsewhere = yard.arrangements.iter().flat_map(|one| &one.stations);
    let mut fed: Vec<&str> = yard.stations.iter().chain(elsewhere).map(|station| station.name.0.as_str()).collect();
    fed.extend(yard.lamps.iter().map(|lamp| lamp.name.0.as_str()));
    let mut feeds = fed.clone();
    feeds.extend(yard.supplies.iter().map(|supply| supply.name.0.as_str()));
    feeds.extend(yard.cables.iter().map(|cable| cable.name.0.as_str()));
    let low = yard.supplies.iter().filter(|supply| matches!(supply.kind, SupplyKind::TwelveVolt(_)));
    fed.extend(low.map(|supply| supply.name.0.as_str()));
    known.among(Known::FEEDS, "from", &cable.from, &feeds, faults);
    known.among(Known::IS_FED, "to", &cable.to, &fed, faults);
    if let Some(first) = yard.cables[..index].iter().find(|other| other.to == cable.to) {
        let what = format!("“{}” is fed twice: by “{}” already", cable.to.0, first.name.0);
        unless(false, faults, "to", what, "one cable feeds a thing; begin this one at it to go on from there");
    }
    let way = Way::up(known, cable);
    let what = format!("“{}” feeds itself, by way of its own end", cable.name.0);
    unless(!way.is_loop, faults, "from", what, "begin at a supply, or at something that one feeds");
    let ends_at_a_supply = yard.supplies.iter().any(|supply| supply.name.0 == cable.to.0);
    if let Some(root) = way.root.filter(|root| ends_at_a_supply && !root.kind.is_mains()) {
        let what = format!("“{}” wants the mains, and “{}” gives {} V", cable.to.0, root.name.0, root.kind.volts());
        unless(false, faults, "from", what, "begin this cable at a mains supply");
    }
}

/// The way from a cable up to what feeds it.
struct Way<'a> {
    root: Option<&'a Supply>,
    is_loop: bool,
}

impl<'a> Way<'a> {
    fn up(known: &Known<'a>, cable: &Cable) -> Self {
        let yard = known.yard;
        let mut from: &Ref = &cable.from;
        // Every step is another cable, so that more steps than cables go round in a circle.
        for _ in 0..=yard.cables.len() {
            if let Some(root) = yard.supplies.iter().find(|supply| supply.name.0 == from.0) {
                return Self { root: Some(root), is_loop: false };
            }
            let before = yard.cables.iter().find(|one| one.name.0 == from.0 || one.to.0 == from.0);
            match before {
                Some(before) => from = &before.from,
                None => return Self { root: None, is_loop: false },
            }
        }
        Self { root: None, is_loop: true }
    }
}
