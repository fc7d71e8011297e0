//! Arrangements, and what is locked or put away.

use super::known::Known;
use super::{name, station};
use crate::scene::{Fault, Faults, Ref};
use std::collections::BTreeSet;

/// More placings than this nobody compares.
const MOST: usize = 50;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    let yard = known.yard;
    name::unusable(&yard.arrangement, "arrangement", faults);
    let count = yard.arrangements.len();
    if count > MOST {
        let fault = Fault::new(format!("{count} arrangements")).remedy(format!("at most {MOST}"));
        return faults.push_in("arrangements", fault);
    }
    let mut taken = BTreeSet::from([yard.arrangement.0.clone()]);
    faults.in_each("arrangements", &yard.arrangements, |faults, one| {
        name::unusable(&one.name, "name", faults);
        if !taken.insert(one.name.0.clone()) {
            let what = format!("“{}” is the name of another arrangement", one.name.0);
            faults.push_in("name", Fault::new(what).remedy("give each its own; “arrangement” names the one shown"));
        }
        let mut names = BTreeSet::new();
        faults.in_each("stations", &one.stations, |faults, noun| {
            name::unusable(&noun.name, "name", faults);
            let of_another = known.names.iter().any(|n| n.word != "station" && n.name.0 == noun.name.0);
            if !names.insert(noun.name.0.clone()) || of_another {
                let what = format!("“{}” is a name already", noun.name.0);
                faults.push_in("name", Fault::new(what).remedy("every name in an arrangement is used once"));
            }
            station::station(known, noun, faults);
        });
    });
    // A station that another arrangement has may be locked or put away in it.
    let elsewhere: BTreeSet<&str> =
        yard.arrangements.iter().flat_map(|a| &a.stations).map(|station| station.name.0.as_str()).collect();
    for (field, list) in [("locked", &yard.locked), ("hidden", &yard.hidden)] {
        faults.in_each(field, list, |faults, name: &Ref| {
            if !elsewhere.contains(name.0.as_str()) {
                known.named(name, faults);
            }
        });
    }
}
