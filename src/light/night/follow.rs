//! A night that follows its yard: what a change leaves alone is not built again.

use super::{Night, NightFault, raise::optic, stations::throws_alike};
use crate::{
    frames::Shelf,
    geometry::{Outline, VeilKind, cloth_face},
    light::Ambient,
    scene::{Aim, Catalogue, Cloth, Count, Form, RearFilm, Ref, Yard},
};

/// What a night changed to follow its yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Followed {
    /// Nothing that gives or takes light.
    Nothing,
    /// Stations, lamps or sky.
    Lights,
    /// A hanging cloth or a film, and perhaps lights.
    Hung,
    /// Nothing yet: the yard must be built again.
    Rebuild,
}

impl Night {
    /// Follows a yard from `before`, which this night shows, to `after`: stations, lamps, the sky, hanging cloths as
    /// long as none is added or taken down, and the fabric of films. For anything else it answers [`Followed::Rebuild`] and stays as it is.
    ///
    /// A cloth's own shade on the sky's light stays behind until the yard is built again; [`Night::thorough`] says so.
    pub fn follow(
        &mut self,
        before: &Yard,
        after: &Yard,
        catalogue: &Catalogue,
        shelf: &Shelf,
    ) -> Result<Followed, NightFault> {
        if !stands_alike(before, after) {
            return Ok(Followed::Rebuild);
        }
        let mut followed = Followed::Nothing;
        let mut moved = Vec::new();
        for (index, cloth) in after.cloths.iter().enumerate() {
            if lit_alike(&before.cloths[index]) != lit_alike(cloth) {
                self.rehang(after, catalogue, &before.cloths[index], index)?;
                moved.push(cloth.name.0.as_str());
                followed = Followed::Hung;
            }
        }
        if !moved.is_empty() {
            self.forget();
            self.grow_veil_tree();
            self.thorough = false;
        }
        for (index, film) in after.films.iter().enumerate() {
            if before.films[index] != *film {
                self.forget();
                self.weave(after, catalogue, &film.name.0, &VeilKind::Film(index))?;
                (followed, self.thorough) = (Followed::Hung, false);
            }
        }
        let lamps_alike = before.lamps == after.lamps && before.hidden == after.hidden;
        let same_stations = before.stations.len() == after.stations.len()
            && before.stations.iter().zip(&after.stations).all(|(a, b)| a.name == b.name);
        if !lamps_alike || !same_stations || !shine_alike(before, after) || before.projectors != after.projectors {
            self.set_lights(after, catalogue, shelf)?;
            return Ok(followed.max(Followed::Lights));
        }
        if !same_above(before, after) {
            let ambient = Ambient::of(after);
            if Ambient::of(before) != ambient {
                self.set_ambient(&ambient);
                followed = followed.max(Followed::Lights);
            }
        }
        for (index, station) in after.stations.iter().enumerate() {
            let follows_cloth = matches!(&station.aim, Aim::Thing(at) if moved.contains(&at.0.as_str()));
            if !throws_alike(&before.stations[index], station) || follows_cloth {
                self.set_station(after, catalogue, shelf, index)?;
                followed = followed.max(Followed::Lights);
            }
        }
        Ok(followed)
    }

    /// Hangs one cloth as the yard now says.
    fn rehang(&mut self, yard: &Yard, catalogue: &Catalogue, before: &Cloth, index: usize) -> Result<(), NightFault> {
        let cloth = &yard.cloths[index];
        let Some(owner) = self.names.number(&cloth.name.0).map(|owner| owner as usize) else { return Ok(()) };
        let quad = cloth_face(cloth);
        (self.places[owner].middle, self.places[owner].face) = (quad.middle(), Some(quad));
        if let Some(veil) = self.veils.iter_mut().find(|veil| veil.owner as usize == owner) {
            veil.outline = Outline::Flat(quad);
        }
        let woven = |cloth: &Cloth| (cloth.fabric.clone(), cloth.behind.clone(), cloth.fullness);
        if woven(before) == woven(cloth) {
            return Ok(());
        }
        self.weave(yard, catalogue, &cloth.name.0, &VeilKind::Cloth(index))
    }

