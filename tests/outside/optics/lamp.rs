//! Lamps against the classes of road optics.

use std::f64::consts::PI;

use gauzelight::{
    optics::Spread,
    scene::{Catalogue, SpreadKind},
};
use glam::Vec3;

use super::near;

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
