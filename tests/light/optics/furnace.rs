//! The white furnace: what loses nothing reads 1 in a surround of luminance 1, from every angle and both sides;
//! nothing reads more. And reciprocity: both sides pass the same share of light from everywhere.

use gauzelight::optics::{Cloth, Curve, Net, Rgb, Sheet, gathered, stack};
use proptest::prelude::*;

/// Luminance of the sheet seen by an eye before the given face, all light being summed up numerically.
fn luminance(sheet: &Sheet, face: usize, cos: f32) -> Rgb {
    let (near, far) = (&sheet.faces[face], &sheet.faces[1 - face]);
    // E/π of all light from a ring of the surround is 2 cos θ dcos θ.
    let rings = 4000_u32;
    let width = 1.0 / f64::from(rings);
    let mut sums = [[0.0_f64; 3]; 2];
    for ring in 0..rings {
        let x = (f64::from(ring) + 0.5) * width;
        for (sum, law) in sums.iter_mut().zip([&near.reflect, &far.diffuse]) {
            let share = law.sample(x as f32);
            for channel in 0..3 {
                sum[channel] += f64::from(share[channel]) * 2.0 * x * width;
            }
        }
    }
    let [reflected, transmitted] = sums.map(|sum| Rgb::from(sum.map(|v| v as f32)));
    near.reflect_shape.sample(cos) * reflected + near.exit_shape.sample(cos) * transmitted + sheet.through.sample(cos)
}

const EYES: [f32; 6] = [0.0, 0.003, 0.2, 0.5551, 0.9, 1.0];

fn check_white(sheet: &Sheet) -> Result<(), TestCaseError> {
    for face in 0..2 {
        for cos in EYES {
            let seen = luminance(sheet, face, cos);
            prop_assert!((seen - Rgb::ONE).abs().max_element() < 1e-5, "face {face}, cos {cos}: {seen}");
        }
    }
    Ok(())
}

fn check_no_more_than_white(sheet: &Sheet) -> Result<(), TestCaseError> {
    prop_assert!(sheet.energy() <= 1.0 + 2e-6, "energy {}", sheet.energy());
    for face in 0..2 {
        for cos in EYES {
            let seen = luminance(sheet, face, cos);
            prop_assert!(
                seen.max_element() < 1.0 + 1e-5 && seen.min_element() >= 0.0,
                "face {face}, cos {cos}: {seen}"
            );
        }
    }
    let [front, back] = [0, 1].map(|face: usize| sheet.faces[face].diffuse.mean());
    prop_assert!((front - back).abs().max_element() < 2e-6, "front passes {front}, back {back}");
    Ok(())
}

fn colour() -> impl Strategy<Value = Rgb> {
    [0.0..=1.0_f32, 0.0..=1.0_f32, 0.0..=1.0_f32].prop_map(Rgb::from)
}

/// A net of threads that lose nothing.
fn white_net() -> impl Strategy<Value = Sheet> {
    (0.0..=1.0_f32, colour())
        .prop_map(|(ratio, reflect)| Net { ratio, reflect, transmit: Rgb::ONE - reflect }.sheet().unwrap())
}

/// A cloth that loses nothing and whose two faces scatter differently over angle.
fn white_cloth() -> impl Strategy<Value = Sheet> {
    (colour(), colour(), 0.0..=1.0_f32).prop_map(|(through, part, lean)| {
        // Two thirds leave room for the leaning law: (1 − k) + 1.5 k cos θ has mean 1 and peaks at 1.5 at most.
        let diffuse = (Rgb::ONE - through) * part * 0.66;
        let law = |lean: f32| {
            let factor = move |cos: f64| 1.0 - f64::from(lean) + 1.5 * f64::from(lean) * cos;
            let of = |share: Rgb, cos: f64| share.to_array().map(|v| f64::from(v) * factor(cos));
            let diffuse_at = move |cos: f64| of(diffuse, cos);
            let rest = move |cos: f64| {
                let scattered = diffuse_at(cos);
                [0, 1, 2].map(|c| 1.0 - f64::from(through[c]) - scattered[c])
            };
            (Curve::of(rest), Curve::of(diffuse_at))
        };
        let ((front_reflect, front), (back_reflect, back)) = (law(lean), law(0.5 * lean * lean));
        Sheet::new(front_reflect, back_reflect, front, back, Curve::constant(through))
    })
}

fn white() -> impl Strategy<Value = Sheet> {
    prop_oneof![white_net(), white_cloth()]
}

fn any_cloth() -> impl Strategy<Value = Sheet> {
    (colour(), colour(), colour(), prop_oneof![Just(1.0), 0.0..=1.0_f32]).prop_map(|(a, b, c, keep)| {
        let sum = (a + b + c).max(Rgb::splat(1e-3));
        let [through, diffuse, reflect] = [a, b, c].map(|share| share / sum * keep);
        Cloth { through, diffuse, reflect }.sheet().unwrap()
    })
}

fn any() -> impl Strategy<Value = Sheet> {
    let net = (0.0..=1.0_f32, colour(), 0.0..=1.0_f32).prop_map(|(ratio, reflect, part)| {
        Net { ratio, reflect, transmit: (Rgb::ONE - reflect) * part }.sheet().unwrap()
    });
    prop_oneof![net, any_cloth(), white()]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn white_sheets(sheet in white()) {
        check_white(&sheet)?;
        check_no_more_than_white(&sheet)?;
    }

    #[test]
    fn white_stacks(sheets in prop::collection::vec(white(), 1..5)) {
        let stacked = stack(&sheets.iter().collect::<Vec<_>>());
        check_white(&stacked)?;
        check_no_more_than_white(&stacked)?;
    }

    #[test]
    fn white_gathers(sheet in white(), fullness in 1.0..4.0_f32) {
        let drape = gathered(&sheet, fullness);
        check_white(&drape)?;
        check_no_more_than_white(&drape)?;
    }

    #[test]
    fn any_sheets(sheet in any()) {
        check_no_more_than_white(&sheet)?;
    }

    #[test]
    fn any_stacks(sheets in prop::collection::vec(any(), 1..4)) {
        check_no_more_than_white(&stack(&sheets.iter().collect::<Vec<_>>()))?;
    }

    #[test]
    fn any_gathers_in_stacks(sheet in any(), fullness in 1.0..4.0_f32, before in any()) {
        let drape = gathered(&sheet, fullness);
        check_no_more_than_white(&drape)?;
        check_no_more_than_white(&stack(&[&before, &drape]))?;
    }
}

#[test]
fn no_sheet_at_all() {
    for face in 0..2 {
        for cos in EYES {
            assert_eq!(luminance(&Sheet::clear(), face, cos), Rgb::ONE);
        }
    }
    assert_eq!(stack(&[]), Sheet::clear());
}
