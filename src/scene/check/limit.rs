//! A yard's own limits.

use super::known::Known;
use super::range::unless;
use crate::scene::{Fault, Faults, Limit, limits};
use crate::units::number;

/// Further than this factor from the program's own value a limit is a slip of the hand.
const FURTHEST: f64 = 1000.0;

fn range(usual: &Limit) -> [f64; 2] {
    [usual.value / FURTHEST, usual.value * FURTHEST]
}

fn is_sane(limit: &Limit, usual: &Limit) -> bool {
    let [least, most] = range(usual);
    (least..=most).contains(&limit.value)
}

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    let (yard, catalogue) = (known.yard, known.catalogue);
    faults.in_each("limits", &yard.limits, |faults, limit| {
        let name = &limit.name.0;
        let Some(usual) = catalogue.limit(name).filter(|_| limits::ALL.contains(&name.as_str())) else {
            let fault = Fault::new(format!("no limit is called “{name}”")).remedy("name a limit of the catalogue");
            return faults.push_in("name", fault.nearest_of(name, limits::ALL.iter().copied()));
        };
        let [least, most] = range(usual);
        let remedy = format!("from {least} to {most}; it is {} in the catalogue", usual.value);
        unless(is_sane(limit, usual), faults, "value", format!("{} is out of range", number(limit.value)), remedy);
        let alike = limit.unit.is_empty() || limit.unit == usual.unit;
        let unit = if usual.unit.is_empty() { "no unit: it is a ratio" } else { &usual.unit };
        let remedy = format!("leave it out; this limit has {unit}");
        unless(alike, faults, "unit", format!("“{}” is not the unit of this limit", limit.unit), remedy);
    });
    // Words go by steps, each beyond the last.
    for steps in limits::LADDERS {
        let value = |name: &str| yard.limit(catalogue, name).map_or(f64::NAN, |limit| limit.value);
        for pair in steps.windows(2) {
            let own = |name: &str| yard.limits.iter().position(|limit| limit.name.0 == name);
            let Some(at) = own(pair[1]).or(own(pair[0])) else { continue };
            let (low, high) = (value(pair[0]), value(pair[1]));
            // What is out of range has been told already.
            let limit = &yard.limits[at];
            if !catalogue.limit(&limit.name.0).is_some_and(|usual| is_sane(limit, usual)) {
                continue;
            }
            let what = format!("“{}” at {} is not below “{}” at {}", pair[0], number(low), pair[1], number(high));
            unless(low < high, faults, &format!("limits[{at}].value"), what, "each step is more than the one before");
        }
    }
}
