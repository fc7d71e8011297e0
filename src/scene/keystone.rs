//! Digital keystone: a picture bent before it is thrown.

use super::Angle;

noun! {
    /// How a projector bends its picture so that it lands rectangular on a surface that it does not face squarely. What lies
    /// outside the bent picture stays black.
    Keystone as "keystone", all optional {
        /// How far its axis points above square on, which makes the picture wider above; below is negative.
        vertical_deg: Angle = Angle(0.0),
        /// How far its axis points to the right of square on as it looks, which makes the picture taller on the right; the
        /// left is negative.
        horizontal_deg: Angle = Angle(0.0),
    }
}

impl Keystone {
    /// The farthest that projectors correct, degrees: from memory of data sheets.
    pub const MOST_DEG: f64 = 40.0;
}
