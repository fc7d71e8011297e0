//! What a projector is given to show: pictures as linear light, and the pictures this project draws itself.
//!
//! A [`Frame`] is a picture already turned from display codes to linear light, with the smaller copies of
//! itself that let it be seen from far away without shimmer, and with the few numbers a light budget asks
//! of it: how bright it is on average, at its brightest, and where its figure stands on its black ground.
//!
//! A [`Photo`] is a picture that nobody throws but that is looked at and measured on, and so keeps all its pixels.
//!
//! The room must not know of projectors, surfaces, lumens or windows. A texel here is a fraction of
//! whatever full white turns out to be; what that white is worth on a cloth is another room's business.

mod builtin;
pub mod card;
mod decode;
pub mod drawing;
mod error;
mod extent;
mod frame;
mod level;
mod photo;
mod shelf;
pub mod srgb;

pub use builtin::{builtin, builtin_names};
pub use error::FrameError;
pub use extent::Extent;
pub use frame::Frame;
pub use level::Level;
pub use photo::Photo;
pub use shelf::Shelf;
