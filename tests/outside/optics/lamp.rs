//! Lamp distributions: flux and half-peak angle.

use std::f64::consts::PI;

use gauzelight::{
    optics::{Lamp, Spread},
    scene::{Catalogue, SpreadKind},
};
use glam::Vec3;

use super::near;

fn lamps() -> [Lamp; 6] {
    let beam = |degrees: f32| degrees.to_radians();
    [
        Lamp::Globe,
        Lamp::Lambert,
        Lamp::Hood { beam: beam(90.0) },
        Lamp::Hood { beam: beam(10.0) },
        Lamp::Flood { beam: beam(110.0) },
        Lamp::Flood { beam: beam(30.0) },
    ]
}

#[test]
fn one_lumen_is_one_lumen() {
    for lamp in lamps() {
        let spread = Spread::new(lamp);
        let fine = 1_000_000;
        let cos = |k: u32| ((f64::from(k) + 0.5) / f64::from(fine) * 2.0 - 1.0) as f32;
        let flux = (0..fine).map(|k| f64::from(spread.sample(cos(k)))).sum::<f64>() * 4.0 * PI / f64::from(fine);
        near(flux, 1.0, 2e-6);
    }
}

#[test]
fn peak_intensities() {
    near(f64::from(Spread::new(Lamp::Globe).sample(-0.3)), 1.0 / (4.0 * PI), 1e-7);
    near(f64::from(Spread::new(Lamp::Lambert).sample(1.0)), 1.0 / PI, 1e-4);
    near(f64::from(Spread::new(Lamp::Lambert).sample(0.5)), 0.5 / PI, 1e-4);
    // cosⁿ has peak (n + 1)/2π; half at 60° is n = 1.
    near(f64::from(Spread::new(Lamp::Flood { beam: (120_f32).to_radians() }).sample(1.0)), 1.0 / PI, 1e-4);
}

#[test]
fn half_at_the_half_peak_angle_and_dark_behind() {
    for degrees in [30_f32, 60.0, 100.0] {
        for lamp in [Lamp::Flood { beam: degrees.to_radians() }, Lamp::Hood { beam: degrees.to_radians() }] {
            let spread = Spread::new(lamp);
            let edge = spread.sample((degrees.to_radians() / 2.0).cos());
            near(f64::from(edge / spread.sample(1.0)), 0.5, 0.01);
            assert_eq!(spread.sample(-0.2), 0.0);
        }
    }
}

/// Classes of road optics by the old definitions of the IES: at 80° and 90° from straight down a full cut-off lamp has at most 100 and
/// no cd for 1000 lm, a cut-off one 100 and 25, a semi-cut-off one 200 and 50. From memory.
#[test]
fn street_lamps_keep_to_their_class() {
    let catalogue = Catalogue::builtin();
    for (kind, at_80, at_90) in [
        ("street lamp, LED", 100.0, 0.0),
        ("street lamp, cut-off", 100.0, 25.0),
        ("street lamp, sodium", 100.0, 25.0),
        ("street lamp, semi-cut-off", 200.0, 50.0),
    ] {
        let kind = catalogue.lamp_kinds.iter().find(|known| known.name.0 == kind).unwrap();
        let SpreadKind::Table { cd_per_klm } = &kind.spread else { panic!("{:?} is no table", kind.name) };
        let spread = Spread::table(cd_per_klm);
        let per_klm = |degrees: f32| {
            let (sin, cos) = degrees.to_radians().sin_cos();
            f64::from(1000.0 * spread.toward(Vec3::new(sin, -cos, 0.0), Vec3::NEG_Y, Vec3::X))
        };
        assert!((80..=90).all(|angle| per_klm(angle as f32) <= at_80), "{:?}: {}", kind.name, per_klm(80.0));
        assert!((90..=180).all(|angle| per_klm(angle as f32) <= at_90 + 0.01), "{:?}: {}", kind.name, per_klm(90.0));
        // ∫ I dω over straight lines in the angle: 2π Σ (I₁ cos a − I₂ cos b + (I₂ − I₁)(sin b − sin a) / (b − a)).
        let lines = cd_per_klm.windows(2).map(|pair| {
            let ((a, first), (b, last)) = ((pair[0].0.to_radians(), pair[0].1), (pair[1].0.to_radians(), pair[1].1));
            first * a.cos() - last * b.cos() + (last - first) * (b.sin() - a.sin()) / (b - a)
        });
        near(2.0 * PI * lines.sum::<f64>(), 1000.0, 2.0);
    }
}
