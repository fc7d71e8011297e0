//! Days, clocks and time zones as a yard file has them.

use super::Fault;
use jiff::{
    SignedDuration, civil,
    tz::{Offset, TimeZone, TimeZoneDatabase},
};
use std::{fmt, ops::RangeInclusive};

/// A day of the Gregorian calendar, in the years [`Date::YEARS`]; written `"2026-12-21"`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date(civil::Date);

impl Date {
    /// Years that a date may lie in: time zones are known from the first on, and the last is as far as anybody plans.
    pub const YEARS: RangeInclusive<i16> = 1970..=2100;

    /// The day that a text names: year, month, day.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let form = "year, month and day, such as \"2026-12-21\"";
        let parts: Vec<&str> = text.trim().split('-').collect();
        let digits = |part: &str, most: usize| {
            let sound = (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
            if sound { part.parse::<i16>().ok() } else { None }
        };
        let numbers = match parts.as_slice() {
            [year, month, day] if year.len() == 4 => digits(year, 4).zip(digits(month, 2)).zip(digits(day, 2)),
            _ => None,
        };
        let ((year, month), day) =
            numbers.ok_or_else(|| Fault::new(format!("“{}” is not a date", clipped(text))).remedy(form))?;
        if !Self::YEARS.contains(&year) {
            let (first, last) = (Self::YEARS.start(), Self::YEARS.end());
            return Err(
                Fault::new(format!("the year {year} is out of range")).remedy(format!("from {first} to {last}"))
            );
        }
        civil::Date::new(year, month as i8, day as i8).map(Self).map_err(|_| {
            let remedy = match civil::Date::new(year, month as i8, 1) {
                Ok(first) => format!("that month has the days 1 to {}", first.days_in_month()),
                Err(_) => "the month is from 1 to 12".to_owned(),
            };
            Fault::new(format!("the calendar has no {}", clipped(text))).remedy(remedy)
        })
    }

    /// The same in the calendar's own terms.
    pub fn civil(self) -> civil::Date {
        self.0
    }

    /// The day so many days later, or earlier where below 0; `None` beyond the years that a date may lie in.
    pub fn later(self, days: i64) -> Option<Self> {
        let day = self.0.checked_add(SignedDuration::from_hours(days.checked_mul(24)?)).ok()?;
        Self::YEARS.contains(&day.year()).then_some(Self(day))
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.0.year(), self.0.month(), self.0.day())
    }
}

/// What a clock on the wall shows, to the minute; written `"18:30"`, and read as `"6:30 pm"` too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Clock {
    /// Minutes since midnight, 0 to 1439.
    minutes: u16,
}

impl Clock {
    /// The clock at an hour and minute; what is beyond a day goes round.
    pub const fn new(hour: u16, minute: u16) -> Self {
        Self { minutes: ((hour % 24) * 60 + minute % 60) % (24 * 60) }
    }

