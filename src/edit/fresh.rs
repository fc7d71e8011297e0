//! New things: one of each kind as it is to begin with, under a name that is free.

use super::starter::read;
use crate::scene::{Cable, Item, Name, Ref, Wall, Yard};
use std::sync::LazyLock;

/// One of each kind of thing at its usual size; read once, as menus ask for it in every frame.
static ONE_OF_EACH: LazyLock<Yard> = LazyLock::new(|| read(include_str!("../../assets/starters/one_of_each.ron")));

/// Every kind of thing that can be added, by the word that a person calls it, in the order of a yard file.
pub fn kinds() -> Vec<&'static str> {
    ONE_OF_EACH.items().map(|item| item.word()).collect()
}

/// A thing of a kind at its usual size; `None` for a kind that there is not.
pub fn usual(kind: &str) -> Option<Item> {
    ONE_OF_EACH.items().find(|item| item.word() == kind)
}

/// A new thing of a kind, its middle moved to `at`, m; an opening is in the wall or house `host`, its lower left corner so
/// far along and up its wall. `None` for a kind that there is not, an opening with no host, or a cable where there is no supply or
/// nothing left to feed.
pub fn fresh(yard: &Yard, kind: &str, at: [f64; 3], host: Option<&str>) -> Option<Item> {
    let item = match usual(kind)? {
        Item::Opening(_, mut opening) => {
            let (left, sill) = opening.corner_mut();
            (*left, *sill) = (left.changed(at[0]), sill.changed(at[1]));
            Item::Opening(host?.to_owned(), opening)
        }
        Item::Wall(wall) => Item::Wall(Wall { openings: Vec::new(), ..wall }).moved(at),
        Item::Cable(cable) => Item::Cable(connecting(yard, cable)?),
        other => other.moved(at),
    };
    Some(copy_of(yard, &item))
}

/// The same thing under a name that is free; its openings too. The films in them and what is aimed at it stay with the first.
pub fn copy_of(yard: &Yard, item: &Item) -> Item {
    let name = free_name(yard, item.name());
    let mut item = item.clone().named(&name);
    if let Item::Cable(cable) = &mut item {
        // One cable feeds a thing; another is for what has none yet.
        cable.to = unfed(yard).unwrap_or(cable.to.clone());
    }
    let mut taken = Vec::from([name]);
    let openings = match &mut item {
        Item::House(house) => &mut house.openings,
        Item::Wall(wall) => &mut wall.openings,
        _ => return item,
    };
    for opening in openings {
        let name = free_among(yard, &taken, &opening.name().0);
        *opening.name_mut() = Name::of(&name);
        taken.push(name);
    }
    item
}

/// A cable of this yard: from its first supply to what has none; `None` where there is no such thing.
fn connecting(yard: &Yard, mut cable: Cable) -> Option<Cable> {
    cable.from = Ref::to(&yard.supplies.first()?.name.0);
    cable.to = unfed(yard)?;
    Some(cable)
}

/// The first station that no cable feeds, else the first lamp.
fn unfed(yard: &Yard) -> Option<Ref> {
    let stations = yard.stations.iter().map(|station| &station.name);
    let mut names = stations.chain(yard.lamps.iter().map(|lamp| &lamp.name));
    names.find(|name| !yard.cables.iter().any(|cable| cable.to.0 == name.0)).map(|name| Ref::to(&name.0))
}

/// The name itself, or the first with a number after it that nothing in the yard bears: `cloth 2`. A number that stands
/// at its end already goes on from there.
pub fn free_name(yard: &Yard, name: &str) -> String {
    free_among(yard, &[], name)
}

fn free_among(yard: &Yard, others: &[String], name: &str) -> String {
    let taken: Vec<String> = yard.items().map(|item| item.name().to_owned()).chain(others.iter().cloned()).collect();
    if !taken.iter().any(|t| t == name) {
        return name.to_owned();
    }
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit()).trim_end();
    let stem = if stem.is_empty() { name } else { stem };
    (2..).map(|n| format!("{stem} {n}")).find(|name| !taken.contains(name)).unwrap_or_default()
}
