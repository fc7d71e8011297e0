//! Houses and free-standing walls.

use super::{Angle, Name, Opening, Point, Ref, Size};

noun! {
    /// A box of four walls with openings really cut, under a roof.
    House as "house" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Foot of the front wall's middle, on its outer face; above ground for a dormer.
        at: Point,
        /// Along the front.
        width: Size,
        /// From front to back.
        depth: Size,
        /// From foot to eaves.
        height: Size,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Wall covering.
        surface: Ref = Ref::to("painted boards, pale"),
        /// Thickness of the walls.
        wall: Size = Size::metres(0.2),
        /// The roof.
        roof: Roof = Roof::default(),
        /// Windows and doors.
        openings: Vec<Opening> = Vec::new(),
    }
}

noun! {
    /// A free-standing wall.
    Wall as "wall" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Foot of its middle, on the face it shows.
        at: Point,
        /// Along the wall.
        width: Size,
        /// From foot to top.
        height: Size,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("painted boards, pale"),
        /// Thickness.
        thickness: Size = Size::metres(0.2),
        /// Windows and doors; every side is the front.
        openings: Vec<Opening> = Vec::new(),
    }
}

/// Which way a ridge runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ridge {
    /// Along the front, so that the front sees a slope.
    #[default]
    Along,
    /// From front to back, so that the front is a gable.
    Across,
}

choice! { Ridge as "way for a ridge" { Along, Across } }

/// A roof.
#[derive(Clone, Debug, PartialEq)]
pub enum Roof {
    /// No roof: open above.
    Open,
    /// Flat.
    Flat(SlopedRoof),
    /// Two slopes and two gables.
    Gable(Gable),
    /// Four slopes.
    Hip(Hip),
    /// One slope, high at the front, low at the back.
    Shed(SlopedRoof),
}

choice! { Roof as "roof" { Open, Flat(SlopedRoof), Gable(Gable), Hip(Hip), Shed(SlopedRoof) } }

impl Roof {
    /// Its covering, where there is a roof.
    pub fn surface(&self) -> Option<&Ref> {
        match self {
            Self::Open => None,
            Self::Flat(roof) | Self::Shed(roof) => Some(&roof.surface),
            Self::Gable(roof) => Some(&roof.surface),
            Self::Hip(roof) => Some(&roof.surface),
        }
    }
}

impl Default for Roof {
    fn default() -> Self {
        Self::Gable(Gable::default())
    }
}

noun! {
    /// Two slopes and two gables.
    Gable as "gable roof", all optional {
        /// Slope.
        pitch_deg: Angle = Angle(38.0),
        /// How far it reaches beyond the walls.
        overhang: Size = Size::metres(0.35),
        /// Which way the ridge runs.
        ridge: Ridge = Ridge::Along,
        /// Covering.
        surface: Ref = Ref::to("roof tiles, dark"),
    }
}

noun! {
    /// Four slopes.
    Hip as "hip roof", all optional {
        /// Slope.
        pitch_deg: Angle = Angle(30.0),
        /// How far it reaches beyond the walls.
        overhang: Size = Size::metres(0.35),
        /// Covering.
        surface: Ref = Ref::to("roof tiles, dark"),
    }
}

noun! {
    /// One slope, or a flat roof.
    SlopedRoof as "roof", all optional {
        /// Slope; a flat roof ignores it.
        pitch_deg: Angle = Angle(10.0),
        /// How far it reaches beyond the walls.
        overhang: Size = Size::metres(0.2),
        /// Covering.
        surface: Ref = Ref::to("roof tiles, dark"),
    }
}