    /// Makes the tables anew of what hangs under a name.
    fn weave(&mut self, yard: &Yard, catalogue: &Catalogue, name: &str, kind: &VeilKind) -> Result<(), NightFault> {
        let named = |veil: &crate::light::VeilLight| self.names[veil.owner as usize] == name;
        let Some(veil) = self.veils.iter().position(named) else { return Ok(()) };
        let tables = optic(yard, catalogue, kind)?;
        let old = self.veils[veil].optic;
        if self.veils.iter().filter(|other| other.optic == old).count() > 1 {
            self.veils[veil].optic = self.optics.len() as u32;
            self.optics.push(tables);
        } else {
            self.optics[old as usize] = tables;
        }
        Ok(())
    }
}

/// A cloth without what light does not ask for: its note, its ties and its weights.
fn lit_alike(cloth: &Cloth) -> Cloth {
    Cloth { note: String::new(), ties: Count(1), hem_kg_m: 0.0, weight_g_m2: None, ..cloth.clone() }
}

/// Whether two yards have one evening in surroundings of one kind, and so one sky.
fn same_above(before: &Yard, after: &Yard) -> bool {
    before.evening == after.evening && before.setting == after.setting
}

/// Whether the same lamps shine in two yards of the same lamps, under the same of sun and moon.
fn shine_alike(before: &Yard, after: &Yard) -> bool {
    if same_above(before, after) && before.lamps == after.lamps {
        return true;
    }
    let body = |yard: &Yard| Ambient::of(yard).disc.map(|disc| disc.body);
    let (then, now) = (before.evening.clock(), after.evening.clock());
    after.lamps.iter().all(|lamp| lamp.shines(then) == lamp.shines(now)) && body(before) == body(after)
}

/// Whether two yards differ in nothing but what a night can follow.
fn stands_alike(before: &Yard, after: &Yard) -> bool {
    // What shades nothing: a light, a meter, a supply or a cable.
    let lights = |yard: &Yard, name: &str| {
        yard.stations.iter().any(|s| s.name.0 == name)
            || yard.lamps.iter().any(|l| l.name.0 == name)
            || yard.meters.iter().any(|m| m.name.0 == name)
            || yard.supplies.iter().any(|s| s.name.0 == name)
            || yard.cables.iter().any(|c| c.name.0 == name)
    };
    let differ = |a: &Yard, b: &Yard| {
        a.hidden.iter().filter(|name| !b.hidden.contains(name)).any(|name| !lights(a, &name.0) && !lights(b, &name.0))
    };
    let cloths_alike = before.cloths.len() == after.cloths.len()
        && before.cloths.iter().zip(&after.cloths).all(|(a, b)| a.name == b.name);
    let but_fabric = |film: &RearFilm| RearFilm { fabric: Ref::default(), ..film.clone() };
    let films_alike = before.films.len() == after.films.len()
        && before.films.iter().zip(&after.films).all(|(a, b)| but_fabric(a) == but_fabric(b));
    let unweighted =
        |yard: &Yard| -> Vec<Form> { yard.forms.iter().cloned().map(|form| form.with_ballast(0.0)).collect() };
    // What is built, and what it is made of.
    cloths_alike
        && !differ(before, after)
        && !differ(after, before)
        && before.evening.ground == after.evening.ground
        && before.evening.soaked == after.evening.soaked
        && before.ground == after.ground
        && before.areas == after.areas
        && before.houses == after.houses
        && before.walls == after.walls
        && before.things == after.things
        && before.plants == after.plants
        && films_alike
        && unweighted(before) == unweighted(after)
        && before.mirrors == after.mirrors
        && before.surfaces == after.surfaces
        && before.fabrics == after.fabrics
        && before.lamp_kinds == after.lamp_kinds
}
