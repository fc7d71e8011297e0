//! Shapes into triangles and see-through surfaces; the ray trees over them; picking; photos of a wall squared up.
//!
//! Knows nouns and metres, no light: what a surface does with light is said by name only.

mod built;
pub mod crossing;
mod quad;
mod shapes;
pub mod square_up;
mod tree;

pub use built::{Built, Chamber, Crowd, Member, Mesh, Outline, Place, Solid, Veil, VeilKind};
pub use quad::Quad;
pub use shapes::{ENOUGH, Frame, build, cloth_face};
pub use tree::{Node, Sight, Tree};
