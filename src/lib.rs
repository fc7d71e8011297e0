//! gauzelight: knows light.
pub mod geometry;
pub mod scene;
pub mod units;
