//! When a station can be seen, and when no more.

use super::{Hour, Hours};
use crate::{judge::Word, units::border};
use jiff::Timestamp;
use serde::Serialize;

/// A time over which a station is seen well enough without a break.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Run {
    /// The first minute of it; where it has gone on since before the evening begins, that beginning.
    pub from: Hour,
    /// The first minute after it, or when the visitors have gone if it lasts until then.
    pub until: Hour,
    /// Whether it lasts until the visitors have gone.
    pub lasts: bool,
}

/// From when on a station is seen well enough, on one evening.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Start {
    /// The run that holds the most of the visitors' hours, of equal ones the later; `None` where it is never seen well enough
    /// while they are there.
    pub run: Option<Run>,
    /// Share of the visitors' hours over which it is seen well enough, in all.
    #[serde(serialize_with = "border::light")]
    pub share: f64,
    /// The word as visitors begin to come; `None` where nothing of the figure is in sight.
    pub first: Option<Word>,
    /// The word in the last minute before they have gone.
    pub last: Option<Word>,
}

impl Start {
    /// From all runs up to when the visitors have gone.
    pub(super) fn of(runs: &[Run], hours: &Hours, [first, last]: [Option<Word>; 2]) -> Self {
        let seconds = |from: Timestamp, until: Timestamp| until.duration_since(from).as_secs().max(0);
        let held = |run: &Run| seconds(run.from.instant.max(hours.from.instant), run.until.instant);
        let all = seconds(hours.from.instant, hours.until.instant).max(1);
        let share = runs.iter().map(held).sum::<i64>() as f64 / all as f64;
        // Of equal ones `max_by_key` takes the last.
        let run = runs.iter().filter(|run| held(run) > 0).max_by_key(|run| held(run)).copied();
        Self { run, share: share.min(1.0), first, last }
    }
}
