//! What never helps: blur, coarse pixels, and distance.

use crate::lab::{DARK, Lab, station};
use gauzelight::{
    judge::{Sight, Word, sight::Question},
    scene::{Positive, Size},
};
use proptest::{prelude::*, test_runner::RngSeed};

/// Pictures large and small, coarse and fine.
const PICTURES: [&str; 5] = ["middle", "checker", "stripes", "corners", "left half"];

/// A picture on a grey wall; a lamp may stand beside it.
#[derive(Clone, Debug)]
struct Thrown {
    picture: &'static str,
    throw: f64,
    lumens: f64,
    turn: f64,
    from: f64,
    lamp: Option<(f64, f64)>,
}

fn thrown() -> impl Strategy<Value = Thrown> {
    let lamp = proptest::option::of((-6.0..6.0_f64, 10.0..500.0_f64));
    (0..PICTURES.len(), 1.5..5.0_f64, 1.0..400.0_f64, -40.0..40.0_f64, 6.0..60.0_f64, lamp).prop_map(
        |(picture, throw, lumens, turn, from, lamp)| Thrown {
            picture: PICTURES[picture],
            throw,
            lumens,
            turn,
            from,
            lamp,
        },
    )
}

impl Thrown {
    /// As seen, with so much of the lens open, m, focused so far off its middle, and so many pixels across.
    fn seen(&self, aperture: f64, focus: f64, pixels: u32) -> Option<Sight> {
        let Self { picture, throw, lumens, turn, from, lamp } = self;
        let lamp = lamp.map_or_else(String::new, |(x, lm)| {
            format!(r#"lamps: [(name: "lamp", kind: "porch lamp", at: ({x}, 12, 1), lumens: {lm})],"#)
        });
        let (sin, cos) = turn.to_radians().sin_cos();
        let place = format!(
            r#"at: ({}, 10, {}), aim: (0, 10, 0), target: "wall", focus: {}, lumens: (low: {lumens}, typical: {lumens}, high: {lumens})"#,
            throw * sin,
            throw * cos,
            throw * focus
        );
        let text = format!(
            r#"{DARK} {lamp} walls: [(name: "wall", at: (0, 4, 0), width: 16, height: 12, surface: "grey")],
            spots: [(name: "spot", at: (0, 8.4, {from}), look: "wall")], {}"#,
            station("16:9", picture, &place)
        );
        let lab = Lab::edited(&text, |yard| {
            let class = yard.projectors.iter_mut().find(|class| class.name.0 == "16:9").expect("it is in stock");
            class.pixels = (pixels, pixels * 9 / 16);
            class.aperture = Size::metres(aperture);
            (class.on_off_contrast, class.checker_contrast) = (Positive(400.0), Positive(60.0));
        });
        lab.reading().spots[0].sight.clone()
    }
}

fn value(sight: &Sight, question: Question) -> f64 {
    sight.answer(question).value.map_or(f64::INFINITY, |value| value.typical)
}

/// No answer of the worse is better, within what a picture sampled by cells may stray.
fn no_better(worse: &Sight, better: &Sight) -> Result<(), TestCaseError> {
    for question in Question::ALL {
        let (low, high) = (value(worse, question), value(better, question));
        prop_assert!(low <= 1.02 * high + 1e-3, "{question:?}: {high} became {low}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, rng_seed: RngSeed::Fixed(1), ..ProptestConfig::default() })]

    #[test]
    fn blur_never_helps(yard in thrown(), focus in 0.4..2.5_f64) {
        let open = [1e-6, 0.01, 0.03, 0.1];
        let seen: Vec<Sight> = open.iter().filter_map(|aperture| yard.seen(*aperture, focus, 1600)).collect();
        for pair in seen.windows(2) {
            no_better(&pair[1], &pair[0])?;
        }
    }

    /// Down to what a cell of the raster is read by; the coarser one below is held by its strokes.
    #[test]
    fn coarse_pixels_never_help(yard in thrown()) {
        let seen: Vec<Sight> = [1600, 640, 160].iter().filter_map(|pixels| yard.seen(1e-6, 1.0, *pixels)).collect();
        for pair in seen.windows(2) {
            no_better(&pair[1], &pair[0])?;
        }
    }

    /// Of a matt thing in the dark, from farther off along its normal.
    #[test]
    fn distance_never_helps(yard in thrown(), times in 1.2..6.0_f64) {
        let near = Thrown { turn: 0.0, lamp: None, from: yard.from.max(5.0 * yard.throw), ..yard };
        let far = Thrown { from: times * near.from, ..near.clone() };
        if let (Some(near), Some(far)) = (near.seen(1e-6, 1.0, 1600), far.seen(1e-6, 1.0, 1600)) {
            no_better(&far, &near)?;
        }
    }
}

/// Fine stripes that are 25 pixels out of focus are no longer read, and a raster of 96 × 54 does not read better than a fine one.
#[test]
fn text_out_of_focus_is_faint() {
    let yard = Thrown { picture: "stripes", throw: 3.0, lumens: 300.0, turn: 0.0, from: 40.0, lamp: None };
    let seen = |aperture: f64, focus: f64, pixels: u32| yard.seen(aperture, focus, pixels).expect("it is in sight");
    let sharp = seen(0.03, 1.0, 854);
    // D |z − zf| / (zf w1 z) of 25/854.
    let blurred = seen(0.1171, 2.0 / 3.0, 854);
    assert!(value(&blurred, Question::FineEnough) < value(&sharp, Question::FineEnough));
    // Twice its area over its outline: 36 texels by 1 in an outline of 74.
    let stroke = 72.0 / 74.0 / 64.0 * 854.0;
    let found = value(&blurred, Question::FineEnough);
    assert!((found * 25.0 / stroke - 1.0).abs() < 0.01, "{found} for {}", stroke / 25.0);
    assert!(blurred.word <= Word::Faint && sharp.word > Word::Faint, "{} and {}", blurred.phrase(), sharp.phrase());
    let coarse = seen(1e-6, 1.0, 96);
    assert!(value(&coarse, Question::FineEnough) <= value(&sharp, Question::FineEnough));
}
