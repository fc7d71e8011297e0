//! How a projector answers the codes of a picture.

use super::srgb;
use glam::Vec3;

/// The curve from signal to light; both run from 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Transfer {
    /// The curve of IEC 61966-2-1.
    Srgb,
    /// Light is the signal to this power.
    Power(f32),
}

impl Transfer {
    /// Linear light of a signal.
    pub fn to_linear(self, signal: f32) -> f32 {
        match self {
            Self::Srgb => srgb::to_linear(signal),
            Self::Power(gamma) => signal.powf(gamma),
        }
    }

    /// Linear light of every eight-bit code.
    pub fn table(self) -> [f32; 256] {
        std::array::from_fn(|code| self.to_linear(code as f32 / 255.0))
    }
}

/// A projector's answer to a picture: its curve, and its colour light output.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Response {
    /// The curve of each channel.
    pub transfer: Transfer,
    /// Lumens of the full red, green and blue fields together, as a share of white's (colour light output, IDMS 15.4), 0 to 1.
    pub colour_light: f32,
}

impl Response {
    /// The sRGB curve with all of its white made of red, green and blue.
    pub const SRGB: Self = Self { transfer: Transfer::Srgb, colour_light: 1.0 };
    /// As most projectors are set.
    pub const USUAL: Self = Self { transfer: Transfer::Power(2.2), colour_light: 1.0 };

    /// Linear light that is thrown for linear light that is asked for: `c rgb + (1 − c) min(r, g, b)`, so that white and every
    /// grey stay as they are and the three full colours add up to `c` of white.
    pub fn colour(self, rgb: Vec3) -> Vec3 {
        if self.colour_light == 1.0 {
            return rgb;
        }
        self.colour_light * rgb + (1.0 - self.colour_light) * rgb.min_element()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 0.5^2.2 = 0.217638; code 128 is 0.501961 of the signal.
    #[test]
    fn a_power_is_a_power() {
        let table = Transfer::Power(2.2).table();
        assert!((Transfer::Power(2.2).to_linear(0.5) - 0.217_637_6).abs() < 1e-6);
        assert!((table[128] - 0.219_520_2).abs() < 1e-6);
        assert_eq!((table[0], table[255]), (0.0, 1.0));
        assert_eq!(Transfer::Srgb.table()[77], srgb::decode8(77));
    }

    #[test]
    fn greys_stay_and_the_full_colours_add_up_to_their_share_of_white() {
        let response = Response { colour_light: 0.6, ..Response::USUAL };
        for grey in [0.0, 0.3, 1.0] {
            assert!(response.colour(Vec3::splat(grey)).abs_diff_eq(Vec3::splat(grey), 1e-6));
        }
        let fields: f32 = [Vec3::X, Vec3::Y, Vec3::Z].map(|full| srgb::luminance(response.colour(full))).iter().sum();
        assert!((fields - 0.6).abs() < 1e-6);
        // Orange is part white: (1, 0.5, 0.2) has 0.2 of it.
        assert!(response.colour(Vec3::new(1.0, 0.5, 0.2)).abs_diff_eq(Vec3::new(0.68, 0.38, 0.2), 1e-6));
        assert_eq!(Response::USUAL.colour(Vec3::X), Vec3::X);
    }
}
