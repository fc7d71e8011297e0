//! The hours of an evening that are looked at.

use crate::{
    light::ambient::{Moment, course::SUNSET_DEG, crossing, span},
    scene::{Clock, Setting, When, Yard},
};
use jiff::{SignedDuration, Timestamp};
use serde::{Serialize, Serializer};
use std::fmt;

/// An instant with what the clock shows then; written as its clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hour {
    /// The instant.
    pub instant: Timestamp,
    /// What the clock shows, to the minute that has begun.
    pub clock: Clock,
    /// Minutes of that clock since the midnight with which the evening's date began: 1440 and more after the midnight that ends it.
    pub minutes: u16,
}

impl Hour {
    /// Of an evening, at an instant.
    pub fn of(when: &When, instant: Timestamp) -> Self {
        let clock = when.clock_at(instant);
        let days = u16::from(instant >= when.midnight());
        Self { instant, clock, minutes: clock.minutes() + days * 24 * 60 }
    }
}

impl fmt::Display for Hour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.clock.fmt(f)
    }
}

impl Serialize for Hour {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

/// The hours of one evening.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Hours {
    /// Sunset, where the sun sets between its noon and the midnight after it.
    pub sunset: Option<Hour>,
    /// When visitors begin to come.
    #[serde(rename = "visitors_from")]
    pub from: Hour,
    /// When they have gone; after midnight where the second clock time is not after the first.
    #[serde(rename = "visitors_until")]
    pub until: Hour,
    /// When the evening begins: an hour before sunset, or with the visitors if they come earlier.
    #[serde(skip)]
    pub begin: Timestamp,
    /// When it ends: at midnight, or with the visitors if they stay longer.
    #[serde(skip)]
    pub end: Timestamp,
    /// What lies around the yard, whose glow is in the sky.
    #[serde(skip)]
    pub setting: Setting,
}

impl Hours {
    /// Of a yard's visitors on an evening's date.
    pub fn of(yard: &Yard, when: &When) -> Self {
        let (first, last) = yard.visitors;
        let from = when.instant(first);
        let until = when.next(last, from);
        let (begin, end) = span(when);
        let hour = |instant| Hour::of(when, instant);
        Self {
            sunset: crossing(when, SUNSET_DEG).map(hour),
            from: hour(from),
            until: hour(until),
            begin: begin.min(from),
            end: end.max(until),
            setting: yard.setting,
        }
    }

    /// Whether visitors are there at an instant.
    pub fn has_visitors(&self, instant: Timestamp) -> bool {
        (self.from.instant..self.until.instant).contains(&instant)
    }

    /// The light every so many minutes (1 at least) up to `end`, and at every clock time of `also`.
    pub fn moments(&self, when: &When, step_minutes: u16, end: Timestamp, also: &[Clock]) -> Vec<Moment> {
        let step = SignedDuration::from_mins(i64::from(step_minutes.max(1)));
        let steps = std::iter::successors(Some(self.begin), |instant| instant.checked_add(step).ok());
        let mut instants: Vec<Timestamp> = steps.take_while(|instant| *instant < end).collect();
        instants.extend(also.iter().map(|clock| when.next(*clock, self.begin)));
        instants.extend([self.from.instant, self.until.instant, end]);
        instants.retain(|instant| (self.begin..=end).contains(instant));
        instants.sort_unstable();
        instants.dedup();
        instants.into_iter().map(|instant| Moment::of(when, self.setting, instant)).collect()
    }
}
