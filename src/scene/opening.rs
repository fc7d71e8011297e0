//! Windows and doors, and the room behind them.

use super::{Count, Fraction, Name, Positive, Ref, Size};
use crate::units::Length;

/// The side of a house.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Side {
    /// Where the house faces.
    #[default]
    Front,
    /// Opposite.
    Back,
    /// Left as seen by somebody who looks at the front.
    Left,
    /// Right as seen by somebody who looks at the front.
    Right,
}

choice! { Side as "side" { Front, Back, Left, Right } }

/// The glass of a window.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Glazing {
    /// No glass.
    Unglazed,
    /// One pane.
    #[default]
    Single,
    /// Two panes.
    Double,
}

choice! { Glazing as "glazing" { Unglazed, Single, Double } }

/// An opening in a wall.
#[derive(Clone, Debug, PartialEq)]
pub enum Opening {
    /// A window.
    Window(Window),
    /// A door.
    Door(Door),
}

choice! { Opening as "opening" { Window(Window), Door(Door) } }

impl Opening {
    /// Its name.
    pub fn name(&self) -> &Name {
        match self {
            Self::Window(noun) => &noun.name,
            Self::Door(noun) => &noun.name,
        }
    }

    /// Its name, to change.
    pub(crate) fn name_mut(&mut self) -> &mut Name {
        match self {
            Self::Window(noun) => &mut noun.name,
            Self::Door(noun) => &mut noun.name,
        }
    }

    /// Its lower left corner in its wall: from the left, and up, m.
    pub fn corner(&self) -> (f64, f64) {
        match self {
            Self::Window(noun) => (noun.left.m, noun.sill.m),
            Self::Door(noun) => (noun.left.m, noun.sill.m),
        }
    }

    /// Its width and height, m.
    pub fn size(&self) -> (f64, f64) {
        match self {
            Self::Window(noun) => (noun.width.0.m, noun.height.0.m),
            Self::Door(noun) => (noun.width.0.m, noun.height.0.m),
        }
    }

    /// The wall of its house that it is in.
    pub fn side(&self) -> Side {
        match self {
            Self::Window(noun) => noun.side,
            Self::Door(noun) => noun.side,
        }
    }

    /// Its lower left corner, to change.
    pub(crate) fn corner_mut(&mut self) -> (&mut Length, &mut Length) {
        match self {
            Self::Window(noun) => (&mut noun.left, &mut noun.sill),
            Self::Door(noun) => (&mut noun.left, &mut noun.sill),
        }
    }
}

noun! {
    /// A window, its glass 4 cm behind the wall's outer face.
    Window as "window" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Which wall of the house.
        side: Side = Side::Front,
        /// From the left end of the wall, as seen from outside.
        left: Length,
        /// From the foot of the wall.
        sill: Length,
        /// Clear width of the opening.
        width: Size,
        /// Clear height of the opening.
        height: Size,
        /// Its glass.
        glazing: Glazing = Glazing::Single,
        /// An insect screen, by its name in the catalogue of fabrics.
        screen: Option<Ref> = None,
        /// Panes across and up, divided by glazing bars.
        bars: (Count, Count) = (Count(1), Count(1)),
        /// Width of a glazing bar.
        bar: Size = Size::metres(0.03),
        /// Whether it is a way out in a fire, which nothing may cover.
        escape: bool = false,
        /// The room behind.
        room: Room = Room::default(),
    }
}

noun! {
    /// A door.
    Door as "door" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Which wall of the house.
        side: Side = Side::Front,
        /// From the left end of the wall, as seen from outside.
        left: Length,
        /// From the foot of the wall.
        sill: Length = Length::metres(0.0),
        /// Clear width of the opening.
        width: Size,
        /// Clear height of the opening.
        height: Size = Size::metres(2.0),
        /// Whether it stands open, so that the room behind shows.
        open: bool = false,
        /// Covering of the leaf.
        surface: Ref = Ref::to("wood, dark"),
        /// The room behind.
        room: Room = Room::default(),
    }
}

noun! {
    /// The room behind an opening: a box that the opening looks into.
    Room as "room", all optional {
        /// From the wall's inner face to the room's far wall.
        depth: Size = Size::metres(3.0),
        /// Height of its floor above the foot of the wall; 0.9 m below the sill where nothing is said, and no lower than the foot.
        floor: Option<Length> = None,
        /// Of its walls, floor and ceiling.
        reflectance: Fraction = Fraction(0.5),
        /// A lamp in it.
        lamp: Option<RoomLamp> = None,
    }
}

noun! {
    /// A lamp in the middle of a room, 40 cm below its ceiling.
    RoomLamp as "room lamp", all optional {
        /// What it gives.
        lumens: Positive = Positive(400.0),
        /// Whether it is on.
        on: bool = false,
    }
}
