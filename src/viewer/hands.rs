//! The hands: what is held, where it may go, and the edits that follow.

mod grip;
mod marks;
mod snap;
mod tape;

pub use grip::{Grip, Held, Step};
pub use marks::{Mark, Sign, anchor, marks};
pub use snap::step_m;
pub use tape::{TapeHeld, corner_near};
