//! `validate`: all faults of a yard.

use super::{Failure, stage};
use std::path::PathBuf;

/// Options of `validate`.
#[derive(clap::Args)]
pub struct Validate {
    /// Yard to look at
    yard: PathBuf,
    /// One line a fault, for editors: FILE:LINE:COLUMN: …
    #[arg(long)]
    lines: bool,
}

impl Validate {
    /// Looks for faults.
    pub fn run(&self) -> Result<(), Failure> {
        let (faults, sound) = match stage::load(&self.yard) {
            Ok(loaded) => (loaded.warnings, true),
            Err(faults) => (faults, false),
        };
        if self.lines {
            eprint!("{}", faults.plain());
        } else if !faults.is_empty() {
            stage::tell(&faults);
        }
        if !sound {
            return Err(Failure::Faults);
        }
        super::say(format!(
            "{} is sound{}",
            self.yard.display(),
            if faults.is_empty() { "" } else { ", with warnings" }
        ));
        Ok(())
    }
}
