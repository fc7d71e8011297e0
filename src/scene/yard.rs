//! The whole scene, and its file.

use super::{
    Area, Arrangement, Cable, Climate, Clock, Cloth, Date, Evening, Fabric, FoldMirror, Form, Goods, Ground, House,
    Lamp, LampKind, Limit, Meter, Name, Owned, Plant, Positive, ProjectorClass, RearFilm, Ref, Spot, Station, Supply,
    Surface, Tape, Thing, Wall,
};
use crate::units::Style;

/// How lengths and light are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Metres and lux.
    #[default]
    Metric,
    /// Feet, inches and foot-candles beside lux.
    Feet,
}

/// What lies around the yard.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Setting {
    /// Fields and lanes, hardly a lamp.
    CountryLane,
    /// Houses and gardens along lit streets.
    #[default]
    Suburb,
    /// A town centre.
    Town,
    /// The middle of a city; what a town must keep to, a city must as well.
    City,
}

impl Setting {
    /// The one of three values, for a country lane, a suburb and a town, that goes with it.
    pub fn of_three<T: Copy>(self, [country, suburb, town]: [T; 3]) -> T {
        match self {
            Self::CountryLane => country,
            Self::Suburb => suburb,
            Self::Town | Self::City => town,
        }
    }
}

impl Units {
    /// The notation that measured lengths are shown in.
    pub fn style(self) -> Style {
        match self {
            Self::Metric => Style::Metres,
            Self::Feet => Style::FeetInches,
        }
    }
}

choice! { Setting as "setting" { CountryLane, Suburb, Town, City } }

choice! { Units as "choice of units" { Metric, Feet } }

noun! {
    /// A yard: ground, house, trees, street, and everything hung in it.
    Yard as "yard" {
        /// Version of this notation.
        format: u32 = 1,
        /// What it is called.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// How lengths and light are shown.
        units: Units = Units::Metric,
        /// How dark it is.
        evening: Evening = Evening::default(),
        /// What lies around it.
        setting: Setting = Setting::Suburb,
        /// When people come by: the first clock time and the last, which may be after midnight.
        visitors: (Clock, Clock) = VISITORS,
        /// First and last day of the show.
        season: Option<(Date, Date)> = None,
        /// The weather to be ready for.
        climate: Climate = Climate::default(),
        /// The ground.
        ground: Ground = Ground::default(),
        /// Drive, street, paths.
        areas: Vec<Area> = Vec::new(),
        /// Houses, sheds, dormers.
        houses: Vec<House> = Vec::new(),
        /// Free-standing walls.
        walls: Vec<Wall> = Vec::new(),
        /// What else is built.
        things: Vec<Thing> = Vec::new(),
        /// Hedges and trees.
        plants: Vec<Plant> = Vec::new(),
        /// Lamps that compete.
        lamps: Vec<Lamp> = Vec::new(),
        /// Places that people watch from.
        spots: Vec<Spot> = Vec::new(),
        /// Places where light is read.
        meters: Vec<Meter> = Vec::new(),
        /// Hanging cloths.
        cloths: Vec<Cloth> = Vec::new(),
        /// Rear films.
        films: Vec<RearFilm> = Vec::new(),
        /// Forms.
        forms: Vec<Form> = Vec::new(),
        /// Fold mirrors.
        mirrors: Vec<FoldMirror> = Vec::new(),
        /// Stations.
        stations: Vec<Station> = Vec::new(),
        /// Tapes that lie in it.
        tapes: Vec<Tape> = Vec::new(),
        /// Outlets, 12 V supplies and batteries.
        supplies: Vec<Supply> = Vec::new(),
        /// Cables between them and what they feed.
        cables: Vec<Cable> = Vec::new(),
        /// Price of a kWh from the mains, in your money.
        tariff: Option<Positive> = None,
        /// What this placing of the stations is called.
        arrangement: Name = Name::of("first"),
        /// Anything worth remembering of it.
        arrangement_note: String = String::new(),
        /// Other placings of the stations.
        arrangements: Vec<Arrangement> = Vec::new(),
        /// What may be spent, in your money.
        budget: Option<Positive> = None,
        /// What need not be bought.
        owned: Vec<Owned> = Vec::new(),
        /// Things that are not to be moved or changed by a slip of the hand.
        locked: Vec<Ref> = Vec::new(),
        /// Things that are put away: they neither stand nor shade nor shine.
        hidden: Vec<Ref> = Vec::new(),
        /// This yard's own surfaces, beside the catalogue's.
        surfaces: Vec<Surface> = Vec::new(),
        /// This yard's own fabrics, beside the catalogue's.
        fabrics: Vec<Fabric> = Vec::new(),
        /// This yard's own projector classes, beside the catalogue's.
        projectors: Vec<ProjectorClass> = Vec::new(),
        /// This yard's own kinds of lamp, beside the catalogue's.
        lamp_kinds: Vec<LampKind> = Vec::new(),
        /// This yard's own goods, beside the catalogue's.
        goods: Vec<Goods> = Vec::new(),
        /// This yard's own limits for words and findings, in place of the catalogue's.
        limits: Vec<Limit> = Vec::new(),
    }
}

