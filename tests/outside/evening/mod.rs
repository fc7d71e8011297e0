//! Sun, moon and daylight, against published tables and general libraries.

#![allow(clippy::unwrap_used, reason = "a check that cannot be set up has failed")]

mod daylight;
mod moon;
mod sun;
mod town;

use gauzelight::scene::{Angle, Clock, Date, Fraction, Latitude, Longitude, When, Zone};

/// An evening at a place, under a clear sky.
fn when(date: &str, clock: &str, latitude_deg: f64, longitude_deg: f64, zone: &str) -> When {
    When {
        date: Date::parse(date).unwrap(),
        clock: Clock::parse(clock).unwrap(),
        latitude_deg: Latitude(latitude_deg),
        longitude_deg: Longitude(longitude_deg),
        zone: Zone::parse(zone).unwrap(),
        faces_deg: Angle(180.0),
        cloud: Fraction(0.0),
    }
}

/// Within a share of a published value.
#[track_caller]
fn about(found: f64, published: f64, share: f64) {
    assert!((found / published - 1.0).abs() <= share, "found {found}, published {published} ± {share} of it");
}
