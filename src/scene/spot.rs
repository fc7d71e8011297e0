//! Viewing spots.

use super::{Aim, Count, Name, Point, Size};

noun! {
    /// A place that people watch from.
    Spot as "viewing spot" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Where their feet are.
        at: Point,
        /// Height of their eyes above that.
        eye: Size = Size::metres(1.6),
        /// Their age in years.
        age: Count = Count(40),
        /// What they look at.
        look: Aim = Aim::At(Point::metres(0.0, 2.0, 0.0)),
        /// Where somebody walks or drives to from here, on the ground.
        to: Option<Point> = None,
        /// Whether they drive: they come by in a car, at its speed and with its driver's duty to the road.
        drives: bool = false,
    }
}