/// When people come by unless a yard says otherwise: common practice, no source.
const VISITORS: (Clock, Clock) = (Clock::new(17, 0), Clock::new(21, 0));

noun! {
    /// What lies around a yard and who comes by: the part of it that is neither thing nor evening.
    Around as "surroundings", all optional {
        /// What lies around it.
        setting: Setting = Setting::Suburb,
        /// When people come by: the first clock time and the last, which may be after midnight.
        visitors: (Clock, Clock) = VISITORS,
        /// First and last day of the show.
        season: Option<(Date, Date)> = None,
        /// The weather to be ready for.
        climate: Climate = Climate::default(),
        /// Price of a kWh from the mains, in your money.
        tariff: Option<Positive> = None,
    }
}

impl Yard {
    /// What lies around it and who comes by.
    pub fn around(&self) -> Around {
        Around {
            setting: self.setting,
            visitors: self.visitors,
            season: self.season,
            climate: self.climate.clone(),
            tariff: self.tariff,
        }
    }

    /// The version of the notation that this program writes, and the newest that it reads.
    pub const FORMAT: u32 = 1;

    /// Whether the thing of this name is put away, by itself or with the wall, house or window that it belongs to.
    pub fn is_hidden(&self, name: &str) -> bool {
        if self.hidden.is_empty() {
            return false;
        }
        let listed = |name: &str| self.hidden.iter().any(|hidden| hidden.0 == name);
        let film = self.films.iter().find(|film| film.name.0 == name);
        let opening = film.and_then(|film| film.window.as_ref()).map_or(name, |window| window.0.as_str());
        let of_house = self.houses.iter().find(|h| h.openings.iter().any(|o| o.name().0 == opening));
        let of_wall = self.walls.iter().find(|w| w.openings.iter().any(|o| o.name().0 == opening));
        let host = of_house.map(|h| &h.name).or(of_wall.map(|w| &w.name));
        listed(name) || listed(opening) || host.is_some_and(|host| listed(&host.0))
    }

    /// A yard of this name with nothing in it but the ground and the night.
    pub fn named(name: &str) -> Self {
        Self {
            format: Self::FORMAT,
            name: Name::of(name),
            note: String::new(),
            units: Units::default(),
            evening: Evening::default(),
            setting: Setting::default(),
            visitors: VISITORS,
            season: None,
            climate: Climate::default(),
            ground: Ground::default(),
            areas: Vec::new(),
            houses: Vec::new(),
            walls: Vec::new(),
            things: Vec::new(),
            plants: Vec::new(),
            lamps: Vec::new(),
            spots: Vec::new(),
            meters: Vec::new(),
            cloths: Vec::new(),
            films: Vec::new(),
            forms: Vec::new(),
            mirrors: Vec::new(),
            stations: Vec::new(),
            tapes: Vec::new(),
            supplies: Vec::new(),
            cables: Vec::new(),
            tariff: None,
            arrangement: Name::of("first"),
            arrangement_note: String::new(),
            arrangements: Vec::new(),
            budget: None,
            owned: Vec::new(),
            locked: Vec::new(),
            hidden: Vec::new(),
            surfaces: Vec::new(),
            fabrics: Vec::new(),
            projectors: Vec::new(),
            lamp_kinds: Vec::new(),
            goods: Vec::new(),
            limits: Vec::new(),
        }
    }
}
