//! Where the sun stands by day over a season: for what it does to lenses and mirrors that stay out.

use super::sun;
use crate::scene::{Clock, Date, When};
use glam::{DVec3, Vec3};
use jiff::Span;

/// Days of a season that are looked at, evenly taken.
const DAYS: i64 = 6;
/// Days before and after the evening where no season is set.
const AROUND: i64 = 14;
/// Minutes between two looks at the sun.
pub const STEP_MINUTES: u16 = 10;

/// The sun above the horizon at one time of a day.
#[derive(Clone, Debug, PartialEq)]
pub struct SunTime {
    /// The day, as `2026-12-21`.
    pub date: String,
    /// What the clock shows.
    pub clock: Clock,
    /// Unit vector towards the sun, in the yard's axes.
    pub toward: Vec3,
}

/// The sun on some days of a season, or two weeks before and after the evening where there is none: every ten minutes that it is up.
pub fn sun_times(when: &When, season: Option<(Date, Date)>) -> Vec<SunTime> {
    let date = when.date.civil();
    let around = |days: i64| date.saturating_add(Span::new().days(days));
    let (first, last) = season.map_or((around(-AROUND), around(AROUND)), |(a, b)| (a.civil(), b.civil()));
    let long = i64::from(first.until(last).map_or(0, |span| span.get_days())).max(0);
    let mut days: Vec<i64> = (0..DAYS).map(|i| i * long / (DAYS - 1)).collect();
    days.dedup();
    let mut times = Vec::new();
    for day in days {
        let day = first.saturating_add(Span::new().days(day));
        for minute in (0..24 * 60).step_by(usize::from(STEP_MINUTES)) {
            let clock = Clock::new(minute / 60, minute % 60);
            let zoned = when.zone.civil().to_ambiguous_timestamp(day.to_datetime(clock.civil()));
            let place = sun::place(when, zoned.compatible().unwrap_or_default());
            if place.seen_height_deg <= 0.0 {
                continue;
            }
            let (bearing, height) =
                ((when.faces_deg.0 - place.bearing_deg).to_radians(), place.seen_height_deg.to_radians());
            let toward = DVec3::new(bearing.sin() * height.cos(), height.sin(), bearing.cos() * height.cos());
            times.push(SunTime { date: day.to_string(), clock, toward: toward.as_vec3() });
        }
    }
    times
}
