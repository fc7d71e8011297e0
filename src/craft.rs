//! Placing and building: where a station stands so that its picture fills what it lights, a point by tapes, entries of an own
//! catalogue by what people know, weather boxes, electricity from the outlet to the lens, and what keeps a station running.

mod claim;
mod free;
mod light_up;
pub mod money;
pub mod own;
pub mod power;
pub mod running;
pub mod shelter;
pub mod tapes;

pub use claim::{CLAIMS, Measured, nearest_class, real_lumens};
pub use free::free_place;
pub use light_up::light_up;
