//! Tapes that lie in a yard.

use super::Point;

noun! {
    /// A tape laid between two points, to be read until it is taken away.
    Tape as "tape" {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// Anything worth remembering.
        note: String = String::new(),
    }
}

impl Tape {
    /// From one point to another, to the millimetre.
    pub fn between(from: [f64; 3], to: [f64; 3]) -> Self {
        let point = |at: [f64; 3]| {
            let [x, y, z] = at.map(|v| (v * 1000.0).round() / 1000.0);
            Point::metres(x, y, z)
        };
        Self { from: point(from), to: point(to), note: String::new() }
    }
}
