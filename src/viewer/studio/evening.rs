//! The course of a dated evening, kept while its date and place stay.

use gauzelight::{
    light::ambient::{Moment, course},
    scene::{Angle, Clock, Date, Evening, Fraction, When, Zone},
};
use jiff::{ZonedDateTime, tz::TimeZone};

/// Minutes between two moments of the course.
const STEP: u16 = 5;

/// How the light of the evening goes.
#[derive(Default)]
pub struct Course {
    /// Every few minutes, from before sunset to midnight; empty where the evening has no date.
    pub moments: Vec<Moment>,
    of: Option<When>,
}

impl Course {
    /// Follows the evening's date and place; its clock does not matter.
    pub fn keep_step(&mut self, evening: &Evening) {
        let day = evening.when.as_ref().map(|when| when.at(Clock::new(12, 0)));
        if self.of != day {
            self.moments = day.as_ref().map(|when| course(when, STEP)).unwrap_or_default();
            self.of = day;
        }
    }
}

/// A date and place to begin with: today in this computer's time zone, at the longitude where the sun keeps its time, half way
/// to the pole; somebody's own place is theirs to type.
pub fn usual() -> Option<When> {
    let now = ZonedDateTime::now();
    let system = TimeZone::system();
    let zone = system.iana_name().and_then(|name| Zone::parse(name).ok()).or_else(|| Zone::parse("UTC").ok())?;
    let hours = f64::from(now.offset().seconds()) / 3600.0;
    Some(When {
        date: Date::parse(&now.date().to_string()).ok()?,
        clock: Clock::new(18, 30),
        latitude_deg: 45.0,
        longitude_deg: 15.0 * hours,
        zone,
        faces_deg: Angle(180.0),
        cloud: Fraction(0.0),
    })
}
