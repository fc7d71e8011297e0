//! One thing of a yard, of whatever kind: what can be chosen, moved, copied and removed.

mod entry;
mod host;
mod pose;

use super::read::Noun;
use super::{
    Area, Cable, Cloth, FoldMirror, Form, House, Lamp, Meter, Name, Opening, Plant, RearFilm, Spot, Station, Supply,
    Thing, Wall, Yard,
};
pub use entry::EntryFault;

/// One thing of a yard.
#[derive(Clone, Debug, PartialEq)]
#[expect(clippy::large_enum_variant, reason = "one is made for each act of a hand and soon dropped; a yard holds none")]
pub enum Item {
    /// Drive, street, path.
    Area(Area),
    /// House, shed, dormer.
    House(House),
    /// Free-standing wall.
    Wall(Wall),
    /// Window or door, in the wall or house of that name.
    Opening(String, Opening),
    /// What else is built.
    Thing(Thing),
    /// Hedge or tree.
    Plant(Plant),
    /// Lamp.
    Lamp(Lamp),
    /// Viewing spot.
    Spot(Spot),
    /// Meter.
    Meter(Meter),
    /// Hanging cloth.
    Cloth(Cloth),
    /// Rear film.
    Film(RearFilm),
    /// Form.
    Form(Form),
    /// Fold mirror.
    Mirror(FoldMirror),
    /// Station.
    Station(Station),
    /// Outlet, 12 V supply or battery.
    Supply(Supply),
    /// Cable.
    Cable(Cable),
}

/// Runs the same for whatever noun an item holds.
macro_rules! with_noun {
    ($item:expr, $noun:ident => $body:expr) => {
        match $item {
            Item::Area($noun) => $body,
            Item::House($noun) => $body,
            Item::Wall($noun) => $body,
            Item::Opening(_, Opening::Window($noun)) => $body,
            Item::Opening(_, Opening::Door($noun)) => $body,
            Item::Thing(Thing::Block($noun)) => $body,
            Item::Thing(Thing::Steps($noun)) => $body,
            Item::Thing(Thing::Fence($noun)) => $body,
            Item::Thing(Thing::Post($noun)) => $body,
            Item::Thing(Thing::Pergola($noun)) => $body,
            Item::Thing(Thing::Porch($noun)) => $body,
            Item::Thing(Thing::Bench($noun)) => $body,
            Item::Plant(Plant::Hedge($noun)) => $body,
            Item::Plant(Plant::Tree($noun)) => $body,
            Item::Lamp($noun) => $body,
            Item::Spot($noun) => $body,
            Item::Meter($noun) => $body,
            Item::Cloth($noun) => $body,
            Item::Film($noun) => $body,
            Item::Form(Form::Figure($noun)) => $body,
            Item::Form(Form::Bag($noun)) => $body,
            Item::Form(Form::Gourd($noun)) => $body,
            Item::Form(Form::Globe($noun)) => $body,
            Item::Form(Form::Turned($noun)) => $body,
            Item::Mirror($noun) => $body,
            Item::Station($noun) => $body,
            Item::Supply($noun) => $body,
            Item::Cable($noun) => $body,
        }
    };
}
use with_noun;

/// What a person calls a noun.
fn word_of<N: Noun>(_: &N) -> &'static str {
    N::WORD
}

impl Item {
    /// Its name.
    pub fn name(&self) -> &str {
        with_noun!(self, noun => &noun.name.0)
    }

    /// The same thing under another name.
    pub fn named(mut self, name: &str) -> Self {
        with_noun!(&mut self, noun => noun.name = Name::of(name));
        self
    }

    /// What a person calls its kind: `hanging cloth`.
    pub fn word(&self) -> &'static str {
        with_noun!(self, noun => word_of(noun))
    }

    /// Whether a picture can be thrown onto it: it has a surface on which light stays.
    pub fn takes_light(&self) -> bool {
        match self {
            Self::Area(_)
            | Self::House(_)
            | Self::Wall(_)
            | Self::Opening(..)
            | Self::Thing(_)
            | Self::Plant(_)
            | Self::Cloth(_)
            | Self::Film(_)
            | Self::Form(_) => true,
            Self::Lamp(_)
            | Self::Spot(_)
            | Self::Meter(_)
            | Self::Mirror(_)
            | Self::Station(_)
            | Self::Supply(_)
            | Self::Cable(_) => false,
        }
    }

    /// Whether something can be aimed at it: it takes light or sends it on.
    pub fn can_be_aimed_at(&self) -> bool {
        self.takes_light() || matches!(self, Self::Mirror(_))
    }

    /// What its owner wrote beside it.
    pub fn note(&self) -> &str {
        with_noun!(self, noun => &noun.note)
    }
}

impl Yard {
    /// The thing of this name.
    pub fn item(&self, name: &str) -> Option<Item> {
        self.items().find(|item| item.name() == name)
    }

    /// Every thing, in the order of its file; openings after the wall or house that they are in.
    pub fn items(&self) -> impl Iterator<Item = Item> + '_ {
        let openings = |host: &str, list: &[Opening]| -> Vec<Item> {
            list.iter().map(|opening| Item::Opening(host.to_owned(), opening.clone())).collect()
        };
        let houses = self.houses.iter().flat_map(move |house| {
            std::iter::once(Item::House(house.clone())).chain(openings(&house.name.0, &house.openings))
        });
        let walls = self.walls.iter().flat_map(move |wall| {
            std::iter::once(Item::Wall(wall.clone())).chain(openings(&wall.name.0, &wall.openings))
        });
        houses
            .chain(walls)
            .chain(self.things.iter().cloned().map(Item::Thing))
            .chain(self.plants.iter().cloned().map(Item::Plant))
            .chain(self.areas.iter().cloned().map(Item::Area))
            .chain(self.lamps.iter().cloned().map(Item::Lamp))
            .chain(self.spots.iter().cloned().map(Item::Spot))
            .chain(self.meters.iter().cloned().map(Item::Meter))
            .chain(self.cloths.iter().cloned().map(Item::Cloth))
            .chain(self.films.iter().cloned().map(Item::Film))
            .chain(self.forms.iter().cloned().map(Item::Form))
            .chain(self.mirrors.iter().cloned().map(Item::Mirror))
            .chain(self.stations.iter().cloned().map(Item::Station))
            .chain(self.supplies.iter().cloned().map(Item::Supply))
            .chain(self.cables.iter().cloned().map(Item::Cable))
    }
}
