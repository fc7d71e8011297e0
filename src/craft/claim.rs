//! What a box says against what a projector gives: guesses by class, and the throw ratio by a tape.

use crate::{
    scene::{Band, ProjectorClass},
    units::Length,
};
use std::ops::RangeInclusive;

/// What a box may claim, lm.
pub const CLAIMS: RangeInclusive<f64> = 20.0..=100_000.0;

/// A picture measured on a wall that was square to the light.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// Along its longer edge.
    pub width: Length,
    /// From the lens to it.
    pub at: Length,
}

impl Measured {
    /// What to say where [`Measured::throw_ratio`] is `None`.
    pub const REMEDY: &str =
        "measure the picture's longer edge and the way from lens to picture: their ratio is 0.1 to 20";

    /// Its throw ratio: distance over width (ISO/IEC 21118). `None` where no projector has that: below 0.1, above 20, or of
    /// lengths that are none.
    pub fn throw_ratio(&self) -> Option<f64> {
        let ratio = self.at.m / self.width.m;
        (self.width.m > 0.0 && self.at.m > 0.0 && (0.1..=20.0).contains(&ratio)).then_some(ratio)
    }
}

/// The class whose boxes claim most nearly `claimed` lm and, where they are known, whose native pixels are most nearly as
/// many; both count by ratio. Of two alike the first. `None` where there is no class.
pub fn nearest_class<'a>(
    classes: impl IntoIterator<Item = &'a ProjectorClass>,
    claimed: f64,
    pixels: Option<(u32, u32)>,
) -> Option<&'a ProjectorClass> {
    let count = |(across, down): (u32, u32)| f64::from(across.max(1)) * f64::from(down.max(1));
    let apart = |class: &&ProjectorClass| {
        let pixels = pixels.map_or(0.0, |pixels| (count(class.pixels) / count(pixels)).ln().abs());
        (class.claimed.0 / claimed).ln().abs() + pixels
    };
    classes.into_iter().min_by(|a, b| apart(a).total_cmp(&apart(b)))
}

/// Real white lumens behind a claim, lm, by what the boxes of a class claim against what such projectors give.
pub fn real_lumens(claimed: f64, class: &ProjectorClass) -> Band {
    let share = claimed / class.claimed.0;
    let Band { low, typical, high } = class.lumens;
    // No box claims less than it gives.
    let [low, typical, high] = [low, typical, high].map(|lumens| (lumens * share).min(claimed));
    Band { low, typical, high }
}
