//! Where the sun stands, and when it passes a height. This is the one file that knows the sun crate, which follows NREL's algorithm
//! (Reda and Andreas 2004).

use crate::scene::{Clock, When};
use glam::DVec3;
use jiff::{Timestamp, Unit};
use solar_positioning::{ElevationTarget, Location, RefractionCorrection, SolarPositions, delta_t, time::JulianDate};

/// Where the sun's middle stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPlace {
    /// Compass bearing, degrees from north by east.
    pub bearing_deg: f64,
    /// Height above the horizon, degrees, refraction not counted.
    pub height_deg: f64,
    /// Height above the horizon as it is seen through standard air, degrees; below the horizon the same.
    pub seen_height_deg: f64,
}

/// Days from the beginning of the Julian count to that of Unix time.
const EPOCH: f64 = 2_440_587.5;
const DAY_S: f64 = 86_400.0;

/// The Julian day of an instant, universal time.
pub(super) fn julian_day(instant: Timestamp) -> f64 {
    EPOCH + instant.as_millisecond() as f64 / (1000.0 * DAY_S)
}

/// Terrestrial time less universal time, s.
pub(super) fn time_lag(julian_day: f64) -> f64 {
    let year = 2000.0 + (julian_day - 2_451_544.5) / 365.25;
    // Known for every year that a date may have.
    delta_t::estimate(year).unwrap_or_default()
}

/// A unit vector from a compass bearing and a height, degrees: north, east, up.
pub(super) fn direction(bearing_deg: f64, height_deg: f64) -> DVec3 {
    let (bearing, height) = (bearing_deg.to_radians(), height_deg.to_radians());
    DVec3::new(bearing.cos() * height.cos(), bearing.sin() * height.cos(), height.sin())
}

fn location(when: &When) -> Location {
    Location { latitude: when.latitude_deg.0, longitude: when.longitude_deg.0 }
}

/// Where the sun stands at an instant. From a place that is not on Earth, which the checks of a yard refuse, there is none: it is
/// straight below.
pub fn place(when: &When, instant: Timestamp) -> SunPlace {
    let day = julian_day(instant);
    let seen = |air| {
        let time = JulianDate::new(day, time_lag(day))?;
        SolarPositions::new().at_from_julian(time, location(when), 0.0, air)
    };
    match (seen(None), seen(Some(RefractionCorrection::standard()))) {
        (Ok(plain), Ok(seen)) => SunPlace {
            bearing_deg: plain.azimuth(),
            height_deg: plain.elevation_angle(),
            seen_height_deg: seen.elevation_angle(),
        },
        _ => SunPlace { bearing_deg: 0.0, height_deg: -90.0, seen_height_deg: -90.0 },
    }
}

/// When the sun sinks past a height, degrees, on an evening's date: −0.8333 is sunset (34′ of refraction and 16′ of radius), −6, −12
/// and −18 end civil, nautical and astronomical twilight. The instant may lie after midnight; there is none where the sun does not
/// pass that height between its noon and the midnight after it.
pub fn crossing(when: &When, height_deg: f64) -> Option<Timestamp> {
    let noon = noon(when);
    let target = ElevationTarget { angle: height_deg, height: 0.0, refraction: None };
    // The sun's own noon is at most 17 minutes from the mean one; before it the sun does not sink.
    let span = (noon - 20.0 / 1440.0, noon + 12.3 / 24.0);
    let day = SolarPositions::new()
        .next_elevation_set_from_julian(span.0, span.1, location(when), time_lag(noon), target)
        .ok()
        .flatten()?;
    let instant = Timestamp::from_millisecond(((day - EPOCH) * DAY_S * 1000.0).round() as i64).ok()?;
    instant.round(Unit::Second).ok()
}

/// The mean sun's noon that is nearest to the clock's on the evening's date, Julian day.
fn noon(when: &When) -> f64 {
    let clock = julian_day(when.instant(Clock::new(12, 0)));
    // Julian days begin at noon of Greenwich.
    let off = -when.longitude_deg.0 / 360.0 - clock;
    clock + (off - off.round())
}
