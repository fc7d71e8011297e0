//! Laws of fabric, glass, film and lamps: their formulas once more, plain geometry, algebra and brute force.

#![allow(clippy::unwrap_used, reason = "a check that cannot be set up has failed")]

mod cloth;
mod film;
mod furnace;
mod glass;
mod lamp;
mod lamp_file;
mod layers;
mod net;
mod pleats;

use gauzelight::optics::{Curve, Rgb, Sheet};

/// The same share in all channels.
fn grey(share: f64) -> Rgb {
    Rgb::splat(share as f32)
}

/// One channel of a law at an angle in degrees.
fn at(curve: &Curve, degrees: f64) -> f64 {
    f64::from(curve.sample(degrees.to_radians().cos() as f32).x)
}

/// A sheet without straight part, alike from both sides and at all angles.
fn matt(diffuse: f64, reflect: f64) -> Sheet {
    let [reflect, diffuse, none] = [reflect, diffuse, 0.0].map(|share| Curve::constant(grey(share)));
    Sheet::new(reflect.clone(), reflect, diffuse.clone(), diffuse, none)
}

#[track_caller]
fn near(found: f64, wanted: f64, tolerance: f64) {
    assert!((found - wanted).abs() <= tolerance, "found {found}, wanted {wanted} ± {tolerance}");
}
