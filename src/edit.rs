//! What can be done to a yard, as values: menu, key, drag and test all use [`Edit`]; and undo.
//!
//! An edit works on a copy. Where the copy would not pass the checks of a yard file, the edit is refused with the reason, and
//! nothing has changed.

mod arrange;
mod fresh;
mod front;
mod history;
mod names;
mod starter;

pub use fresh::{copy_of, free_name, fresh, kinds, usual};
pub use front::{Front, Measured};
pub use history::History;
pub use starter::Starter;

use crate::scene::{
    Around, Catalogue, Evening, FARTHEST_M, Fabric, Fault, Goods, Ground, Item, LampKind, Name, Owned, Point, Positive,
    ProjectorClass, Ref, Surface, Tape, Units, Yard,
};
use std::path::Path;

/// Something done to a yard.
#[derive(Clone, Debug, PartialEq)]
pub enum Edit {
    /// Adds a thing under a name that is free.
    Add(Item),
    /// Puts a changed thing in the place of the one of its name.
    Change(Item),
    /// Gives a thing another name; whatever names it follows.
    Rename {
        /// The name it has.
        from: String,
        /// The name it gets.
        to: String,
    },
    /// Takes out a thing, with the openings that are in it and the films that hang in those.
    Remove {
        /// Its name.
        name: String,
        /// Where what is aimed at it goes on pointing.
        leaving: Option<Point>,
    },
    /// Locks a thing against slips of the hand, or unlocks it.
    Lock(String, bool),
    /// Puts a thing away, or brings it out again.
    Hide(String, bool),
    /// Another evening.
    Evening(Evening),
    /// Other surroundings and visitors.
    Around(Around),
    /// Another ground.
    Ground(Ground),
    /// Another choice of units.
    Units(Units),
    /// Lays another tape.
    LayTape(Tape),
    /// Takes all tapes away.
    DropTapes,
    /// Another name for the yard.
    Title(String),
    /// Adds a fabric of the yard's own, or changes it.
    OwnFabric(Fabric),
    /// Adds a projector class of the yard's own, or changes it.
    OwnProjector(ProjectorClass),
    /// Adds a surface of the yard's own, or changes it.
    OwnSurface(Surface),
    /// Adds a kind of lamp of the yard's own, or changes it.
    OwnLampKind(LampKind),
    /// Adds goods of the yard's own, or changes them.
    OwnGoods(Goods),
    /// What may be spent, in your money; nothing said where there is none.
    Budget(Option<Positive>),
    /// What is owned already, all of it.
    Owned(Vec<Owned>),
    /// Keeps the stations as they stand under this name, and goes on with a copy called by it.
    KeepAs(String),
    /// Shows another arrangement; the one shown is kept.
    Arrange(String),
    /// Drops an arrangement that is not shown.
    DropArrangement(String),
    /// Several, as one.
    All(Vec<Self>),
}

/// Why an edit was refused; the yard is as it was.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{0}")]
pub struct Refusal(pub Fault);

impl Refusal {
    fn new(what: impl Into<String>, remedy: &str) -> Self {
        Self(Fault::new(what).remedy(remedy))
    }
}

impl Edit {
    /// The yard after it. `folder` is where pictures are looked for, if anywhere.
    pub fn apply(&self, yard: &Yard, catalogue: &Catalogue, folder: Option<&Path>) -> Result<Yard, Refusal> {
        let mut after = yard.clone();
        self.apply_to(&mut after)?;
        let faults = after.check(catalogue, folder);
        match faults.iter().find(|fault| fault.severity == crate::scene::Severity::Error) {
            Some(fault) => Err(Refusal(fault.clone())),
            None => Ok(after),
        }
    }

    /// What it does, in a few words: `move` of an undo entry.
    pub fn label(&self) -> String {
        match self {
            Self::Add(item) => format!("add {}", item.name()),
            Self::Change(item) => format!("change {}", item.name()),
            Self::Rename { from, to } => format!("rename {from} to {to}"),
            Self::Remove { name, .. } => format!("remove {name}"),
            Self::Lock(name, true) => format!("lock {name}"),
            Self::Lock(name, false) => format!("unlock {name}"),
            Self::Hide(name, true) => format!("put away {name}"),
            Self::Hide(name, false) => format!("bring out {name}"),
            Self::Evening(_) => "change the evening".to_owned(),
            Self::Around(_) => "change who comes by".to_owned(),
            Self::Ground(_) => "change the ground".to_owned(),
            Self::Units(_) => "change the units".to_owned(),
            Self::LayTape(_) => "lay a tape".to_owned(),
            Self::DropTapes => "take all tapes away".to_owned(),
            Self::Title(name) => format!("call the yard {name}"),
            Self::OwnFabric(entry) => format!("own {}", entry.name.0),
            Self::OwnProjector(entry) => format!("own {}", entry.name.0),
            Self::OwnSurface(entry) => format!("own {}", entry.name.0),
            Self::OwnLampKind(entry) => format!("own {}", entry.name.0),
            Self::OwnGoods(entry) => format!("own {}", entry.name.0),
            Self::Budget(_) => "change the budget".to_owned(),
            Self::Owned(_) => "change what is owned".to_owned(),
            Self::KeepAs(name) => format!("keep the stations as {name}"),
            Self::Arrange(name) => format!("arrange as {name}"),
            Self::DropArrangement(name) => format!("drop the arrangement {name}"),
            // What it comes to is said last.
            Self::All(edits) => edits.last().map_or_else(String::new, Self::label),
        }
    }

