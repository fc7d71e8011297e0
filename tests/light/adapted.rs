//! What an adapted eye sees, held against the words.

use crate::lab::{DARK, Lab, station};
use gauzelight::{
    judge::{Figures, SpotReading, Word, eye, sight::Question},
    light::{Rgb, eye::adapted_threshold, luma},
    picture::{Adapted, Camera, DISPLAY_WHITE, adapted, expose},
    scene::Positive,
};
use proptest::{prelude::*, test_runner::RngSeed};

/// A figure on a grey wall under an even sky, seen from the street.
#[derive(Clone, Debug)]
struct Thrown {
    picture: &'static str,
    lumens: f64,
    sky_lx: f64,
    from: f64,
}

/// Pictures whose figure is drawn broadly; the light of each from the faintest to the strongest.
fn thrown() -> impl Strategy<Value = Thrown> {
    let pictures = ["middle", "checker", "left half", "stripes"];
    (0..pictures.len(), -1.0..3.0_f64, -3.0..1.5_f64, 6.0..25.0_f64).prop_map(move |(picture, lumens, sky, from)| {
        Thrown { picture: pictures[picture], lumens: 10_f64.powf(lumens), sky_lx: 10_f64.powf(sky), from }
    })
}

/// What a spot reads, the eye there as it is adapted, and how bright each place of figure and ground is, with its solid angle.
struct Looked {
    spot: SpotReading,
    eye: Adapted,
    places: Vec<(f64, f64)>,
}

impl Thrown {
    fn looked(&self) -> Looked {
        let Self { picture, lumens, sky_lx, from } = self;
        let place = format!(
            r#"at: (0, 10, 3), aim: (0, 10, 0), target: "wall", lumens: (low: {lumens}, typical: {lumens}, high: {lumens})"#
        );
        let text = format!(
            r#"{} walls: [(name: "wall", at: (0, 4, 0), width: 16, height: 12, surface: "grey")],
            spots: [(name: "spot", at: (0, 8.4, {from}), look: "wall")], {}"#,
            DARK.replace("sky_lx: 0", &format!("sky_lx: {sky_lx}")),
            station("16:9", picture, &place)
        );
        let lab = Lab::edited(&text, |yard| {
            let class = yard.projectors.iter_mut().find(|class| class.name.0 == "16:9").expect("it is in stock");
            (class.on_off_contrast, class.checker_contrast) = (Positive(400.0), Positive(60.0));
        });
        let at = eye(&lab.yard.spots[0]);
        let camera = Camera::looking(at, glam::Vec3::new(0.0, 10.0, 0.0), 34_f32.to_radians());
        let still = expose(&lab.night, &camera, (160, 90), 1, |_| ());
        let places = Figures::of(&lab.night, &lab.yard).seen(&lab.night, at);
        let seen = adapted(&still, &camera, 40.0, &places);
        assert!(seen.by_figures);
        let places = places.iter().map(|place| (place.luminance, place.open)).collect();
        Looked { spot: lab.reading().spots.remove(0), eye: seen.eye, places }
    }
}

impl Looked {
    /// By how many steps that the eye before the display just tells the figure stands above its ground there.
    fn steps(&self) -> f64 {
        let shown = |luminance: f64| DISPLAY_WHITE * f64::from(luma(self.eye.linear(Rgb::splat(luminance as f32))));
        (shown(self.spot.mean.typical) - shown(self.spot.ground.typical)) / adapted_threshold(0.5 * DISPLAY_WHITE)
    }

    /// Share of the figure that is as white as the display.
    fn burnt(&self) -> f64 {
        let middle = 0.5 * (self.spot.mean.typical + self.spot.ground.typical);
        let open = |above: f64| self.places.iter().filter(|(l, _)| *l > above).map(|(_, open)| open).sum::<f64>();
        open(f64::from(self.eye.white + self.eye.threshold).max(middle)) / open(middle).max(1e-12)
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, failure_persistence: None, rng_seed: RngSeed::Fixed(1), ..ProptestConfig::default() })]

    /// What the words call clear or strong is told from its ground, and not burnt out; what they call lost for want of light is not told
    /// on a ground from 0.3 cd/m² on. On darker ones the two laws part (Adrian's small target seen for sure; a large field just told).
    #[test]
    fn the_picture_agrees_with_the_words(yard in thrown()) {
        let looked = yard.looked();
        let sight = looked.spot.sight.clone().expect("it is in sight");
        let word = sight.answer(Question::LightEnough).word.min(sight.answer(Question::StandsOut).word);
        let (steps, burnt) = (looked.steps(), looked.burnt());
        if word >= Word::Clear {
            prop_assert!(steps > 1.0, "{word:?}: {steps} steps");
            prop_assert!(burnt < 0.25, "{word:?}: {burnt} burnt of {:?}", looked.eye);
        }
        if sight.answer(Question::LightEnough).word == Word::Lost && sight.adaptation > 0.3 {
            prop_assert!(steps < 1.0, "lost: {steps} steps");
        }
    }
}

/// By solid angle, over what is in the picture.
#[test]
fn an_eye_adapts_to_the_mean_of_what_it_looks_at() {
    use gauzelight::{judge::Place, picture::Still};
    let camera = Camera::looking(glam::Vec3::ZERO, glam::Vec3::NEG_Z, 34_f32.to_radians());
    let dark = Still { width: 16, height: 9, luminance: vec![Rgb::ZERO; 16 * 9] };
    let place =
        |x: f32, luminance: f64, open: f64| Place { along: glam::Vec3::new(x, 0.0, -1.0).normalize(), luminance, open };
    let to = |places: &[Place]| f64::from(adapted(&dark, &camera, 25.0, places).eye.adaptation);
    assert!((to(&[place(0.0, 9.0, 1e-3), place(0.1, 0.25, 1e-3)]) - 4.625).abs() < 1e-4);
    assert!((to(&[place(0.0, 8.0, 1e-3), place(0.1, 0.5, 2e-3)]) - 3.0).abs() < 1e-4);
    // What is beside the picture is not looked at.
    assert!((to(&[place(0.0, 8.0, 1e-3), place(3.0, 1e-3, 5e-2)]) - 8.0).abs() < 1e-3);
    assert!(!adapted(&dark, &camera, 25.0, &[place(3.0, 1.0, 1e-3)]).by_figures);
}
