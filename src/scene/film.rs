//! Rear-projection films.

use super::{Angle, Name, Point, Ref, Size};

noun! {
    /// A film stretched to be lit from behind: in a window, or free.
    RearFilm as "rear film" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Film, by its name in the catalogue of fabrics.
        fabric: Ref,
        /// The window that it fills, 3 cm behind the glass.
        window: Option<Ref> = None,
        /// Middle of its top edge, where it fills no window.
        at: Option<Point> = None,
        /// Width and height, where it fills no window.
        size: Option<(Size, Size)> = None,
        /// Turn about the vertical, counter-clockwise from above, where it fills no window; 0 faces the street.
        turn_deg: Angle = Angle(0.0),
    }
}
