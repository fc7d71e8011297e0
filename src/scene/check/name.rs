//! Names: what has one, and that no two things share it.

use super::known::Known;
use crate::scene::{Fault, Faults, Name, Opening, Yard};
use crate::units::{is_invisible, is_obeyed};
use std::collections::HashMap;

/// More characters than this fit no card and no hang sheet.
const LONGEST: usize = 60;

/// A name with what has it.
pub(super) struct Named<'a> {
    pub name: &'a Name,
    /// Where it stands: `houses[0].openings[2]`.
    pub path: String,
    /// What a person calls its bearer.
    pub word: &'static str,
    /// What light does on its bearer.
    pub body: Body,
}

/// What light does on a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Body {
    /// It has no surface that counts.
    None,
    /// It is sent on: something can be aimed there, and nothing is lit.
    Mirror,
    /// It stays: a picture can be thrown there.
    Lit,
}

/// Every name of a yard that must be unique in it.
pub(super) fn all(yard: &Yard) -> Vec<Named<'_>> {
    let mut all = Vec::new();
    let mut add = |name, path, word, body| all.push(Named { name, path, word, body });
    for (i, area) in yard.areas.iter().enumerate() {
        add(&area.name, format!("areas[{i}]"), "area", Body::Lit);
    }
    for (i, house) in yard.houses.iter().enumerate() {
        add(&house.name, format!("houses[{i}]"), "house", Body::Lit);
        for (j, opening) in house.openings.iter().enumerate() {
            add(opening.name(), format!("houses[{i}].openings[{j}]"), word_of(opening), Body::Lit);
        }
    }
    for (i, wall) in yard.walls.iter().enumerate() {
        add(&wall.name, format!("walls[{i}]"), "wall", Body::Lit);
        for (j, opening) in wall.openings.iter().enumerate() {
            add(opening.name(), format!("walls[{i}].openings[{j}]"), word_of(opening), Body::Lit);
        }
    }
    for (i, thing) in yard.things.iter().enumerate() {
        add(thing.name(), format!("things[{i}]"), "thing", Body::Lit);
    }
    for (i, plant) in yard.plants.iter().enumerate() {
        add(plant.name(), format!("plants[{i}]"), "plant", Body::Lit);
    }
    for (i, lamp) in yard.lamps.iter().enumerate() {
        add(&lamp.name, format!("lamps[{i}]"), "lamp", Body::None);
    }
    for (i, spot) in yard.spots.iter().enumerate() {
        add(&spot.name, format!("spots[{i}]"), "viewing spot", Body::None);
    }
    for (i, meter) in yard.meters.iter().enumerate() {
        add(&meter.name, format!("meters[{i}]"), "meter", Body::None);
    }
    for (i, cloth) in yard.cloths.iter().enumerate() {
        add(&cloth.name, format!("cloths[{i}]"), "hanging cloth", Body::Lit);
    }
    for (i, film) in yard.films.iter().enumerate() {
        add(&film.name, format!("films[{i}]"), "rear film", Body::Lit);
    }
    for (i, form) in yard.forms.iter().enumerate() {
        add(form.name(), format!("forms[{i}]"), "form", Body::Lit);
    }
    for (i, mirror) in yard.mirrors.iter().enumerate() {
        add(&mirror.name, format!("mirrors[{i}]"), "fold mirror", Body::Mirror);
    }
    for (i, station) in yard.stations.iter().enumerate() {
        add(&station.name, format!("stations[{i}]"), "station", Body::None);
    }
    for (i, supply) in yard.supplies.iter().enumerate() {
        add(&supply.name, format!("supplies[{i}]"), "supply", Body::None);
    }
    for (i, cable) in yard.cables.iter().enumerate() {
        add(&cable.name, format!("cables[{i}]"), "cable", Body::None);
    }
    all
}

fn word_of(opening: &Opening) -> &'static str {
    match opening {
        Opening::Window(_) => "window",
        Opening::Door(_) => "door",
    }
}

/// Reports names that cannot be one, and names that two things have.
pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    let yard = known.yard;
    unusable(&yard.name, "name", faults);
    let mut bearers: HashMap<&str, &str> = HashMap::new();
    for named in &known.names {
        let field = format!("{}.name", named.path);
        unusable(named.name, &field, faults);
        match bearers.get(named.name.0.as_str()) {
            Some(first) => {
                let what = format!("“{}” is the name of {first} already", named.name.0);
                faults.push_in(&field, Fault::new(what).remedy("every name in a yard is used once"));
            }
            None => {
                bearers.insert(&named.name.0, &named.path);
            }
        }
    }
    unique_entries("surfaces", yard.surfaces.iter().map(|entry| &entry.name), faults);
    unique_entries("fabrics", yard.fabrics.iter().map(|entry| &entry.name), faults);
    unique_entries("projectors", yard.projectors.iter().map(|entry| &entry.name), faults);
    unique_entries("lamp_kinds", yard.lamp_kinds.iter().map(|entry| &entry.name), faults);
    unique_entries("goods", yard.goods.iter().map(|entry| &entry.name), faults);
    unique_entries("limits", yard.limits.iter().map(|entry| &entry.name), faults);
}

/// A yard's own catalogue entries may be called like a thing, but not like each other.
fn unique_entries<'a>(list: &str, names: impl Iterator<Item = &'a Name>, faults: &mut Faults) {
    let mut first: HashMap<&str, usize> = HashMap::new();
    for (index, name) in names.enumerate() {
        let field = format!("{list}[{index}].name");
        unusable(name, &field, faults);
        if let Some(first) = first.get(name.0.as_str()) {
            let what = format!("“{}” is the name of {list}[{first}] already", name.0);
            faults.push_in(&field, Fault::new(what).remedy("every name is used once"));
        } else {
            first.insert(&name.0, index);
        }
    }
}

/// Reports a name that cannot be one.
pub(super) fn unusable(name: &Name, field: &str, faults: &mut Faults) {
    let name = &name.0;
    let what = if name.trim().is_empty() {
        "this name is empty"
    } else if name.chars().all(is_invisible) {
        "nothing of this name can be seen"
    } else if name.chars().count() > LONGEST {
        "this name is too long"
    } else if name.chars().any(is_obeyed) {
        "this name holds a line break, a tab or another control character"
    } else if name.trim() != name {
        "this name begins or ends with a space"
    } else {
        return;
    };
    faults.push_in(field, Fault::new(what).remedy(format!("1 to {LONGEST} characters on one line")));
}
