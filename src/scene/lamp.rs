//! Lamps that compete with the stations.

use super::{Angle, Clock, Count, Name, Point, Positive, Ref, Size};

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
        /// When it is switched on; noon where only the other is given. Used only where the evening has a date.
        from: Option<Clock> = None,
        /// When it is switched off, perhaps after midnight; the next noon where only the other is given.
        until: Option<Clock> = None,
        /// Whether it is a floodlight that fires as visitors arrive; in the night it shines only where it is on.
        motion: bool = false,
        /// What it draws in all, W, where a cable of the yard feeds it.
        watts: Option<Positive> = None,
    }
}

impl Lamp {
    /// Whether it shines at a clock time; where the evening has none, its switch times do not count.
    pub fn shines(&self, clock: Option<Clock>) -> bool {
        self.on && clock.is_none_or(|now| now.is_within(self.from, self.until))
    }
}
