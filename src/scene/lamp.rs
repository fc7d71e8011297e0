//! Lamps that compete with the stations.

use super::{Angle, Count, Name, Point, Positive, Ref, Size};

noun! {
    /// A lamp: at one point, along a string, or a lit window.
    Lamp as "lamp" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Kind, by its name in the catalogue.
        kind: Ref,
        /// Where it hangs; the middle of a lit window; one end of a string.
        at: Point,
        /// The other end of a string of lights.
        to: Option<Point> = None,
        /// Bulbs on a string.
        bulbs: Count = Count(12),
        /// Width and height of a lit window.
        size: Option<(Size, Size)> = None,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Tilt of a floodlight, downwards positive.
        tilt_deg: Angle = Angle(0.0),
        /// What it gives in all, in place of the catalogue's value.
        lumens: Option<Positive> = None,
        /// Whether it is on.
        on: bool = true,
    }
}