    fn apply_to(&self, yard: &mut Yard) -> Result<(), Refusal> {
        match self {
            Self::Add(item) => add(yard, item),
            Self::Change(item) => change(yard, item),
            Self::Rename { from, to } => names::rename(yard, from, to),
            Self::Remove { name, leaving } => names::remove(yard, name, leaving.as_ref()),
            Self::Lock(name, on) => mark(yard, name, *on, |yard| &mut yard.locked),
            Self::Hide(name, on) => {
                unlocked(yard, name)?;
                mark(yard, name, *on, |yard| &mut yard.hidden)
            }
            Self::Evening(evening) => {
                yard.evening = evening.clone();
                Ok(())
            }
            Self::Around(around) => {
                (yard.setting, yard.visitors, yard.season) = (around.setting, around.visitors, around.season);
                (yard.climate, yard.tariff) = (around.climate.clone(), around.tariff);
                Ok(())
            }
            Self::Ground(ground) => {
                yard.ground = ground.clone();
                Ok(())
            }
            Self::Units(units) => {
                yard.units = *units;
                Ok(())
            }
            Self::LayTape(tape) => {
                near([&tape.from, &tape.to].into_iter().flat_map(|end| end.0.iter().map(|length| length.m)))?;
                yard.tapes.push(tape.clone());
                Ok(())
            }
            Self::DropTapes => {
                yard.tapes.clear();
                Ok(())
            }
            Self::Title(name) => {
                yard.name = Name::of(name.trim());
                Ok(())
            }
            Self::OwnFabric(entry) => own(&mut yard.fabrics, entry, |e| &e.name),
            Self::OwnProjector(entry) => own(&mut yard.projectors, entry, |e| &e.name),
            Self::OwnSurface(entry) => own(&mut yard.surfaces, entry, |e| &e.name),
            Self::OwnLampKind(entry) => own(&mut yard.lamp_kinds, entry, |e| &e.name),
            Self::OwnGoods(entry) => own(&mut yard.goods, entry, |e| &e.name),
            Self::Budget(budget) => {
                yard.budget = *budget;
                Ok(())
            }
            Self::Owned(owned) => {
                yard.owned.clone_from(owned);
                Ok(())
            }
            Self::KeepAs(name) => arrange::keep_as(yard, name),
            Self::Arrange(name) => arrange::arrange(yard, name),
            Self::DropArrangement(name) => arrange::drop(yard, name),
            Self::All(edits) => edits.iter().try_for_each(|edit| edit.apply_to(yard)),
        }
    }
}

fn add(yard: &mut Yard, item: &Item) -> Result<(), Refusal> {
    near(item.points().into_iter().flatten())?;
    if yard.item(item.name()).is_some() {
        return Err(Refusal::new(format!("“{}” is a name already", item.name()), "every name in a yard is used once"));
    }
    if let Item::Opening(host, _) = item {
        unlocked(yard, host)?;
    }
    if yard.put(item.name(), item.clone()) { Ok(()) } else { Err(no_wall(item)) }
}

fn change(yard: &mut Yard, item: &Item) -> Result<(), Refusal> {
    let name = item.name();
    let before = yard.item(name).ok_or_else(|| unknown(name))?;
    unlocked(yard, name)?;
    near(item.points().into_iter().flatten())?;
    // An opening may move to another wall; anything else stays what it is.
    if std::mem::discriminant(&before) != std::mem::discriminant(item) {
        let what = format!("“{name}” is a {}, not a {}", before.word(), item.word());
        return Err(Refusal::new(what, "remove it and add another"));
    }
    let moves_house = |host: &str| matches!(&before, Item::Opening(old, _) if old != host);
    if let Item::Opening(host, _) = item
        && moves_house(host)
        && (yard.item(host).is_none() || !yard.take_out(name))
    {
        return Err(no_wall(item));
    }
    if yard.put(name, item.clone()) { Ok(()) } else { Err(no_wall(item)) }
}

/// Refuses coordinates that no file may hold.
fn near(coordinates: impl IntoIterator<Item = f64>) -> Result<(), Refusal> {
    match coordinates.into_iter().find(|at| !(-FARTHEST_M..=FARTHEST_M).contains(at)) {
        Some(at) => Err(Refusal::new(format!("{at:.0} m is too far away"), "a yard reaches 500 m from its middle")),
        None => Ok(()),
    }
}

fn no_wall(item: &Item) -> Refusal {
    let host = if let Item::Opening(host, _) = item { host } else { "" };
    Refusal::new(format!("no wall or house is called “{host}”"), "name one that this yard has")
}

fn unknown(name: &str) -> Refusal {
    Refusal::new(format!("nothing in this yard is called “{name}”"), "it may have been removed or renamed")
}

fn unlocked(yard: &Yard, name: &str) -> Result<(), Refusal> {
    if yard.locked.iter().any(|locked| locked.0 == name) {
        return Err(Refusal::new(format!("“{name}” is locked"), "unlock it first"));
    }
    Ok(())
}

/// Puts a name into a list or takes it out.
fn mark(yard: &mut Yard, name: &str, on: bool, list: impl Fn(&mut Yard) -> &mut Vec<Ref>) -> Result<(), Refusal> {
    if yard.item(name).is_none() {
        return Err(unknown(name));
    }
    let list = list(yard);
    list.retain(|entry| entry.0 != name);
    if on {
        list.push(Ref::to(name));
    }
    Ok(())
}

fn own<T: Clone>(list: &mut Vec<T>, entry: &T, name: impl Fn(&T) -> &Name) -> Result<(), Refusal> {
    match list.iter_mut().find(|one| name(one) == name(entry)) {
        Some(one) => *one = entry.clone(),
        None => list.push(entry.clone()),
    }
    Ok(())
}
