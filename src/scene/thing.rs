//! What else stands in a yard.

use super::{Angle, Count, Name, Point, Ref, Size};

/// Something built that stands in a yard.
#[derive(Clone, Debug, PartialEq)]
pub enum Thing {
    /// A plain box.
    Block(Block),
    /// A flight of steps.
    Steps(Steps),
    /// A fence.
    Fence(Fence),
    /// A post.
    Post(Post),
    /// A pergola.
    Pergola(Pergola),
    /// A porch.
    Porch(Porch),
    /// A bench.
    Bench(Bench),
}

choice! {
    Thing as "thing" {
        Block(Block), Steps(Steps), Fence(Fence), Post(Post), Pergola(Pergola), Porch(Porch), Bench(Bench),
    }
}

impl Thing {
    /// Its name.
    pub fn name(&self) -> &Name {
        match self {
            Self::Block(noun) => &noun.name,
            Self::Steps(noun) => &noun.name,
            Self::Fence(noun) => &noun.name,
            Self::Post(noun) => &noun.name,
            Self::Pergola(noun) => &noun.name,
            Self::Porch(noun) => &noun.name,
            Self::Bench(noun) => &noun.name,
        }
    }

    /// Its covering.
    pub fn surface(&self) -> &Ref {
        match self {
            Self::Block(noun) => &noun.surface,
            Self::Steps(noun) => &noun.surface,
            Self::Fence(noun) => &noun.surface,
            Self::Post(noun) => &noun.surface,
            Self::Pergola(noun) => &noun.surface,
            Self::Porch(noun) => &noun.surface,
            Self::Bench(noun) => &noun.surface,
        }
    }
}

noun! {
    /// A plain box: a chimney, a chest, a doorstep.
    Block as "block" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Along x before turning.
        width: Size,
        /// Upwards.
        height: Size,
        /// Along z before turning.
        depth: Size,
        /// Turn about the vertical, counter-clockwise from above.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("wood, pale"),
    }
}

noun! {
    /// A flight of steps that rises away from its front.
    Steps as "steps" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of the lowest step's front edge, on the ground.
        at: Point,
        /// Along x before turning.
        width: Size,
        /// How many.
        count: Count = Count(3),
        /// Height of one.
        rise: Size = Size::metres(0.17),
        /// Depth of one.
        run: Size = Size::metres(0.28),
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("concrete"),
    }
}

noun! {
    /// A fence of upright boards between two points on the ground.
    Fence as "fence" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// Height.
        height: Size = Size::metres(1.1),
        /// Width of a board.
        board: Size = Size::metres(0.09),
        /// Space between boards; 0 makes it solid.
        gap: crate::units::Length = crate::units::Length::metres(0.06),
        /// Covering.
        surface: Ref = Ref::to("painted boards, pale"),
    }
}

noun! {
    /// A square post.
    Post as "post" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Height.
        height: Size,
        /// Side of its square section.
        width: Size = Size::metres(0.1),
        /// Covering.
        surface: Ref = Ref::to("wood, dark"),
    }
}

noun! {
    /// Four posts that carry beams and rafters.
    Pergola as "pergola" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Along x before turning, over the posts.
        width: Size,
        /// Along z before turning, over the posts.
        depth: Size,
        /// To the top of the rafters.
        height: Size = Size::metres(2.4),
        /// Side of a post.
        post: Size = Size::metres(0.1),
        /// How many rafters.
        rafters: Count = Count(6),
        /// Turn about the vertical, counter-clockwise from above.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("wood, dark"),
    }
}

noun! {
    /// A deck with two front posts and a flat roof, against a wall behind it.
    Porch as "porch" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its back edge, on the ground.
        at: Point,
        /// Along x before turning.
        width: Size,
        /// Away from the wall.
        depth: Size,
        /// Height of the deck.
        deck: Size = Size::metres(0.3),
        /// To the underside of the roof, from the ground.
        height: Size = Size::metres(2.5),
        /// Side of a post.
        post: Size = Size::metres(0.12),
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("painted boards, pale"),
    }
}

noun! {
    /// A bench with a back.
    Bench as "bench" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Length of the seat.
        width: Size = Size::metres(1.4),
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("wood, dark"),
    }
}
