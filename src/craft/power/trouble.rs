//! What can be wrong with a power plan.

use crate::units::border;
use serde::Serialize;

/// What a problem is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Trouble {
    /// Mains outdoors with no GFCI or RCD before it.
    NoGuard,
    /// A supply that rain gets into.
    Rain,
    /// No fuse at a supply of low voltage, or one that does not fit.
    Fuse,
    /// Wire for low voltage on the mains.
    MadeFor,
    /// A lead for indoors that lies outdoors on the mains.
    IndoorLead,
    /// A cable thinner than what is sold for the mains outdoors.
    Thin,
    /// More through a cable than it may carry.
    Cable,
    /// More drawn from a supply than it can give, or for longer.
    Supply,
    /// Too many volts lost on the way.
    Drop,
    /// More drawn from a projector's USB outlet than it gives.
    Usb,
    /// What runs on the mains, or on other volts, at a supply of low voltage.
    Volts,
}

/// Something wrong, as one sentence with its number, its limit and what would help.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Problem {
    /// What it is about.
    pub trouble: Trouble,
    /// The supply, cable, station or lamp that it is about.
    pub of: String,
    /// Whether the show, or somebody, suffers by it; otherwise it is worth a look.
    pub grave: bool,
    /// The number.
    #[serde(serialize_with = "border::light")]
    pub number: f64,
    /// The limit that it is held against.
    #[serde(serialize_with = "border::light")]
    pub limit: f64,
    /// Unit of both; empty for a ratio.
    pub unit: &'static str,
    /// What is wrong.
    pub says: String,
    /// What would help.
    pub helps: String,
}
