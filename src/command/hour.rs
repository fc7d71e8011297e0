//! `--date` and `--clock`: a yard at another hour than its own.

use super::{Failure, stage::Stage};
use gauzelight::scene::{Clock, Date};

/// Options that set the evening's date and clock.
#[derive(clap::Args)]
pub struct Hour {
    /// Date in place of the yard's own, as 2026-12-21
    #[arg(long, value_parser = date)]
    date: Option<Date>,
    /// Clock time in place of the yard's own, as 18:30
    #[arg(long, value_parser = clock)]
    clock: Option<Clock>,
}

impl Hour {
    /// Sets them in a yard whose evening has a date.
    pub fn set(&self, stage: &mut Stage) -> Result<(), Failure> {
        if self.date.is_none() && self.clock.is_none() {
            return Ok(());
        }
        let Some(when) = &mut stage.yard.evening.when else {
            let words =
                "the yard's evening has no date and place for --date and --clock to change; write `when` into it";
            return Err(Failure::options(words));
        };
        when.date = self.date.unwrap_or(when.date);
        when.clock = self.clock.unwrap_or(when.clock);
        Ok(())
    }
}

fn date(text: &str) -> Result<Date, String> {
    Date::parse(text).map_err(|fault| fault.to_string())
}

fn clock(text: &str) -> Result<Clock, String> {
    Clock::parse(text).map_err(|fault| fault.to_string())
}
