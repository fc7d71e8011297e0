//! What an eye sees that is adapted to the scene, for a display.
//!
//! The display is an sRGB one whose white is [`DISPLAY_WHITE`] (IEC 61966-2-1), looked at by an eye adapted to half of that. A step
//! in luminance that the eye in the scene can just tell becomes a step that the eye before the display can just tell (G. Ward
//! 1994; J. Ferwerda et al. 1996): one factor for the whole picture, the ratio of the two least differences of
//! [`eye::adapted_threshold`]. What is darker than the least difference is black to that eye, and black here. Colour goes with
//! the cones: by the factor m of CIE 191 at each pixel's own luminance, to a neutral grey; that rods see it bluish is left out.
//! Bright things wash out as in [`Develop::White`].
//!
//! One adaptation for the whole picture. An eye that looks at figures adapts to the light that its fovea gets over time, which adds
//! up; so it is the mean of what that wanders over, by solid angle, veil and all. That it wanders evenly over the figures and the ground
//! beside them, the field that the words take, is ours and has no source. Where no figure is in sight it is the mean of the
//! picture but for the brightest hundredth, which is mostly the bright bodies of lamps, and of the veil that all of it draws. Veil
//! and blur are passes over a whole still ([`adapted`]).

mod blur;
mod veil;

use super::{Camera, Develop, Still};
use crate::{
    frames::srgb,
    judge::Place,
    light::{Rgb, eye, luma},
};

/// Luminance of the reference display's white, cd/m².
pub const DISPLAY_WHITE: f64 = 80.0;

/// What the eye before the display is adapted to, cd/m²: half of its white, as G. Ward (1994) has it.
const DISPLAY_EYE: f64 = 0.5 * DISPLAY_WHITE;

/// Part of a picture's brightest pixels that its eye does not adapt to: ours, no source.
const BRIGHTEST: f64 = 0.01;

/// How an eye adapted to a luminance sees, pixel by pixel. Three numbers are all that a shader needs, and of these only the last two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adapted {
    /// What it is adapted to, cd/m².
    pub adaptation: f32,
    /// Least difference that it tells, cd/m²: anything darker is black.
    pub threshold: f32,
    /// So much above the threshold shows as the display's white, cd/m².
    pub white: f32,
}

impl Adapted {
    /// An eye adapted to a luminance, cd/m².
    pub fn to(adaptation: f64) -> Self {
        let threshold = eye::adapted_threshold(adaptation);
        let white = DISPLAY_WHITE * threshold / eye::adapted_threshold(DISPLAY_EYE);
        Self { adaptation: adaptation as f32, threshold: threshold as f32, white: white as f32 }
    }

    /// Linear display values, 0 to 1 per channel, of a luminance, cd/m² per channel:
    ///
    /// `colour = mix(grey(Y), L, m(Y))`, `value = White(white)(colour · max(Y − threshold, 0) / Y)`, with `Y` the luminance of `L` and
    /// `m = clamp(0.7670 + 0.3334 log₁₀ Y, 0, 1)`.
    pub fn linear(self, luminance: Rgb) -> Rgb {
        let y = luma(luminance);
        let seen = (y - self.threshold).max(0.0);
        if seen == 0.0 {
            return Rgb::ZERO;
        }
        let cones = eye::cones(f64::from(y)) as f32;
        Develop::White(self.white).linear(Rgb::splat(y).lerp(luminance, cones) * (seen / y))
    }

    /// 8-bit sRGB codes.
    pub fn codes(self, luminance: Rgb) -> [u8; 3] {
        self.linear(luminance).to_array().map(srgb::encode8)
    }
}

/// A still as it comes to somebody's mind.
#[derive(Clone, Debug, PartialEq)]
pub struct Impression {
    /// What is seen.
    pub still: Still,
    /// What the eye is adapted to.
    pub eye: Adapted,
    /// Whether that is figures and their ground; else it is the whole picture.
    pub by_figures: bool,
}

