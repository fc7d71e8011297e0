//! Numbers against the ranges that their fields allow.

use crate::scene::{Band, Fault, Faults};
use std::ops::RangeInclusive;

/// Reports a number of a field that is out of its range.
pub(super) fn within(faults: &mut Faults, field: &str, value: f64, range: RangeInclusive<f64>, allowed: &str) {
    if !range.contains(&value) {
        faults.push_in(field, Fault::new(format!("{value} is out of range")).remedy(allowed));
    }
}

/// Reports a band of a field that is not wholly in its range.
pub(super) fn band_within(faults: &mut Faults, field: &str, band: Band, range: RangeInclusive<f64>, allowed: &str) {
    if let Some(value) = [band.low, band.typical, band.high].into_iter().find(|value| !range.contains(value)) {
        faults.push_in(field, Fault::new(format!("{value} is out of range")).remedy(allowed));
    }
}

/// Reports a field whose value does not fit another.
pub(super) fn unless(fits: bool, faults: &mut Faults, field: &str, what: impl Into<String>, remedy: impl Into<String>) {
    if !fits {
        faults.push_in(field, Fault::new(what).remedy(remedy));
    }
}
