//! The few ways in which closed meshes are made.

pub mod bounds;
pub mod carve;
pub mod cut;
pub mod lattice;
pub mod loft;
pub mod polyhedron;
