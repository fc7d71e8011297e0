//! Which entries of a catalogue a yard names.

use super::{Opening, Yard};

impl Yard {
    /// Every projector class that it names, those of all its arrangements; as often as it does.
    pub fn projectors_named(&self) -> impl Iterator<Item = &str> {
        let others = self.arrangements.iter().flat_map(|one| &one.stations);
        self.stations.iter().chain(others).map(|station| station.projector.0.as_str())
    }

    /// Every fabric, insect screen and film that it names; as often as it does.
    pub fn fabrics_named(&self) -> impl Iterator<Item = &str> {
        let hung = self.cloths.iter().flat_map(|cloth| cloth.behind.iter().chain([&cloth.fabric]));
        let screens = self.openings().filter_map(|opening| match opening {
            Opening::Window(window) => window.screen.as_ref(),
            Opening::Door(_) => None,
        });
        hung.chain(self.films.iter().map(|film| &film.fabric)).chain(screens).map(|name| name.0.as_str())
    }

    /// Every surface that it names; as often as it does.
    pub fn surfaces_named(&self) -> impl Iterator<Item = &str> {
        let doors = self.openings().filter_map(|opening| match opening {
            Opening::Door(door) => Some(&door.surface),
            Opening::Window(_) => None,
        });
        let houses = self.houses.iter().flat_map(|house| [Some(&house.surface), house.roof.surface()]).flatten();
        let ground = std::iter::once(&self.ground.surface).chain(self.areas.iter().map(|area| &area.surface));
        let walls = self.walls.iter().map(|wall| &wall.surface);
        let things = self.things.iter().map(|thing| thing.surface());
        let plants = self.plants.iter().map(|plant| plant.surface());
        let forms = self.forms.iter().map(|form| form.surface());
        let all = ground.chain(houses).chain(walls).chain(doors).chain(things).chain(plants).chain(forms);
        all.map(|name| name.0.as_str())
    }

    /// Every kind of lamp that it names; as often as it does.
    pub fn lamp_kinds_named(&self) -> impl Iterator<Item = &str> {
        self.lamps.iter().map(|lamp| lamp.kind.0.as_str())
    }

    fn openings(&self) -> impl Iterator<Item = &Opening> {
        self.houses.iter().flat_map(|house| &house.openings).chain(self.walls.iter().flat_map(|wall| &wall.openings))
    }
}
