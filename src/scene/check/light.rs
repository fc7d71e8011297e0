//! Lamps.

use super::known::Known;
use super::range::{above_ground, unless};
use crate::scene::{Fault, Faults, Lamp, SpreadKind};

const MOST_BULBS: u32 = 500;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("lamps", &known.yard.lamps, |faults, lamp| {
        let what = format!("{} bulbs are too many", lamp.bulbs.0);
        unless(lamp.bulbs.0 <= MOST_BULBS, faults, "bulbs", what, format!("at most {MOST_BULBS} on a string"));
        for (field, point) in std::iter::once(("at", &lamp.at)).chain(lamp.to.iter().map(|to| ("to", to))) {
            above_ground(faults, field, point.0[1].m, "this lamp", "the second number is its height above the ground");
        }
        if let Some(to) = &lamp.to {
            let apart = (to.vec3() - lamp.at.vec3()).length() > 1e-3;
            unless(apart, faults, "to", "both ends of this string hang at one place", "move one end, or leave out to");
        }
        let switched = lamp.from.is_none() || lamp.from != lamp.until;
        let remedy = "leave both out for a lamp that burns all the time";
        unless(switched, faults, "until", "this lamp is switched on and off at one time", remedy);
        if let Some(kind) = known.lamp_kind("kind", &lamp.kind, faults) {
            suits(lamp, &kind.spread, faults);
        }
    });
}

fn suits(lamp: &Lamp, spread: &SpreadKind, faults: &mut Faults) {
    let is_window = *spread == SpreadKind::Window;
    if is_window && lamp.size.is_none() {
        faults.push(Fault::new("this lit window has no size").remedy("write size: (width, height)"));
    }
    let what = format!("“{}” is a lit window, which is no string", lamp.kind.0);
    unless(!is_window || lamp.to.is_none(), faults, "to", what, "leave out to");
    if !is_window && lamp.size.is_some() {
        let what = format!("“{}” is no lit window, so its size is not used", lamp.kind.0);
        faults.push_in("size", Fault::warning(what).remedy("leave it out, or choose a lit window"));
    }
}
