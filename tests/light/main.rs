//! The photometric core against closed forms, brute force and common practice: what it computes, and that nothing in
//! it may be left out unnoticed.

mod adapted;
mod almanac;
mod bright;
mod crowds;
mod evening;
mod eye;
mod furnace;
mod glass;
mod kept_sky;
mod lab;
mod lamps;
mod legible;
mod means;
mod measured;
mod meters;
mod optics;
mod orientation;
mod practice;
mod projector;
mod readings;
mod sight;
mod signal;
mod strokes;
mod suburb;
mod targets;
mod town;
mod trees;
mod ways;
mod yardsticks;
