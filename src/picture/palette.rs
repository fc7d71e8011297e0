//! The false-colour palette: our own, even in lightness from dark to pale so that colour-blind people and grey printers
//! read it by lightness alone; hue goes from plum by rust and moss to cream.

use crate::light::Rgb;
use std::sync::LazyLock;

/// Samples of the palette as the shader reads it.
pub const PALETTE_STEPS: usize = 64;

/// Colours at even steps of CIE lightness L* = 8, 22, 36, 50, 64, 78, 92, as L*, a*, b*.
const STOPS: [[f32; 3]; 7] = [
    [8.0, 8.0, -14.0],
    [22.0, 24.0, -22.0],
    [36.0, 36.0, -2.0],
    [50.0, 34.0, 28.0],
    [64.0, 10.0, 42.0],
    [78.0, -10.0, 40.0],
    [92.0, -2.0, 18.0],
];

static TABLE: LazyLock<[Rgb; PALETTE_STEPS]> = LazyLock::new(|| {
    std::array::from_fn(|step| {
        let x = step as f32 / (PALETTE_STEPS - 1) as f32 * (STOPS.len() - 1) as f32;
        let i = (x as usize).min(STOPS.len() - 2);
        let f = x - i as f32;
        linear_from_lab(std::array::from_fn(|k| STOPS[i][k] + (STOPS[i + 1][k] - STOPS[i][k]) * f))
    })
});

/// The palette at even steps, linear display colours; the shader reads this very table.
pub fn palette_table() -> [Rgb; PALETTE_STEPS] {
    *TABLE
}

/// Linear display colour at a share 0…1 of the range; darker than the range is black, brighter is white.
pub fn palette(share: f32) -> Rgb {
    if share < 0.0 {
        return Rgb::ZERO;
    }
    if share > 1.0 {
        return Rgb::ONE;
    }
    let x = share * (PALETTE_STEPS - 1) as f32;
    let i = (x as usize).min(PALETTE_STEPS - 2);
    TABLE[i].lerp(TABLE[i + 1], x - i as f32)
}

/// CIELAB (D65) to linear Rec. 709, clamped into the display (CIE 15:2004; IEC 61966-2-1 matrix).
fn linear_from_lab([l, a, b]: [f32; 3]) -> Rgb {
    let fy = (l + 16.0) / 116.0;
    let back = |f: f32| if f > 6.0 / 29.0 { f * f * f } else { 3.0 * (6.0f32 / 29.0).powi(2) * (f - 4.0 / 29.0) };
    let (x, y, z) = (0.950_47 * back(fy + a / 500.0), back(fy), 1.088_83 * back(fy - b / 200.0));
    Rgb::new(
        3.240_454 * x - 1.537_138 * y - 0.498_531 * z,
        -0.969_266 * x + 1.876_011 * y + 0.041_556 * z,
        0.055_643 * x - 0.204_026 * y + 1.057_225 * z,
    )
    .clamp(Rgb::ZERO, Rgb::ONE)
}

/// Luminances to name on a legend: 1, 3, 10 … within the range, with their share of it.
pub fn legend(low: f32, high: f32) -> Vec<(f32, f32)> {
    let mut marks = Vec::new();
    for decade in -4..5 {
        for lead in [1.0, 3.0] {
            let value = lead * 10f32.powi(decade);
            if value >= low * 0.999 && value <= high * 1.001 {
                marks.push((value, (value / low).ln() / (high / low).ln()));
            }
        }
    }
    marks
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::light::luma;

    #[test]
    fn lightness_rises_all_the_way() {
        let lightness: Vec<f32> = (0..=100).map(|i| luma(palette(i as f32 / 100.0)).cbrt()).collect();
        assert!(lightness.windows(2).all(|w| w[1] > w[0]), "a palette must be readable by lightness alone");
        assert_eq!(palette(-0.1), Rgb::ZERO);
        assert_eq!(palette(1.1), Rgb::ONE);
    }

    #[test]
    fn the_legend_names_round_values() {
        let marks = legend(0.01, 100.0);
        assert_eq!(marks.len(), 9);
        assert!((marks[2].0 - 0.1).abs() < 1e-6 && (marks[2].1 - 0.25).abs() < 1e-5);
    }
}
