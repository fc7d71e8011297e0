//! Numbers against the ranges that their fields allow.

use crate::scene::{Band, Fault, Faults};
use crate::units::{decimals, number};
use std::ops::RangeInclusive;

/// How far under the ground something may come, m: no real ground is flat to less.
const INTO_THE_GROUND: f64 = 0.02;

/// Nobody carries more weight than this to a foot or a stand, kg.
pub(super) const MOST_BALLAST_KG: f64 = 500.0;

/// Warns of something in a field whose lowest point, m above the ground, is under it.
pub(super) fn above_ground(faults: &mut Faults, field: &str, lowest: f64, what: &str, remedy: &str) {
    if lowest < -INTO_THE_GROUND {
        let what = format!("{what} is {} m under the ground", decimals(-lowest, 2));
        faults.push_in(field, Fault::warning(what).remedy(remedy));
    }
}

/// Reports a number of a field that is out of its range.
pub(super) fn within(faults: &mut Faults, field: &str, value: f64, range: RangeInclusive<f64>, allowed: &str) {
    if !range.contains(&value) {
        faults.push_in(field, Fault::new(format!("{} is out of range", number(value))).remedy(allowed));
    }
}

/// Reports a band of a field that is not wholly in its range.
pub(super) fn band_within(faults: &mut Faults, field: &str, band: Band, range: RangeInclusive<f64>, allowed: &str) {
    if let Some(value) = [band.low, band.typical, band.high].into_iter().find(|value| !range.contains(value)) {
        faults.push_in(field, Fault::new(format!("{} is out of range", number(value))).remedy(allowed));
    }
}

/// Reports a field whose value does not fit another.
pub(super) fn unless(fits: bool, faults: &mut Faults, field: &str, what: impl Into<String>, remedy: impl Into<String>) {
    if !fits {
        faults.push_in(field, Fault::new(what).remedy(remedy));
    }
}
