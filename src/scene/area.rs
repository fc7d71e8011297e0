//! The ground and the flat areas on it.

use super::{Name, Ref, Size};
use crate::units::Length;

noun! {
    /// The ground all around, flat at height 0.
    Ground as "ground", all optional {
        /// What it is covered with.
        surface: Ref = Ref::to("lawn"),
        /// Extent along x, centred on the origin.
        width: Size = Size::metres(44.0),
        /// Extent along z, centred on the origin.
        depth: Size = Size::metres(44.0),
    }
}

/// Who uses an area.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum UsedBy {
    /// Nobody: a bed, a pond, a lawn that is kept off.
    Nobody,
    /// People on foot.
    #[default]
    Walkers,
    /// Cars, and people on foot.
    Cars,
}

choice! { UsedBy as "use of an area" { Nobody, Walkers, Cars } }

noun! {
    /// A rectangle of drive, street, path or bed, a slab that stands a little above the ground.
    Area as "area" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// What it is covered with.
        surface: Ref,
        /// Least and greatest x.
        x: (Length, Length),
        /// Least and greatest z.
        z: (Length, Length),
        /// Height of its top above the ground.
        rise: Size = Size::metres(0.02),
        /// Who uses it.
        used_by: UsedBy = UsedBy::Walkers,
    }
}
