//! Fold mirrors.

use super::{Angle, Fraction, Name, Point, Size};

noun! {
    /// A flat mirror that bends a throw; its back is black.
    FoldMirror as "fold mirror" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Its middle.
        at: Point,
        /// Along its level edge.
        width: Size,
        /// Along its other edge.
        height: Size,
        /// Turn about the vertical, counter-clockwise from above; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
        /// Tilt of the silvered side, downwards positive.
        tilt_deg: Angle = Angle(0.0),
        /// Share of light that it throws on; a household mirror 0.85 to 0.92.
        reflectance: Fraction = Fraction(0.88),
    }
}
