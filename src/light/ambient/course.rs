//! How the light of an evening goes, from before sunset to midnight.

use super::{Ambient, crossing};
use crate::scene::{Clock, Setting, When};
use jiff::{SignedDuration, Timestamp};

/// The light at one instant of an evening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// The instant.
    pub instant: Timestamp,
    /// What the clock shows then.
    pub clock: Clock,
    /// The light.
    pub ambient: Ambient,
}

/// Height of the sun's middle at sunset, degrees: 34′ of refraction and 16′ of radius below the horizon.
pub const SUNSET_DEG: f64 = -0.8333;

/// How long before sunset an evening begins, minutes: the light is then hundreds of times what any projector can hold against.
const BEFORE_SUNSET: i64 = 60;

impl Moment {
    /// The light of an evening at an instant.
    pub fn of(when: &When, setting: Setting, instant: Timestamp) -> Self {
        Self { instant, clock: when.clock_at(instant), ambient: Ambient::at(when, setting, instant) }
    }
}

/// From when to when an evening goes: from an hour before sunset to the midnight that ends its date; from noon on where the sun does
/// not set before that. On whole minutes of the clock.
pub fn span(when: &When) -> (Timestamp, Timestamp) {
    let (noon, end) = (when.instant(Clock::new(12, 0)), when.midnight());
    let hour_before = |sunset: Timestamp| sunset.checked_sub(SignedDuration::from_mins(BEFORE_SUNSET)).ok();
    let sunset = crossing(when, SUNSET_DEG).filter(|sunset| *sunset < end);
    let minute = |instant: Timestamp| when.instant(when.clock_at(instant));
    (sunset.and_then(hour_before).map_or(noon, minute), end)
}

/// The light of an evening every so many minutes (1 at least) of its [`span`].
pub fn course(when: &When, setting: Setting, step_minutes: u16) -> Vec<Moment> {
    let step = SignedDuration::from_mins(i64::from(step_minutes.max(1)));
    let (begin, end) = span(when);
    let instants = std::iter::successors(Some(begin), |instant| instant.checked_add(step).ok());
    instants.take_while(|instant| *instant <= end).map(|instant| Moment::of(when, setting, instant)).collect()
}
