//! What the reader cannot see in one value: names that nothing has, sizes that do not fit each other, fabrics that
//! would give more light than they get. Every fault is found at once, each with its path; [`Faults::locate`] adds places.

mod building;
mod entry;
mod ground;
mod hanging;
mod keeping;
mod known;
mod light;
mod limit;
mod money;
mod name;
mod opening;
mod power;
mod range;
mod shape;
mod shelter;
mod station;
mod window;

use super::{Catalogue, Fault, Faults, Yard};
use known::Known;
use std::path::Path;

/// A yard of more things than this is a mistake of a program.
const MOST_THINGS: usize = 10_000;

/// So is one with more entries of its own catalogue, each of which is checked against the laws of light.
const MOST_ENTRIES: usize = 500;

impl Yard {
    /// Checks a yard as it stands now, say after an edit; `folder` is where pictures are looked for, if anywhere.
    pub fn check(&self, catalogue: &Catalogue, folder: Option<&Path>) -> Faults {
        let mut faults = Faults::none(&self.name.0, "");
        check(self, catalogue, folder, &[], &mut faults);
        faults
    }
}

/// Checks a yard. `unread` are names that stand in its file on nouns that could not be read: they are not missing.
pub(super) fn check(yard: &Yard, catalogue: &Catalogue, folder: Option<&Path>, unread: &[&str], faults: &mut Faults) {
    if yard.format != Yard::FORMAT {
        let what = format!("there is no format {}", yard.format);
        faults.push_in("format", Fault::new(what).remedy(format!("write {}, or leave it out", Yard::FORMAT)));
    }
    let names = name::all(yard);
    let entries = yard.surfaces.len()
        + yard.fabrics.len()
        + yard.projectors.len()
        + yard.lamp_kinds.len()
        + yard.goods.len()
        + yard.owned.len()
        + yard.limits.len();
    for (count, most, what) in [(names.len(), MOST_THINGS, "things"), (entries, MOST_ENTRIES, "catalogue entries")] {
        if count > most {
            faults.push(Fault::new(format!("this yard has {count} {what}")).remedy(format!("at most {most}")));
            return;
        }
    }
    let known = Known { yard, catalogue, folder, names, unread };
    name::check(&known, faults);
    ground::check(&known, faults);
    building::check(&known, faults);
    shape::check(&known, faults);
    light::check(&known, faults);
    hanging::check(&known, faults);
    station::check(&known, faults);
    power::check(&known, faults);
    keeping::check(&known, faults);
    entry::check(yard, folder, faults);
    money::check(&known, faults);
    limit::check(&known, faults);
}
