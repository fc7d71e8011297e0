//! Renaming and removing: whatever names a thing follows it.

use super::{Refusal, unknown, unlocked};
use crate::scene::{Aim, Item, Name, Point, Ref, Station, SupplyKind, Yard};
use std::collections::BTreeSet;

/// Gives a thing another name; whatever names it follows.
pub(super) fn rename(yard: &mut Yard, from: &str, to: &str) -> Result<(), Refusal> {
    let to = to.trim();
    let item = yard.item(from).ok_or_else(|| unknown(from))?;
    unlocked(yard, from)?;
    if from == to {
        return Ok(());
    }
    if yard.item(to).is_some() {
        return Err(Refusal::new(format!("“{to}” is a name already"), "every name in a yard is used once"));
    }
    let is_station = matches!(item, Item::Station(_));
    if !yard.put(from, item.named(to)) {
        return Err(unknown(from));
    }
    let follow = |name: &mut Ref| {
        if name.0 == from {
            *name = Ref::to(to);
        }
    };
    each_ref(yard, follow);
    if is_station {
        // The same station has the same name in every arrangement.
        let others = yard.arrangements.iter_mut().flat_map(|one| &mut one.stations);
        others.filter(|station| station.name.0 == from).for_each(|station| station.name = Name::of(to));
    }
    Ok(())
}

/// Takes out a thing with what hangs on it.
pub(super) fn remove(yard: &mut Yard, name: &str, leaving: Option<&Point>) -> Result<(), Refusal> {
    let item = yard.item(name).ok_or_else(|| unknown(name))?;
    let gone = hanging_on(yard, &item);
    for name in &gone {
        unlocked(yard, name)?;
    }
    let aims = |aim: &Aim| matches!(aim, Aim::Thing(at) if gone.contains(&at.0));
    let left = |station: &&mut Station| !gone.contains(&station.name.0);
    let shown = yard.stations.iter_mut();
    for station in shown.chain(yard.arrangements.iter_mut().flat_map(|one| &mut one.stations)).filter(left) {
        station.mirrors.retain(|mirror| !gone.contains(&mirror.0));
        station.target.0.retain(|target| !gone.contains(&target.0));
        if aims(&station.aim) {
            let what = || Refusal::new(format!("“{}” aims at it", station.name.0), "aim that elsewhere first");
            station.aim = Aim::At(leaving.ok_or_else(what)?.clone());
        }
    }
    for spot in yard.spots.iter_mut().filter(|spot| aims(&spot.look)) {
        let what = || Refusal::new(format!("“{}” looks at it", spot.name.0), "let that look elsewhere first");
        spot.look = Aim::At(leaving.ok_or_else(what)?.clone());
    }
    for supply in &mut yard.supplies {
        if let SupplyKind::TwelveVolt(low) = &mut supply.kind {
            low.from.take_if(|from| gone.contains(&from.0));
        }
    }
    for name in &gone {
        // Openings go with their wall, and may be gone already.
        let _ = yard.take_out(name);
    }
    let elsewhere: BTreeSet<String> =
        yard.arrangements.iter().flat_map(|one| &one.stations).map(|station| station.name.0.clone()).collect();
    for list in [&mut yard.locked, &mut yard.hidden] {
        list.retain(|entry| !gone.contains(&entry.0) || elsewhere.contains(&entry.0));
    }
    Ok(())
}

/// The names that go when an item goes: its own, its openings', those of films in these windows, and of cables at it.
fn hanging_on(yard: &Yard, item: &Item) -> BTreeSet<String> {
    let openings = match item {
        Item::House(house) => house.openings.as_slice(),
        Item::Wall(wall) => wall.openings.as_slice(),
        _ => &[],
    };
    let mut gone: BTreeSet<String> = openings.iter().map(|opening| opening.name().0.clone()).collect();
    gone.insert(item.name().to_owned());
    let films = yard.films.iter().filter(|film| film.window.as_ref().is_some_and(|window| gone.contains(&window.0)));
    let films: Vec<String> = films.map(|film| film.name.0.clone()).collect();
    gone.extend(films);
    add_cables(yard, &mut gone);
    gone
}

/// Adds the cables that begin or end at what goes, and those that begin at these. A station that another arrangement has
/// keeps its own.
fn add_cables(yard: &Yard, gone: &mut BTreeSet<String>) {
    let elsewhere = |name: &str| yard.arrangements.iter().flat_map(|one| &one.stations).any(|s| s.name.0 == name);
    loop {
        let loose = |name: &Ref| gone.contains(&name.0) && !elsewhere(&name.0);
        let more =
            yard.cables.iter().find(|cable| !gone.contains(&cable.name.0) && (loose(&cable.from) || loose(&cable.to)));
        let Some(more) = more else { return };
        gone.insert(more.name.0.clone());
    }
}

/// Every reference to a thing of the yard.
fn each_ref(yard: &mut Yard, follow: impl Fn(&mut Ref)) {
    let aim = |aim: &mut Aim| {
        if let Aim::Thing(name) = aim {
            follow(name);
        }
    };
    let shown = yard.stations.iter_mut();
    for station in shown.chain(yard.arrangements.iter_mut().flat_map(|one| &mut one.stations)) {
        aim(&mut station.aim);
        station.target.0.iter_mut().for_each(&follow);
        station.mirrors.iter_mut().for_each(&follow);
    }
    yard.spots.iter_mut().for_each(|spot| aim(&mut spot.look));
    yard.films.iter_mut().filter_map(|film| film.window.as_mut()).for_each(&follow);
    yard.cables.iter_mut().flat_map(|cable| [&mut cable.from, &mut cable.to]).for_each(&follow);
    for supply in &mut yard.supplies {
        if let SupplyKind::TwelveVolt(low) = &mut supply.kind {
            low.from.iter_mut().for_each(&follow);
        }
    }
    yard.locked.iter_mut().chain(&mut yard.hidden).for_each(&follow);
}