    /// The clock that a text names.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let fault = |remedy: &str| Err(Fault::new(format!("“{}” is not a clock time", clipped(text))).remedy(remedy));
        let form = "hours and minutes, such as \"18:30\" or \"6:30 pm\"";
        let lower = text.trim().to_ascii_lowercase();
        let (digits, half) = match (lower.strip_suffix("am"), lower.strip_suffix("pm")) {
            (Some(before), _) => (before.trim_end(), Some(0)),
            (_, Some(before)) => (before.trim_end(), Some(12)),
            _ => (lower.as_str(), None),
        };
        let number = |part: &str, lengths: RangeInclusive<usize>| {
            let sound = lengths.contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
            if sound { part.parse::<u16>().ok() } else { None }
        };
        let parts = match (digits.split_once(':'), half) {
            (Some((hour, minute)), _) => number(hour, 1..=2).zip(number(minute, 2..=2)),
            (None, Some(_)) => number(digits, 1..=2).map(|hour| (hour, 0)),
            (None, None) => None,
        };
        match (parts, half) {
            (None, _) => fault(form),
            (Some((24, 0)), None) => fault("midnight is \"00:00\""),
            (Some((_, 60..)), _) => fault("minutes are from 00 to 59"),
            (Some((0 | 13.., _)), Some(_)) => fault("with am or pm, hours are from 1 to 12"),
            (Some((24.., _)), None) => fault("hours are from 0 to 23"),
            (Some((hour, minute)), half) => Ok(Self::new(half.map_or(hour, |half| hour % 12 + half), minute)),
        }
    }

    /// Minutes since midnight, 0 to 1439.
    pub const fn minutes(self) -> u16 {
        self.minutes
    }

    /// Minutes since noon: evenings and the nights after them count up without a break.
    const fn since_noon(self) -> u16 {
        (self.minutes + 12 * 60) % (24 * 60)
    }

    /// Whether it lies between two others, the first of them included; a span may cross midnight. One that has no beginning
    /// begins at noon, one without end ends at the next noon.
    pub fn is_within(self, from: Option<Self>, until: Option<Self>) -> bool {
        let now = self.since_noon();
        let from = from.map_or(0, Self::since_noon);
        match until.map(Self::since_noon) {
            None => now >= from,
            Some(until) if from <= until => (from..until).contains(&now),
            Some(until) => now >= from || now < until,
        }
    }

    /// The same in the calendar's own terms.
    pub fn civil(self) -> civil::Time {
        // Its range is kept from the beginning.
        civil::Time::new((self.minutes / 60) as i8, (self.minutes % 60) as i8, 0, 0).unwrap_or_default()
    }
}

impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.minutes / 60, self.minutes % 60)
    }
}

/// A time zone: a name of the IANA database such as `"Europe/Berlin"`, with its summer time, or a fixed offset from universal time
/// such as `"+01:00"`. The database comes with the program.
#[derive(Clone, Debug)]
pub struct Zone {
    text: String,
    zone: TimeZone,
}

impl Zone {
    /// The zone that a text names.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let trimmed = text.trim();
        if trimmed.starts_with(['+', '-', '−']) {
            return offset(trimmed);
        }
        let database = TimeZoneDatabase::bundled();
        match database.get(trimmed) {
            Ok(zone) if !zone.is_unknown() => {
                // The database takes a name in any case and knows how it is spelled.
                let text = zone.iana_name().unwrap_or(trimmed).to_owned();
                Ok(Self { text, zone })
            }
            _ => {
                let names: Vec<String> = database.available().map(|name| name.to_string()).collect();
                // The signs of these run the other way round, so that they are nobody's slip of the pen.
                let usual =
                    names.iter().map(String::as_str).filter(|n| !n.starts_with("Etc/") && !n.starts_with("GMT"));
                let fault = Fault::new(format!("no time zone is called “{}”", clipped(text)));
                let remedy =
                    "a name such as \"Europe/Berlin\" or \"America/New_York\", or an offset such as \"+01:00\"";
                Err(fault.remedy(remedy).nearest_of(trimmed, usual))
            }
        }
    }

    /// The same in the calendar's own terms.
    pub fn civil(&self) -> &TimeZone {
        &self.zone
    }
}

impl PartialEq for Zone {
    fn eq(&self, other: &Self) -> bool {
        self.text == other.text
    }
}

impl fmt::Display for Zone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

/// A fixed offset: sign, hours and, after a colon, minutes.
fn offset(text: &str) -> Result<Zone, Fault> {
    let wrong = || Fault::new(format!("“{}” is not an offset from universal time", clipped(text)));
    let form = "hours and minutes, such as \"+01:00\" or \"-05:00\"";
    let east = text.starts_with('+');
    let digits = text.trim_start_matches(['+', '-', '−']);
    let (hours, minutes) = digits.split_once(':').unwrap_or((digits, "00"));
    let number = |part: &str| {
        let sound = (1..=2).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit());
        if sound { part.parse::<i32>().ok() } else { None }
    };
    let (hours, minutes) = number(hours).zip(number(minutes)).ok_or_else(|| wrong().remedy(form))?;
    let total = hours * 60 + minutes;
    if minutes > 59 || total > 14 * 60 {
        return Err(wrong().remedy("at most 14 hours, and minutes from 00 to 59"));
    }
    let sign = if east { 1 } else { -1 };
    let zone = Offset::from_seconds(sign * total * 60).map_err(|_| wrong().remedy(form))?;
    let text = format!("{}{hours:02}:{minutes:02}", if east { '+' } else { '-' });
    Ok(Zone { text, zone: TimeZone::fixed(zone) })
}

