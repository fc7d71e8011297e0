//! Placing and building: where a station stands so that its picture fills what it lights, a point by tapes, entries of an own
//! catalogue by what people know, weather boxes, electricity from the outlet to the lens, what keeps a station running, what the wind
//! does, what is to be bought, and what to be careful of.

pub mod cautions;
mod claim;
mod free;
mod light_up;
pub mod money;
mod outdoors;
pub mod own;
pub mod power;
pub mod running;
pub mod shelter;
pub mod shopping;
pub mod tapes;
pub mod wind;

pub use claim::{CLAIMS, Measured, nearest_class, real_lumens};
pub use free::free_place;
pub use light_up::light_up;
pub use outdoors::is_outdoors;
