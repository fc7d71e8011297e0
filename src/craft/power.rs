//! Electricity from the outlet to the lens: what each station draws, what its cables lose and carry, what trips, what it costs.
//!
//! Watts are taken as volt-amperes: small supplies without power-factor correction draw up to twice that current from the mains. Copper is
//! taken at its working temperature. None of this is an approval: local codes and licensed people decide.

mod ampacity;
mod choose;
mod conductor;
mod draw;
mod flow;
mod net;
mod page;
mod place;
mod report;
mod trouble;
mod troubles;

pub use ampacity::{ampacity_a, fuse_a, sizes};
pub use conductor::{WORKING_C, area_mm2, ohms_per_m};
pub use flow::{Branch, Flow, constant_current, constant_power};
pub use place::{behind_window, brought_in, cable_m, feeds, is_indoors, way};
pub use report::{CablePower, Energy, Feed, PowerReport, StationPower, SupplyPower};
pub use trouble::{Problem, Trouble};
