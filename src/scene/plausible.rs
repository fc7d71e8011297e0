//! Lumens that can be believed of a class of projectors.

use super::ProjectorClass;

/// Measured lumens are doubted beyond this factor above the most that a class gives: its band is for the class, a single
/// projector may lie outside it. Invented.
const ABOVE: f64 = 2.0;
/// And beyond this factor below the least: lamps wear, and most projectors can be dimmed. Invented.
const BELOW: f64 = 4.0;
/// What a box claims is doubted beyond this factor either side of what boxes of the class claim. Invented.
const CLAIMED: f64 = 10.0;

impl ProjectorClass {
    /// Whether one of them may be measured to give so many lumens.
    pub fn may_give(&self, lm: f64) -> bool {
        (self.lumens.low / BELOW..=self.lumens.high * ABOVE).contains(&lm)
    }

    /// Whether so many lumens may be printed on its box.
    pub fn may_claim(&self, lm: f64) -> bool {
        (self.claimed.0 / CLAIMED..=self.claimed.0 * CLAIMED).contains(&lm)
    }
}