fn clipped(text: &str) -> String {
    super::tree::clipped(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_are_read_in_both_notations() {
        for (text, shown) in [
            ("18:30", "18:30"),
            ("6:30 pm", "18:30"),
            ("6 PM", "18:00"),
            ("12 am", "00:00"),
            ("12:05pm", "12:05"),
            ("0:00", "00:00"),
            (" 7:05 ", "07:05"),
        ] {
            assert_eq!(Clock::parse(text).unwrap().to_string(), shown, "{text}");
        }
        for text in ["", "18", "24:00", "25:00", "18:60", "18:5", "18.30", "0 am", "13 pm", "-1:00", "1:00:00", "noon"]
        {
            let fault = Clock::parse(text).unwrap_err();
            assert!(!fault.remedy.is_empty(), "{text}: {fault}");
        }
    }

    #[test]
    fn a_span_may_cross_midnight() {
        let at = |text: &str| Clock::parse(text).unwrap();
        let within =
            |now: &str, from: Option<&str>, until: Option<&str>| at(now).is_within(from.map(at), until.map(at));
        assert!(within("23:30", Some("17:00"), Some("01:00")));
        assert!(within("00:59", Some("17:00"), Some("01:00")));
        assert!(!within("01:00", Some("17:00"), Some("01:00")));
        assert!(!within("16:59", Some("17:00"), Some("01:00")));
        assert!(within("17:00", Some("17:00"), None));
        assert!(within("03:00", Some("17:00"), None), "no end: the whole night");
        assert!(!within("12:00", Some("17:00"), None));
        assert!(within("12:00", None, Some("22:00")));
        assert!(!within("22:00", None, Some("22:00")) && !within("03:00", None, Some("22:00")));
        // By day, over noon.
        assert!(within("11:00", Some("06:00"), Some("20:00")) && within("13:00", Some("06:00"), Some("20:00")));
        assert!(!within("21:00", Some("06:00"), Some("20:00")));
        assert!(within("04:00", None, None));
    }

    #[test]
    fn zones_are_names_or_offsets() {
        for (text, shown) in [
            ("Europe/Berlin", "Europe/Berlin"),
            ("america/new_york", "America/New_York"),
            ("+1", "+01:00"),
            ("-03:30", "-03:30"),
            ("−5:00", "-05:00"),
            ("UTC", "UTC"),
        ] {
            assert_eq!(Zone::parse(text).unwrap().to_string(), shown, "{text}");
        }
        for (text, near) in [
            ("Berlin", Some("Europe/Berlin")),
            ("Europe/Berlni", Some("Europe/Berlin")),
            ("America/New York", Some("America/New_York")),
            ("the moon", None),
            ("", None),
            ("Etc/Unknown", None),
        ] {
            assert_eq!(Zone::parse(text).unwrap_err().nearest.as_deref(), near, "{text}");
        }
        for text in ["+", "+15:00", "+1:60", "+a", "+1:00:00", "-"] {
            assert!(!Zone::parse(text).unwrap_err().remedy.is_empty(), "{text}");
        }
    }

    #[test]
    fn days_that_are_none_say_why() {
        assert_eq!(Date::parse(" 2026-12-21 ").unwrap().to_string(), "2026-12-21");
        assert_eq!(Date::parse("2024-2-29").unwrap().to_string(), "2024-02-29");
        for (text, says) in [
            ("2026-02-30", "that month has the days 1 to 28"),
            ("2026-13-01", "the month is from 1 to 12"),
            ("2026-00-01", "the month is from 1 to 12"),
            ("1969-12-31", "from 1970 to 2100"),
            ("2101-01-01", "from 1970 to 2100"),
            ("21.12.2026", "such as"),
            ("26-12-21", "such as"),
            ("2026-12", "such as"),
            ("2026-12-+1", "such as"),
            ("", "such as"),
        ] {
            let fault = Date::parse(text).unwrap_err().to_string();
            assert!(fault.contains(says), "{text}: {fault}");
        }
    }
}
