//! Shapes into triangles and see-through surfaces; the ray trees over them; picking.
//!
//! Knows nouns and metres, no light: what a surface does with light is said by name only.

mod built;
mod quad;

pub use built::{Built, Mesh, Outline, Place, Solid, Veil, VeilKind};
pub use quad::Quad;