/// A still as an eye of `age` years sees it that looks at these places of the figures in it ([`crate::judge::Figures::seen`]): with the
/// veil of all that is bright in it, and no finer than that eye tells in this light. Light from beside the picture is not counted.
pub fn adapted(still: &Still, camera: &Camera, age: f64, places: &[Place]) -> Impression {
    let mut seen = still.clone();
    let veil = veil::draw(&mut seen, camera, age);
    let figures = mean_of_figures(places, &seen, still, camera);
    let eye = Adapted::to(figures.unwrap_or_else(|| mean(&still.luminance) + veil));
    blur::soften(&mut seen, camera, f64::from(eye.adaptation));
    Impression { still: seen, eye, by_figures: figures.is_some() }
}

/// Mean by solid angle of those places that are in the picture, under its veil, cd/m²; `None` where there are none.
fn mean_of_figures(places: &[Place], veiled: &Still, clear: &Still, camera: &Camera) -> Option<f64> {
    let (width, height) = (clear.width as f32, clear.height as f32);
    let (mut sum, mut all) = (0.0, 0.0);
    for place in places {
        let Some((x, y)) = camera.project(camera.eye + place.along, width, height) else { continue };
        if (0.0..width).contains(&x) && (0.0..height).contains(&y) {
            let pixel = y as usize * clear.width as usize + x as usize;
            let veil = f64::from(luma(veiled.luminance[pixel] - clear.luminance[pixel]));
            sum += place.open * (place.luminance + veil);
            all += place.open;
        }
    }
    (all > 0.0).then(|| sum / all)
}

