//! The laws of the eye, against published values and measurements.

mod acuity;
mod threshold;
mod veil;

/// Holds a value to another within a relative tolerance.
#[track_caller]
fn close(found: f64, published: f64, tolerance: f64) {
    assert!((found - published).abs() <= tolerance * published.abs(), "found {found}, published {published}");
}
