//! Hanging cloths.

use super::{Angle, Fullness, Name, Point, Ref, Size};

noun! {
    /// A flat piece of fabric that hangs in the air.
    Cloth as "hanging cloth" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Fabric, by its name in the catalogue; the layer on the side it faces.
        fabric: Ref,
        /// Further layers behind it, front to back.
        behind: Vec<Ref> = Vec::new(),
        /// Middle of its top edge.
        at: Point,
        /// Width as hung.
        width: Size,
        /// From top to bottom edge.
        height: Size,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Lean of the top towards the side it faces.
        tilt_deg: Angle = Angle(0.0),
        /// Width of the flat cloth over width as hung.
        fullness: Fullness = Fullness(1.0),
    }
}
