//! What goes with what, and the labels for it.

use super::{Cut, Need, What, line::named, measure::shown, need::station_of};
use crate::{
    scene::{Catalogue, Yard},
    units::border,
};
use serde::Serialize;

/// What is packed together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pack {
    /// Name of the station, or of the thing that no station lights; empty for what all share.
    pub of: String,
    /// What is in it.
    pub items: Vec<Packed>,
}

/// One item of a pack.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Packed {
    /// What it is.
    pub what: String,
    /// How much of it.
    #[serde(serialize_with = "border::light")]
    pub amount: f64,
    /// Its measure; empty for pieces.
    pub unit: &'static str,
}

impl Packed {
    /// As it stands on a label: `3 × hook`, `2.5 m cable`.
    pub fn says(&self) -> String {
        let times = if self.unit.is_empty() { "× " } else { "" };
        format!("{} {times}{}", shown(self.amount, self.unit), self.what)
    }
}

/// A pack for each station with what it lights, one for each thing that no station lights, and one for what all share.
pub(super) fn all(yard: &Yard, catalogue: &Catalogue, needs: &[Need], cuts: &[Cut]) -> Vec<Pack> {
    let shown = yard.stations.iter().filter(|station| !yard.is_hidden(&station.name.0));
    let mut packs: Vec<Pack> = shown.map(|station| Pack { of: station.name.0.clone(), items: Vec::new() }).collect();
    let mut put = |of: &str, what: String, amount: f64, unit: &'static str| {
        let index = packs.iter().position(|pack| pack.of == of).unwrap_or_else(|| {
            packs.push(Pack { of: of.to_owned(), items: Vec::new() });
            packs.len() - 1
        });
        let items = &mut packs[index].items;
        match items.iter_mut().find(|item| item.what == what && item.unit == unit) {
            Some(item) => item.amount += amount,
            None => items.push(Packed { what, amount, unit }),
        }
    };
    // A sewn cloth is packed as one piece rather than by its square metres.
    for need in needs.iter().filter(|need| need.amount > 0.0 && !matches!(need.what, What::Fabric(_))) {
        let (what, amount, unit) = named(yard, catalogue, need);
        put(station_of(yard, &need.of).unwrap_or(&need.of), what, amount, unit);
    }
    for cut in cuts {
        let what = format!("{} ({})", cut.of, cut.fabric);
        put(station_of(yard, &cut.of).unwrap_or(&cut.of), what, 1.0, "");
    }
    // What all share comes last.
    packs.sort_by_key(|pack| pack.of.is_empty());
    packs.retain(|pack| !pack.items.is_empty());
    packs
}

/// Labels to cut apart, one for each pack: its name, then what is in it.
pub fn labels(packs: &[Pack]) -> String {
    let mut page = String::new();
    for pack in packs {
        let name = if pack.of.is_empty() { "for all" } else { pack.of.as_str() };
        page += &format!("-- {name} --\n");
        for item in &pack.items {
            page += &format!("   {}\n", item.says());
        }
        page.push('\n');
    }
    page
}
