//! How the light of an evening goes, from before sunset to midnight.

use super::{Ambient, crossing};
use crate::scene::{Clock, When};
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

/// The light of an evening every so many minutes (1 at least), from an hour before sunset to the midnight that ends its date; from noon
/// on where the sun does not set before that.
pub fn course(when: &When, step_minutes: u16) -> Vec<Moment> {
    let step = SignedDuration::from_mins(i64::from(step_minutes.max(1)));
    let (noon, end) = (when.instant(Clock::new(12, 0)), when.midnight());
    let hour_before = |sunset: Timestamp| sunset.checked_sub(SignedDuration::from_mins(BEFORE_SUNSET)).ok();
    let sunset = crossing(when, SUNSET_DEG).filter(|sunset| *sunset < end);
    // On whole minutes of the clock.
    let minute = |instant: Timestamp| when.instant(when.clock_at(instant));
    let begin = sunset.and_then(hour_before).map_or(noon, minute);
    let instants = std::iter::successors(Some(begin), |instant| instant.checked_add(step).ok());
    let moment = |instant| Moment { instant, clock: when.clock_at(instant), ambient: Ambient::at(when, instant) };
    instants.take_while(|instant| *instant <= end).map(moment).collect()
}
