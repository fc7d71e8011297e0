//! Where an item stands in its yard's lists.

use super::Item;
use crate::scene::{Opening, Yard};

/// Puts a value in the place of the one of that name, or at the end where there is none.
fn place<T>(list: &mut Vec<T>, value: T, is_it: impl Fn(&T) -> bool) {
    match list.iter_mut().find(|one| is_it(one)) {
        Some(one) => *one = value,
        None => list.push(value),
    }
}

impl Yard {
    /// Puts an item in the place of the one named `name`, or at the end of its list; `false` where it is an opening of a
    /// wall that is not there.
    #[must_use]
    pub(crate) fn put(&mut self, name: &str, item: Item) -> bool {
        match item {
            Item::Area(noun) => place(&mut self.areas, noun, |n| n.name.0 == name),
            Item::House(noun) => place(&mut self.houses, noun, |n| n.name.0 == name),
            Item::Wall(noun) => place(&mut self.walls, noun, |n| n.name.0 == name),
            Item::Opening(host, opening) => {
                let Some(list) = self.openings_mut(&host) else { return false };
                place(list, opening, |n| n.name().0 == name);
            }
            Item::Thing(noun) => place(&mut self.things, noun, |n| n.name().0 == name),
            Item::Plant(noun) => place(&mut self.plants, noun, |n| n.name().0 == name),
            Item::Lamp(noun) => place(&mut self.lamps, noun, |n| n.name.0 == name),
            Item::Spot(noun) => place(&mut self.spots, noun, |n| n.name.0 == name),
            Item::Meter(noun) => place(&mut self.meters, noun, |n| n.name.0 == name),
            Item::Cloth(noun) => place(&mut self.cloths, noun, |n| n.name.0 == name),
            Item::Film(noun) => place(&mut self.films, noun, |n| n.name.0 == name),
            Item::Form(noun) => place(&mut self.forms, noun, |n| n.name().0 == name),
            Item::Mirror(noun) => place(&mut self.mirrors, noun, |n| n.name.0 == name),
            Item::Station(noun) => place(&mut self.stations, noun, |n| n.name.0 == name),
            Item::Supply(noun) => place(&mut self.supplies, noun, |n| n.name.0 == name),
            Item::Cable(noun) => place(&mut self.cables, noun, |n| n.name.0 == name),
        }
        true
    }

    /// Takes out the thing of this name, an opening out of its wall; `false` where nothing has it.
    #[must_use]
    pub(crate) fn take_out(&mut self, name: &str) -> bool {
        let before = self.count();
        self.areas.retain(|n| n.name.0 != name);
        self.houses.retain(|n| n.name.0 != name);
        self.walls.retain(|n| n.name.0 != name);
        self.things.retain(|n| n.name().0 != name);
        self.plants.retain(|n| n.name().0 != name);
        self.lamps.retain(|n| n.name.0 != name);
        self.spots.retain(|n| n.name.0 != name);
        self.meters.retain(|n| n.name.0 != name);
        self.cloths.retain(|n| n.name.0 != name);
        self.films.retain(|n| n.name.0 != name);
        self.forms.retain(|n| n.name().0 != name);
        self.mirrors.retain(|n| n.name.0 != name);
        self.stations.retain(|n| n.name.0 != name);
        self.supplies.retain(|n| n.name.0 != name);
        self.cables.retain(|n| n.name.0 != name);
        let houses = self.houses.iter_mut().map(|house| &mut house.openings);
        for openings in houses.chain(self.walls.iter_mut().map(|wall| &mut wall.openings)) {
            openings.retain(|n| n.name().0 != name);
        }
        self.count() < before
    }

    /// The openings of the house or wall of this name.
    fn openings_mut(&mut self, host: &str) -> Option<&mut Vec<Opening>> {
        let house = self.houses.iter_mut().find(|n| n.name.0 == host).map(|n| &mut n.openings);
        house.or_else(|| self.walls.iter_mut().find(|n| n.name.0 == host).map(|n| &mut n.openings))
    }

    fn count(&self) -> usize {
        self.items().count()
    }
}
