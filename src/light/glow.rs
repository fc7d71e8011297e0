//! The bright bodies of lamps as an eye sees them. They cast no shadow: their light is counted at their middle.

use super::Rgb;
use crate::geometry::{Outline, crossing};
use glam::Vec3;

/// A bright body.
#[derive(Clone, Debug)]
pub struct Glow {
    /// Where it is.
    pub outline: Outline,
    /// Its luminance, cd/m² per channel.
    pub luminance: Rgb,
    /// Index among the night's sources.
    pub source: u32,
}

impl Glow {
    /// A ball of `radius` whose intensity is `lumens / 4π` in every direction: `L = I / (π r²)`.
    pub fn ball(middle: Vec3, radius: f32, lumens: Rgb, source: u32) -> Self {
        let intensity = lumens / (4.0 * std::f32::consts::PI);
        Self {
            outline: Outline::Egg { middle, radii: Vec3::splat(radius) },
            luminance: intensity / (std::f32::consts::PI * radius * radius),
            source,
        }
    }

    /// Distance along a ray to the body's face; infinite for a miss.
    #[inline]
    pub fn distance(&self, origin: Vec3, direction: Vec3) -> f32 {
        let [enter, _] = crossing::outline(&self.outline, origin, direction);
        if enter > 0.0 { enter } else { f32::INFINITY }
    }
}
