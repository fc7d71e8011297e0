//! What people and programs do to yard files: none may panic, and each fault must be told where it stands.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod broken;
mod evening;
mod faults;
mod files;
mod fuzz;
mod kills;
mod lamp_files;
mod mutants;
mod own;
mod power;
mod reports;
mod saving;
mod senseless;
mod survives;
mod syntax;
mod together;
mod values;
mod writing;

/// A yard that uses every noun, field and variant.
const RICH: &str = include_str!("rich.ron");

/// A small yard without a fault, for one thing at a time to be broken in it.
const GOOD: &str = include_str!("good.ron");
