//! Plots as SVG: black on white, with their units, to be read in grey as well.

mod points;
mod season;

pub use points::{Axis, Mark, Point, Points};
pub use season::season;
