//! The laws of an eye in the dark: what it can tell apart, how fine, and what bright things beside take from it.
//!
//! Luminances in cd/m², illuminances at the eye in lx, sizes in minutes of arc, angles in degrees, ages in years. Each law
//! is a fit to what people saw in laboratories; yards are kinder in some ways and harsher in others.

mod acuity;
mod adaptation;
mod mesopic;
mod threshold;
mod veil;

pub use acuity::{acuity, finest};
pub use adaptation::adapted_threshold;
pub use mesopic::{cones, mesopic};
pub use threshold::{Polarity, Task, ageing, threshold};
pub use veil::{driving_veil, veil};

/// Below this the laws are not asked, cd/m²: a thousandth of a moonless sky, which is dark to anybody.
const DARKEST: f64 = 1e-6;
