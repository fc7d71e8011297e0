//! Placing and building: where a station stands so that its picture fills what it lights.

mod free;
mod light_up;

pub use free::free_place;
pub use light_up::light_up;
