//! Lamp distributions: flux and half-peak angle.

use std::f64::consts::PI;

use gauzelight::optics::{Lamp, Spread};

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
