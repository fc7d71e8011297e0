//! Cables, as they are drawn along ground and walls.

use super::{Fraction, Gauge, Name, Point, Ref};

/// What a cable is made for, as its jacket says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MadeFor {
    /// Nobody says.
    #[default]
    Unsaid,
    /// The mains, outdoors: a rubber cord, or one marked for it.
    Outdoors,
    /// The mains, indoors: a household lead.
    Indoors,
    /// Low voltage alone: bell wire, speaker or landscape wire.
    LowVoltage,
}

choice! { MadeFor as "make of a cable" { Unsaid, Outdoors, Indoors, LowVoltage } }

noun! {
    /// A cable of two conductors and, on the mains, earth.
    Cable as "cable" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// What it is plugged into: a supply; a station or lamp that is fed already; or another cable, at its end.
        from: Ref,
        /// What it feeds: a station, a lamp or a 12 V supply.
        to: Ref,
        /// Where it runs between the two, corner by corner.
        via: Vec<Point> = Vec::new(),
        /// How thick each conductor is.
        gauge: Gauge,
        /// What it is made for.
        made_for: MadeFor = MadeFor::Unsaid,
        /// Whether each conductor is one solid wire.
        solid: bool = false,
        /// Whether it is a flexible cord that lies open; otherwise it is bundled, buried or in a wall.
        cord: bool = true,
        /// More of it than the way is long, for loops and drips, as a share: common practice, no source.
        slack: Fraction = Fraction(0.1),
        /// Plugs and couplings along it, beyond its own two ends.
        joints: u32 = 0,
    }
}
