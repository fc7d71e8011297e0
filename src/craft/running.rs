//! Keeping a station running: what to try before the first night, what to do on it, each evening, weekly, and on taking it down;
//! made from its class, mount, box and what it lights.

mod lists;
mod page;

pub use lists::tasks;
pub use page::page;

use serde::Serialize;

/// When a task is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Moment {
    /// At a table, some days before.
    Before,
    /// On the first night.
    FirstNight,
    /// Each evening.
    EachEvening,
    /// Once a week.
    Weekly,
    /// When it comes down.
    TakeDown,
}

impl Moment {
    /// Every one, in the order of a season.
    pub const ALL: [Self; 5] = [Self::Before, Self::FirstNight, Self::EachEvening, Self::Weekly, Self::TakeDown];

    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Before => "Before the first night",
            Self::FirstNight => "First night",
            Self::EachEvening => "Each evening",
            Self::Weekly => "Weekly",
            Self::TakeDown => "Take-down",
        }
    }
}

/// Something to do.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Task {
    /// When.
    pub when: Moment,
    /// What.
    pub text: String,
    /// What to beware of, if anything.
    pub caution: Option<String>,
}

/// Columns of the fault log: a printed table with nothing in it yet.
pub const FAULT_LOG: [&str; 5] = ["Day, time", "Weather", "What was seen", "What was done", "For next year"];
