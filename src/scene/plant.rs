//! Hedges and trees: crowns of leaves that let some light through.

use super::{Fraction, Name, Point, Ref, Size};

/// A plant.
#[derive(Clone, Debug, PartialEq)]
pub enum Plant {
    /// A clipped hedge.
    Hedge(Hedge),
    /// A tree.
    Tree(Tree),
}

choice! { Plant as "plant" { Hedge(Hedge), Tree(Tree) } }

impl Plant {
    /// Its name.
    pub fn name(&self) -> &Name {
        match self {
            Self::Hedge(noun) => &noun.name,
            Self::Tree(noun) => &noun.name,
        }
    }

    /// Its leaves or twigs.
    pub fn surface(&self) -> &Ref {
        match self {
            Self::Hedge(noun) => &noun.surface,
            Self::Tree(noun) => &noun.surface,
        }
    }
}

noun! {
    /// A clipped hedge between two points on the ground.
    Hedge as "hedge" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// Height.
        height: Size,
        /// Thickness.
        depth: Size = Size::metres(0.7),
        /// Share of light that finds its way straight through.
        gap: Fraction = Fraction(0.02),
        /// Leaves.
        surface: Ref = Ref::to("leaves, evergreen"),
    }
}

noun! {
    /// A tree: a trunk and an egg-shaped crown.
    Tree as "tree" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Foot of the trunk.
        at: Point,
        /// To the top of the crown.
        height: Size,
        /// Widest radius of the crown.
        crown: Size,
        /// Height at which the crown begins.
        clear: Size,
        /// Radius of the trunk.
        trunk: Size = Size::metres(0.15),
        /// Share of light that finds its way straight through the crown.
        gap: Fraction = Fraction(0.3),
        /// Leaves or bare twigs.
        surface: Ref = Ref::to("leaves, evergreen"),
    }
}
