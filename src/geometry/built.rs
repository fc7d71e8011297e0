//! What a yard is made of, as surfaces.

use super::{Frame, Quad};
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

impl Mesh {
    /// Takes in all triangles of another mesh.
    pub fn append(&mut self, other: &Mesh) {
        let first = self.points.len() as u32;
        self.points.extend(&other.points);
        self.triangles.extend(other.triangles.iter().map(|t| t.map(|p| p + first)));
    }

    /// The three corners of each triangle.
    pub fn corners(&self) -> impl Iterator<Item = [Vec3; 3]> + '_ {
        self.triangles.iter().map(|t| t.map(|p| self.points[p as usize]))
    }

    /// Sum of the areas of its triangles, m².
    pub fn area(&self) -> f32 {
        self.corners().map(|[a, b, c]| 0.5 * (b - a).cross(c - a).length()).sum()
    }

    /// What a closed mesh encloses, m³; negative where its triangles face inwards.
    pub fn volume(&self) -> f32 {
        self.corners().map(|[a, b, c]| a.cross(b).dot(c) / 6.0).sum()
    }

    /// Length of its longest edge, m; 0 without triangles.
    pub fn longest_edge(&self) -> f32 {
        self.corners().flat_map(|[a, b, c]| [a.distance(b), b.distance(c), c.distance(a)]).fold(0.0, f32::max)
    }

    /// Whether every edge is used exactly twice, once each way.
    pub fn is_closed(&self) -> bool {
        let mut edges: Vec<[u32; 2]> = self.triangles.iter().flat_map(|&[a, b, c]| [[a, b], [b, c], [c, a]]).collect();
        edges.sort_unstable();
        edges.windows(2).all(|w| w[0] != w[1]) && edges.iter().all(|&[a, b]| edges.binary_search(&[b, a]).is_ok())
    }
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

/// Opaque bodies that are alike but for where they stand: kept once.
#[derive(Clone, Debug, PartialEq)]
pub struct Crowd {
    /// The surface of each, in its own axes, cut like a [`Solid`]'s.
    pub mesh: Mesh,
    /// Name of the surface in the catalogue.
    pub surface: String,
    /// Where they stand.
    pub members: Vec<Member>,
}

/// One of a crowd.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// Index of its name in [`Built::names`].
    pub owner: u32,
    /// Its own axes.
    pub frame: Frame,
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

/// The room behind an opening: an upright box.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chamber {
    /// The window or door that it lies behind: index of its name in [`Built::names`].
    pub owner: u32,
    /// Its middle.
    pub middle: Vec3,
    /// Half its extent along its own x, y and z.
    pub half: Vec3,
    /// Cosine and sine of its turn about y.
    pub turn: [f32; 2],
}

impl Chamber {
    /// Where its lamp hangs: in the middle, 40 cm below the ceiling; in a very low room half-way up.
    pub fn lamp(&self) -> Vec3 {
        self.middle + (self.half.y - 0.4).max(0.0) * Vec3::Y
    }
}

/// All surfaces of a yard.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Built {
    /// Names of the things, in the order they were built.
    pub names: Vec<String>,
    /// One for each name.
    pub places: Vec<Place>,
    /// Opaque things that stand alone.
    pub solids: Vec<Solid>,
    /// Those of which there are many.
    pub crowds: Vec<Crowd>,
    /// See-through things.
    pub veils: Vec<Veil>,
    /// Rooms behind openings; a house without a roof has none of its own, and its court counts for every opening.
    pub chambers: Vec<Chamber>,
    /// Fold mirrors: index in the yard's list is the index here; owner and silvered face.
    pub mirrors: Vec<(u32, Quad)>,
}

impl Built {
    /// Opaque triangles that are held: those of a crowd once.
    pub fn triangles(&self) -> usize {
        let crowds = self.crowds.iter().map(|crowd| crowd.mesh.triangles.len());
        self.solids.iter().map(|solid| solid.mesh.triangles.len()).chain(crowds).sum()
    }

    /// Opaque triangles that stand there: those of a crowd for each of it.
    pub fn standing(&self) -> usize {
        let crowds = self.crowds.iter().map(|crowd| crowd.members.len().saturating_mul(crowd.mesh.triangles.len()));
        let solids = self.solids.iter().map(|solid| solid.mesh.triangles.len());
        solids.chain(crowds).fold(0, usize::saturating_add)
    }

    /// The place of a named thing.
    pub fn place(&self, name: &str) -> Option<Place> {
        self.names.iter().position(|n| n == name).map(|i| self.places[i])
    }
}
