//! Meters: places where light is read.

use super::{Angle, Name, Point};

/// What a meter stands for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum MeterKind {
    /// A place that somebody wants to know of.
    #[default]
    Plain,
    /// A neighbour's window, whose owner asked for none of this light.
    NeighbourWindow,
}

choice! { MeterKind as "kind of meter" { Plain, NeighbourWindow } }

noun! {
    /// A small white face at which illuminance is read.
    Meter as "meter" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Where it is.
        at: Point,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Tilt of its face; 90 looks straight up, -90 down.
        tilt_deg: Angle = Angle(0.0),
        /// What it stands for.
        kind: MeterKind = MeterKind::Plain,
    }
}

impl Meter {
    /// The unit vector that its face looks along.
    pub fn facing(&self) -> glam::Vec3 {
        let (turn, tilt) = (self.turn_deg.radians(), self.tilt_deg.radians());
        glam::Vec3::new(turn.sin() * tilt.cos(), tilt.sin(), turn.cos() * tilt.cos())
    }
}
