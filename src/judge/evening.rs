//! From when on can it be seen: the word of every station over an evening, and over a season against the visitors' hours.
//!
//! Light adds up, so nothing is traced twice: a [`Watch`] traces each station once under an even night with every lamp lit and
//! then weighs sky and lamps by the clock. Only the disc of sun or moon is traced anew, by where it stands.

mod course;
mod hours;
mod season;
mod start;
mod watch;

pub use course::{EveningCourse, Thread};
pub use hours::{Hour, Hours};
pub use season::{Season, SeasonNight, season_dates};
pub use start::{Run, Start};
pub use watch::Watch;
