//! What a yard is made of, as surfaces.

use super::Quad;
use crate::scene::Glazing;
use glam::Vec3;

/// Points and the triangles between them, counter-clockwise as seen from outside.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Mesh {
    /// Corners, m.
    pub points: Vec<Vec3>,
    /// Three corners each.
    pub triangles: Vec<[u32; 3]>,
}

/// Something opaque.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid {
    /// Index of its name in [`Built::names`].
    pub owner: u32,
    /// Its surface, cut so that no edge is longer than the sky values need.
    pub mesh: Mesh,
    /// Name of the surface in the catalogue; empty where `reflectance` says it.
    pub surface: String,
    /// Reflectance in place of a named surface.
    pub reflectance: Option<f32>,
    /// Whether rain and snow cannot reach it.
    pub indoors: bool,
}

/// The outline of something see-through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outline {
    /// A flat cloth, film or pane.
    Flat(Quad),
    /// An upright egg: middle and radii along x, y, z.
    Egg {
        /// Its middle.
        middle: Vec3,
        /// Radii along x, y and z.
        radii: Vec3,
    },
    /// An upright box turned about the vertical.
    Crate {
        /// Its middle.
        middle: Vec3,
        /// Half its extent along its own x, y and z.
        half: Vec3,
        /// Cosine and sine of its turn about y.
        turn: [f32; 2],
    },
}

/// What is see-through there.
#[derive(Clone, Debug, PartialEq)]
pub enum VeilKind {
    /// Hanging cloth: index in the yard's list.
    Cloth(usize),
    /// Rear film: index in the yard's list.
    Film(usize),
    /// A glazing unit with perhaps an insect screen, by its name in the catalogue.
    Pane(Glazing, Option<String>),
    /// A shell of leaves; a ray that passes the crown crosses it twice.
    Crown {
        /// Share of light that finds its way straight through the whole crown.
        gap: f32,
        /// Name of the leaves' surface in the catalogue.
        surface: String,
    },
}

/// Something that lets light through.
#[derive(Clone, Debug, PartialEq)]
pub struct Veil {
    /// Index of its name in [`Built::names`].
    pub owner: u32,
    /// Where it is.
    pub outline: Outline,
    /// What it is.
    pub kind: VeilKind,
}

/// Where a named thing is, for aiming and for standing before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Index of its name in [`Built::names`].
    pub owner: u32,
    /// Where an aim at it points.
    pub middle: Vec3,
    /// Its flat face, where it has one.
    pub face: Option<Quad>,
}

/// All surfaces of a yard.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Built {
    /// Names of the things, in the order they were built.
    pub names: Vec<String>,
    /// One for each name.
    pub places: Vec<Place>,
    /// Opaque things.
    pub solids: Vec<Solid>,
    /// See-through things.
    pub veils: Vec<Veil>,
    /// Fold mirrors: index in the yard's list is the index here; owner and silvered face.
    pub mirrors: Vec<(u32, Quad)>,
}

impl Built {
    /// The place of a named thing.
    pub fn place(&self, name: &str) -> Option<Place> {
        self.names.iter().position(|n| n == name).map(|i| self.places[i])
    }
}
