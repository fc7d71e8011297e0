//! `judge`: what a decorator should know, worst first, and what would help.

use super::{Failure, hour::Hour, stage::Stage, still::find_spot, which};
use gauzelight::judge::findings::{Case, Finding, Level, Remedy, judge, remedies};
use serde::Serialize;
use std::{fmt::Write as _, path::PathBuf};

/// Options of `judge`.
#[derive(clap::Args)]
pub struct Judge {
    /// Yard to judge
    yard: PathBuf,
    /// Only what shows from this viewing spot, and what is told once for all of them
    #[arg(long, value_name = "SPOT")]
    from: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
    /// Without trying what would help, which takes longest
    #[arg(long)]
    quick: bool,
    #[command(flatten)]
    hour: Hour,
}

/// A finding with what helps.
#[derive(Serialize)]
struct Told {
    #[serde(flatten)]
    finding: Finding,
    remedies: Vec<Help>,
}

#[derive(Serialize)]
struct Help {
    does: String,
    worsens: Vec<String>,
}

impl Judge {
    /// Prints the findings; the worst of them is the exit code.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let mut stage = Stage::open(&self.yard)?;
        self.hour.set(&mut stage)?;
        if let Some(from) = &self.from {
            find_spot(&stage, Some(from))?;
        }
        if stage.yard.spots.is_empty() {
            super::aside(
                "note: this yard has no viewing spot, so nothing is judged that an eye must see; write one under spots",
            );
        }
        let night = stage.night()?;
        let case = Case::of(&stage.yard, &stage.catalogue, &night);
        let folder = self.yard.parent();
        let here = |finding: &Finding| self.from.is_none() || finding.from.is_none() || finding.from == self.from;
        let told = judge(&case).into_iter().filter(here).map(|finding| {
            let found = if self.quick { Vec::new() } else { remedies(&case, &finding, &stage.shelf, folder) };
            let help = |remedy: Remedy| Help { does: remedy.says, worsens: remedy.worsens };
            Told { finding, remedies: found.into_iter().map(help).collect() }
        });
        let told: Vec<Told> = told.collect();
        if case.lit().next().is_none() {
            super::aside(
                "note: no station lights anything, so there is little to judge: switch one on, bring it out or aim it",
            );
        }
        if self.json {
            super::say(serde_json::to_string_pretty(&told).map_err(Failure::said)?);
        } else {
            super::say(page(&told, self.quick).trim_end());
        }
        match told.iter().map(|told| told.finding.level).max() {
            Some(level) => Err(Failure::Judged(level)),
            None => Ok(()),
        }
    }
}

fn page(told: &[Told], quick: bool) -> String {
    let mut page = String::new();
    if told.is_empty() {
        return "fine: nothing to mend was found\n".to_owned();
    }
    for level in [Level::Fix, Level::Check] {
        for Told { finding, remedies } in told.iter().filter(|told| told.finding.level == level) {
            let unsure = if finding.unsure { "  (a measurement would decide)" } else { "" };
            let _ = writeln!(page, "{:<6} {}{unsure}", level.name(), finding.says);
            let _ = writeln!(page, "       why: {}", finding.why);
            for remedy in remedies {
                let _ = writeln!(page, "       helps: {}", remedy.does);
                for worse in &remedy.worsens {
                    let _ = writeln!(page, "              but then: {worse}");
                }
            }
            if remedies.is_empty() && !quick {
                let _ = writeln!(page, "       nothing that was tried takes it away");
            }
        }
    }
    page
}
