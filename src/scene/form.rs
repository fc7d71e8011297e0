//! Forms that a face or figure is thrown onto, all closed bodies.

use super::{Angle, Count, Name, Point, Ref, Size, TurnedPoint};

/// A form.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// A standing, robed figure.
    Figure(Figure),
    /// A blow-up bag: a rounded upright box.
    Bag(Bag),
    /// A ribbed gourd.
    Gourd(Gourd),
    /// A ball.
    Globe(Globe),
    /// A body turned about the vertical from a list of radii.
    Turned(Turned),
}

choice! { Form as "form" { Figure(Figure), Bag(Bag), Gourd(Gourd), Globe(Globe), Turned(Turned) } }

impl Form {
    /// Its name.
    pub fn name(&self) -> &Name {
        match self {
            Self::Figure(noun) => &noun.name,
            Self::Bag(noun) => &noun.name,
            Self::Gourd(noun) => &noun.name,
            Self::Globe(noun) => &noun.name,
            Self::Turned(noun) => &noun.name,
        }
    }

    /// Its covering.
    pub fn surface(&self) -> &Ref {
        match self {
            Self::Figure(noun) => &noun.surface,
            Self::Bag(noun) => &noun.surface,
            Self::Gourd(noun) => &noun.surface,
            Self::Globe(noun) => &noun.surface,
            Self::Turned(noun) => &noun.surface,
        }
    }

    /// Where it stands, and its turn about the vertical.
    pub fn stance(&self) -> (&Point, Angle) {
        match self {
            Self::Figure(noun) => (&noun.at, noun.turn_deg),
            Self::Bag(noun) => (&noun.at, noun.turn_deg),
            Self::Gourd(noun) => (&noun.at, noun.turn_deg),
            Self::Globe(noun) => (&noun.at, Angle(0.0)),
            Self::Turned(noun) => (&noun.at, Angle(0.0)),
        }
    }

    /// The body alone: unturned at the origin, without name, note and ballast. Forms alike in that are one body in several places.
    #[must_use]
    pub fn body(&self) -> Self {
        let (name, note, at, ballast_kg) = (Name::of(""), String::new(), Point::default(), 0.0);
        let turn_deg = Angle(0.0);
        match self.clone() {
            Self::Figure(noun) => Self::Figure(Figure { name, note, at, turn_deg, ballast_kg, ..noun }),
            Self::Bag(noun) => Self::Bag(Bag { name, note, at, turn_deg, ballast_kg, ..noun }),
            Self::Gourd(noun) => Self::Gourd(Gourd { name, note, at, turn_deg, ballast_kg, ..noun }),
            Self::Globe(noun) => Self::Globe(Globe { name, note, at, ballast_kg, ..noun }),
            Self::Turned(noun) => Self::Turned(Turned { name, note, at, ballast_kg, ..noun }),
        }
    }

    /// Weight put on its foot, kg.
    pub fn ballast_kg(&self) -> f64 {
        match self {
            Self::Figure(noun) => noun.ballast_kg,
            Self::Bag(noun) => noun.ballast_kg,
            Self::Gourd(noun) => noun.ballast_kg,
            Self::Globe(noun) => noun.ballast_kg,
            Self::Turned(noun) => noun.ballast_kg,
        }
    }

    /// The same form with another weight on its foot, kg.
    #[must_use]
    pub fn with_ballast(mut self, kg: f64) -> Self {
        match &mut self {
            Self::Figure(noun) => noun.ballast_kg = kg,
            Self::Bag(noun) => noun.ballast_kg = kg,
            Self::Gourd(noun) => noun.ballast_kg = kg,
            Self::Globe(noun) => noun.ballast_kg = kg,
            Self::Turned(noun) => noun.ballast_kg = kg,
        }
        self
    }
}

noun! {
    /// A standing, robed figure: mantle, shoulders, head.
    Figure as "standing figure" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// To the crown of its head.
        height: Size = Size::metres(1.8),
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("white cloth, matt"),
        /// Weight put on its foot, kg.
        ballast_kg: f64 = 0.0,
    }
}

noun! {
    /// A blow-up bag: a rounded upright box.
    Bag as "blow-up bag" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Widest across.
        width: Size,
        /// From foot to top.
        height: Size,
        /// Front to back.
        depth: Size,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("white cloth, matt"),
        /// Weight put on its foot, kg.
        ballast_kg: f64 = 0.0,
    }
}

noun! {
    /// A ribbed gourd.
    Gourd as "gourd" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Widest across.
        width: Size = Size::metres(0.36),
        /// From foot to the dip at the stem.
        height: Size = Size::metres(0.3),
        /// Ribs all around.
        ribs: Count = Count(10),
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Covering.
        surface: Ref = Ref::to("gourd skin, pale"),
        /// Weight put on its foot or inside it, kg.
        ballast_kg: f64 = 0.0,
    }
}

noun! {
    /// A ball.
    Globe as "globe" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Its lowest point.
        at: Point,
        /// Across.
        diameter: Size,
        /// Covering.
        surface: Ref = Ref::to("white cloth, matt"),
        /// Weight put on its foot, kg.
        ballast_kg: f64 = 0.0,
    }
}

noun! {
    /// A body turned about the vertical from a list of radii, foot first.
    Turned as "turned form" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Middle of its foot.
        at: Point,
        /// Radius and height, foot first, heights never falling; open ends are closed flat.
        profile: Vec<TurnedPoint>,
        /// Covering.
        surface: Ref = Ref::to("white cloth, matt"),
        /// Weight put on its foot, kg.
        ballast_kg: f64 = 0.0,
    }
}
