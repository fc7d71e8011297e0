//! The evening by date, clock and place.

use super::{Angle, Clock, Date, Fraction, Latitude, Longitude, Zone};
use jiff::{Timestamp, civil};

noun! {
    /// A date, a clock and a place, which sky, sun and moon follow from.
    When as "date and place" {
        /// Day of the evening, such as "2026-12-21".
        date: Date,
        /// What the clock shows on that day, such as "18:30".
        clock: Clock,
        /// Geographic latitude, north positive, -90 to 90.
        latitude_deg: Latitude,
        /// Geographic longitude, east positive, -180 to 180.
        longitude_deg: Longitude,
        /// Time zone: a name such as "Europe/Berlin" or an offset such as "+01:00".
        zone: Zone,
        /// Compass bearing that the street side faces: 180 where the front faces south.
        faces_deg: Angle = Angle(180.0),
        /// Share of the sky that cloud covers, 0 to 1.
        cloud: Fraction = Fraction(0.0),
    }
}

impl When {
    /// The instant of this evening.
    pub fn now(&self) -> Timestamp {
        self.instant(self.clock)
    }

    /// The instant at which a clock shows this on the evening's date.
    ///
    /// A clock that summer time leaves out counts on as if it had not yet begun: 02:30 where 02:00 becomes 03:00 is 03:30. One that
    /// comes twice as summer time ends is the first of the two.
    pub fn instant(&self, clock: Clock) -> Timestamp {
        self.resolved(self.date.civil().to_datetime(clock.civil()))
    }

    /// The instant at which the evening's date ends.
    pub fn midnight(&self) -> Timestamp {
        let next = self.date.civil().tomorrow().unwrap_or(self.date.civil());
        self.resolved(next.to_datetime(civil::Time::midnight()))
    }

    /// What the clock shows at an instant, to the minute that has begun.
    pub fn clock_at(&self, instant: Timestamp) -> Clock {
        let time = self.zone.civil().to_datetime(instant).time();
        Clock::new(time.hour() as u16, time.minute() as u16)
    }

    /// The same evening at another clock.
    pub fn at(&self, clock: Clock) -> Self {
        Self { clock, ..self.clone() }
    }

    /// The same place on another date.
    pub fn on(&self, date: Date) -> Self {
        Self { date, ..self.clone() }
    }

    /// The first instant at which a clock shows this from another instant on, within a day.
    pub fn next(&self, clock: Clock, from: Timestamp) -> Timestamp {
        let day = self.zone.civil().to_datetime(from).date();
        let days = [day, day.tomorrow().unwrap_or(day)].map(|day| self.resolved(day.to_datetime(clock.civil())));
        if days[0] >= from { days[0] } else { days[1] }
    }

    fn resolved(&self, civil: civil::DateTime) -> Timestamp {
        // Every year that a date may have is one that a timestamp can name.
        self.zone.civil().to_ambiguous_timestamp(civil).compatible().unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn when(date: &str, clock: &str, zone: &str) -> When {
        When {
            date: Date::parse(date).unwrap(),
            clock: Clock::parse(clock).unwrap(),
            latitude_deg: Latitude(52.5),
            longitude_deg: Longitude(13.4),
            zone: Zone::parse(zone).unwrap(),
            faces_deg: Angle(180.0),
            cloud: Fraction(0.0),
        }
    }

    #[test]
    fn summer_time_that_begins_or_ends_has_a_rule() {
        // The last Sundays of March and October 2026, at 01:00 UTC (Directive 2000/84/EC).
        for (date, clock, utc) in [
            ("2026-12-21", "18:30", "2026-12-21T17:30:00Z"),
            ("2026-06-21", "18:30", "2026-06-21T16:30:00Z"),
            ("2026-03-29", "01:59", "2026-03-29T00:59:00Z"),
            ("2026-03-29", "02:30", "2026-03-29T01:30:00Z"),
            ("2026-03-29", "03:30", "2026-03-29T01:30:00Z"),
            ("2026-10-25", "02:30", "2026-10-25T00:30:00Z"),
            ("2026-10-25", "03:00", "2026-10-25T02:00:00Z"),
        ] {
            assert_eq!(when(date, clock, "Europe/Berlin").now().to_string(), utc, "{date} {clock}");
        }
        assert_eq!(when("2026-03-29", "02:30", "+01:00").now().to_string(), "2026-03-29T01:30:00Z");
        let gap = when("2026-03-29", "02:30", "Europe/Berlin");
        assert_eq!(gap.clock_at(gap.now()).to_string(), "03:30");
    }

    #[test]
    fn a_date_ends_at_its_midnight() {
        assert_eq!(when("2026-12-31", "18:00", "-05:00").midnight().to_string(), "2027-01-01T05:00:00Z");
        assert_eq!(when("2100-12-31", "18:00", "UTC").midnight().to_string(), "2101-01-01T00:00:00Z");
        assert_eq!(when("1970-01-01", "00:00", "+14:00").now().to_string(), "1969-12-31T10:00:00Z");
    }
}
