//! Plots as SVG, black on white.

mod season;

pub use season::season;
