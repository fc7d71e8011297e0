//! What a projector is given to show: pictures as linear light, and the pictures this project draws itself.
//!
//! A [`Frame`] is a picture already turned from a picture's codes to linear light, with the smaller copies of
//! itself that let it be seen from far away without shimmer, and with the few numbers a light budget asks
//! of it: how bright it is on average, at its brightest, and where its figure stands on its black ground.
//!
//! A [`Picture`] lies on the shelf and is made into one frame for each [`Response`] that projectors answer it by.
//!
//! A [`Photo`] is a picture that nobody throws but that is looked at and measured on, and so keeps all its pixels.
//!
//! The room must not know of lenses, surfaces, lumens or windows. A texel here is a fraction of
//! whatever full white turns out to be; what that white is worth on a cloth is another room's business.

mod builtin;
pub mod card;
mod decode;
pub mod drawing;
mod error;
mod extent;
mod frame;
mod level;
mod outline;
mod photo;
mod picture;
mod response;
mod shelf;
pub mod srgb;

pub use builtin::{builtin, builtin_names};
pub use error::FrameError;
pub use extent::Extent;
pub use frame::Frame;
pub use level::Level;
pub use outline::Outline;
pub use photo::Photo;
pub use picture::Picture;
pub use response::{Response, Transfer};
pub use shelf::Shelf;
