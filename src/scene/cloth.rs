//! Hanging cloths.

use super::{Angle, Count, Fullness, Name, Point, Positive, Ref, Size};

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
        /// How many ties hold it along its edges.
        ties: Count = Count(6),
        /// Weight in its hem, kg for each metre of its width as hung.
        hem_kg_m: f64 = 0.0,
        /// Weight of a square metre of it flat, all layers together, g, in place of what its fabrics weigh.
        weight_g_m2: Option<Positive> = None,
    }
}
