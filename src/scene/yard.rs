//! The whole scene, and its file.

use super::{
    Area, Cloth, Evening, Fabric, FoldMirror, Form, Ground, House, Lamp, LampKind, Name, Plant, ProjectorClass,
    RearFilm, Spot, Station, Surface, Thing, Wall,
};

/// How lengths and light are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Metres and lux.
    #[default]
    Metric,
    /// Feet, inches and foot-candles beside lux.
    Feet,
}

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
        /// This yard's own surfaces, beside the catalogue's.
        surfaces: Vec<Surface> = Vec::new(),
        /// This yard's own fabrics, beside the catalogue's.
        fabrics: Vec<Fabric> = Vec::new(),
        /// This yard's own projector classes, beside the catalogue's.
        projectors: Vec<ProjectorClass> = Vec::new(),
        /// This yard's own kinds of lamp, beside the catalogue's.
        lamp_kinds: Vec<LampKind> = Vec::new(),
    }
}

impl Yard {
    /// The version of the notation that this program writes, and the newest that it reads.
    pub const FORMAT: u32 = 1;

    /// A yard of this name with nothing in it but the ground and the night.
    pub fn named(name: &str) -> Self {
        Self {
            format: Self::FORMAT,
            name: Name::of(name),
            note: String::new(),
            units: Units::default(),
            evening: Evening::default(),
            ground: Ground::default(),
            areas: Vec::new(),
            houses: Vec::new(),
            walls: Vec::new(),
            things: Vec::new(),
            plants: Vec::new(),
            lamps: Vec::new(),
            spots: Vec::new(),
            cloths: Vec::new(),
            films: Vec::new(),
            forms: Vec::new(),
            mirrors: Vec::new(),
            stations: Vec::new(),
            surfaces: Vec::new(),
            fabrics: Vec::new(),
            projectors: Vec::new(),
            lamp_kinds: Vec::new(),
        }
    }
}