/// Mean luminance but for the brightest hundredth, cd/m².
fn mean(luminance: &[Rgb]) -> f64 {
    let mut all: Vec<f32> = luminance.iter().map(|l| luma(*l)).collect();
    let kept = all.len() - (all.len() as f64 * BRIGHTEST) as usize;
    if kept < all.len() {
        all.select_nth_unstable_by(kept, f32::total_cmp);
    }
    all[..kept].iter().map(|l| f64::from(*l)).sum::<f64>() / kept.max(1) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    const LEVELS: [f64; 7] = [0.001, 0.01, 0.1, 1.0, 10.0, 48.0, 100.0];

    #[test]
    fn a_step_just_told_in_the_scene_is_one_just_told_on_the_display() {
        // Least differences as the laws give them, tests/outside: 2.6 cd/m² on a display's 40.
        let display = eye::adapted_threshold(40.0);
        assert!((display / 2.615 - 1.0).abs() < 0.01, "{display}");
        // Published: log ΔL joined by Ward Larson et al. 1997, at these levels.
        let published = [0.001_840, 0.005_472, 0.040_27, 0.3913, 1.072, 2.994, 5.559];
        for (level, least) in LEVELS.into_iter().zip(published) {
            let eye = Adapted::to(level);
            let from = level.max(least);
            let shown = |l: f64| DISPLAY_WHITE * f64::from(luma(eye.linear(Rgb::splat(l as f32))));
            let step = shown(from + least) - shown(from);
            assert!((step / display - 1.0).abs() < 0.05, "{level}: {step} for {display}");
            assert_eq!(shown(0.99 * least), 0.0, "{level}");
            assert!(shown(1.5 * least) > 0.4 * display, "{level}");
        }
    }

    #[test]
    fn more_light_never_looks_darker() {
        let tints = [Rgb::ONE, Rgb::new(1.0, 0.6, 0.2), Rgb::new(0.2, 0.5, 1.0), Rgb::new(1.0, 0.0, 0.0)];
        for level in LEVELS {
            let eye = Adapted::to(level);
            for tint in tints {
                let shown: Vec<f32> = (0..400)
                    .map(|i| luma(eye.linear(tint / luma(tint) * 10_f32.powf(-4.0 + 0.02 * i as f32))))
                    .collect();
                assert!(shown.windows(2).all(|pair| pair[1] >= pair[0] - 1e-6), "{level}, {tint}");
                assert!(shown.iter().all(|value| (0.0..=1.0 + 1e-5).contains(value)));
            }
        }
    }

    #[test]
    fn colour_goes_in_the_dark_and_is_whole_by_day() {
        let red = Rgb::new(1.0, 0.1, 0.1);
        let at = |l: f32| red / luma(red) * l;
        for l in [0.002, 0.003, 0.0049] {
            let grey = Adapted { adaptation: 1e-4, threshold: 1e-3, white: 1.0 }.linear(at(l));
            assert!(grey.x > 0.0 && (grey.x - grey.z).abs() < 1e-6 * grey.x, "{l}: {grey}");
        }
        for l in [5.01, 20.0] {
            let eye = Adapted { adaptation: 10.0, threshold: 1e-3, white: 1e3 };
            let shown = eye.linear(at(l));
            assert!((shown.x / shown.z - 10.0).abs() < 1e-3, "{l}: {shown}");
        }
        let share = |l: f32| {
            let shown = Adapted { adaptation: 1.0, threshold: 1e-4, white: 1e3 }.linear(at(l));
            shown.x / shown.z
        };
        let shares = [0.006, 0.03, 0.1, 0.5, 2.0, 4.9].map(share);
        assert!(shares.windows(2).all(|pair| pair[1] > pair[0]), "{shares:?}");
    }

    fn view() -> Camera {
        Camera::looking(glam::Vec3::ZERO, glam::Vec3::NEG_Z, 34_f32.to_radians())
    }

    #[test]
    fn an_even_field_stays_even_and_a_lamp_veils_what_is_near_it() {
        let even = Still { width: 160, height: 90, luminance: vec![Rgb::splat(1.0); 160 * 90] };
        let Impression { still: seen, eye, .. } = adapted(&even, &view(), 25.0, &[]);
        let (low, high) = seen.luminance.iter().fold((f32::MAX, 0f32), |(a, b), l| (a.min(l.x), b.max(l.x)));
        // About a tenth in an eye; of this field, which ends, a part of that.
        assert!(low > 1.0 && high < 1.2, "{low} to {high}");
        assert!(eye.adaptation > 1.0 && eye.adaptation < 1.2);

        let mut dark = Still { width: 160, height: 90, luminance: vec![Rgb::splat(0.01); 160 * 90] };
        dark.luminance[45 * 160 + 80] = Rgb::splat(50_000.0);
        let Impression { still: seen, eye, .. } = adapted(&dark, &view(), 25.0, &[]);
        let at = |x: usize| f64::from(luma(seen.luminance[45 * 160 + x])) - 0.01;
        // 10 E / θ² from the law, θ by the pixels between.
        let pixel = f64::from(view().pixel(90));
        let lx = 50_000.0 * pixel * pixel;
        for x in [100, 120, 140] {
            let degrees = (((x - 80) as f64) * pixel).atan().to_degrees();
            let law = lx * degrees.to_radians().cos() * eye::veil(degrees, 25.0);
            assert!((at(x) / law - 1.0).abs() < 0.15, "{x}: {} for {law}", at(x));
        }
        assert!(eye.adaptation > 0.01);
    }

    #[test]
    fn fine_stripes_go_in_the_dark_and_stay_by_day() {
        let camera = Camera::looking(glam::Vec3::ZERO, glam::Vec3::NEG_Z, 6_f32.to_radians());
        let swing = |level: f32| {
            let stripe = |i: usize| Rgb::splat(if ((i % 240) / 4).is_multiple_of(2) { 2.0 * level } else { 0.0 });
            let stripes = Still { width: 240, height: 120, luminance: (0..240 * 120).map(stripe).collect() };
            let seen = adapted(&stripes, &camera, 25.0, &[]).still;
            let row = &seen.luminance[60 * 240 + 80..60 * 240 + 160];
            let (low, high) = row.iter().fold((f32::MAX, 0f32), |(a, b), l| (a.min(l.x), b.max(l.x)));
            (high - low) / (2.0 * level)
        };
        // 8 pixels a cycle at 20 to the degree: 2.5 cycles to the degree, as fine as an eye tells at 0.0005 cd/m² (2.6): a tenth of
        // a grating is left, of a square wave 4/π as much, and the veil of the bright stripes lies on them.
        let (dark, dim, day) = (swing(0.0005), swing(0.02), swing(20.0));
        assert!(dark < 0.25 && dim > 0.4 && day > 0.9, "{dark} {dim} {day}");
    }
}
