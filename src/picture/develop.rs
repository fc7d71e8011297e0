//! From luminance to what a display shows. The viewer's shader reads the same palette and repeats the same curve.

use super::{Adapted, palette};
use crate::{
    frames::srgb,
    light::{Rgb, luma},
};

/// How luminance becomes a pixel. Exposure is fixed and always said; nothing adapts behind the user's back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Develop {
    /// What a fixed exposure shows: this luminance, cd/m², is white.
    White(f32),
    /// False colour over the logarithm of luminance, from the first to the second value, cd/m².
    FalseColour(f32, f32),
    /// What an eye adapted to the scene sees.
    Adapted(Adapted),
}

/// Where the shoulder begins: below it a pixel is linear in luminance, above it highlights roll off to white so that a
/// lamp keeps its shape.
const SHOULDER: f32 = 0.8;

impl Develop {
    /// Linear display values, 0 to 1 per channel.
    pub fn linear(self, luminance: Rgb) -> Rgb {
        match self {
            Self::White(white) => {
                let value = luminance / white;
                let peak = value.max_element();
                if peak <= SHOULDER {
                    return value;
                }
                let room = 1.0 - SHOULDER;
                let eased = SHOULDER + room * (1.0 - (-(peak - SHOULDER) / room).exp());
                let scaled = value * (eased / peak);
                // What is far brighter than white loses its colour, as on any film.
                let pale = (1.0 - 1.0 / (1.0 + 0.15 * (peak - SHOULDER))).clamp(0.0, 1.0);
                scaled.lerp(Rgb::splat(eased), pale)
            }
            Self::Adapted(eye) => eye.linear(luminance),
            Self::FalseColour(low, high) => {
                let share = (luma(luminance).max(1e-9) / low).ln() / (high / low).ln();
                palette(share)
            }
        }
    }

    /// 8-bit sRGB codes.
    pub fn codes(self, luminance: Rgb) -> [u8; 3] {
        self.linear(luminance).to_array().map(srgb::encode8)
    }
}
