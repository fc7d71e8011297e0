//! The sRGB transfer curve of IEC 61966-2-1, both ways, and its table for eight-bit codes.

use std::sync::LazyLock;

/// Linear light of every eight-bit code, worked out once.
static TABLE: LazyLock<[f32; 256]> = LazyLock::new(|| std::array::from_fn(|code| to_linear(code as f32 / 255.0)));

/// Linear light, 0 to 1, of an eight-bit sRGB code.
pub fn decode8(code: u8) -> f32 {
    TABLE[usize::from(code)]
}

/// Linear light of an sRGB signal; both run from 0 to 1.
pub fn to_linear(signal: f32) -> f32 {
    if signal <= 0.04045 { signal / 12.92 } else { ((signal + 0.055) / 1.055).powf(2.4) }
}

/// The sRGB signal of linear light; both run from 0 to 1.
pub fn from_linear(light: f32) -> f32 {
    if light <= 0.003_130_8 { light * 12.92 } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 }
}

/// Eight-bit sRGB code of linear light, which is held to 0 to 1.
pub fn encode8(light: f32) -> u8 {
    // The cast holds what lies outside to the ends.
    (from_linear(light) * 255.0).round() as u8
}

/// Luminance of linear RGB on the Rec. 709 primaries that sRGB uses, white being 1.
pub fn luminance(rgb: glam::Vec3) -> f32 {
    rgb.dot(glam::Vec3::new(0.2126, 0.7152, 0.0722))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(got: f32, want: f32) {
        assert!((got - want).abs() < 1e-6, "got {got}, want {want}");
    }

    #[test]
    fn signals_turn_to_the_light_the_standard_gives() {
        near(to_linear(0.04045), 0.003_130_8);
        near(to_linear(0.5), 0.214_041_14);
        near(decode8(0), 0.0);
        near(decode8(64), 0.051_269_46);
        near(decode8(128), 0.215_860_5);
        near(decode8(188), 0.502_886_5);
        near(decode8(255), 1.0);
    }

    #[test]
    fn light_turns_back_to_signals() {
        near(from_linear(0.18), 0.461_356_13);
        near(from_linear(0.5), 0.735_357);
    }

    #[test]
    fn every_code_survives_the_round_trip() {
        for code in 0..=255u8 {
            assert_eq!(encode8(decode8(code)), code);
        }
        assert_eq!((encode8(-0.5), encode8(1.5)), (0, 255));
    }

    #[test]
    fn white_has_a_luminance_of_one() {
        near(luminance(glam::Vec3::ONE), 1.0);
    }
}
