//! `judge`: what a decorator should know, worst first, and what would help.

use super::{
    Failure,
    hour::Hour,
    progress::{shown, timed},
    stage::Stage,
    still::find_spot,
    trust::Trust,
    which,
};
use gauzelight::judge::findings::{Case, Finding, Remedy, Told, Work, all_remedies, each, judge, short, told};
use serde::Serialize;
use std::{fmt::Write as _, path::PathBuf};

/// Lines of the short list.
const LINES: usize = 12;
/// Characters of a line.
const WIDTH: usize = 160;

/// Options of `judge`.
#[derive(clap::Args)]
pub struct Judge {
    /// Yard to judge
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Only what shows from this viewing spot, and what is told once for all of them
    #[arg(long, value_name = "SPOT")]
    from: Option<String>,
    /// Every finding on a line of its own
    #[arg(long)]
    all: bool,
    /// With each: its limit and where that comes from, every place, what helps and what that makes worse
    #[arg(long)]
    why: bool,
    /// As JSON, with everything
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
struct Helped {
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
        let mut stage = Stage::open(&self.yard, self.trust)?;
        self.hour.set(&mut stage)?;
        if let Some(from) = &self.from {
            find_spot(&stage, Some(from))?;
        }
        if stage.yard.spots.is_empty() {
            super::aside(
                "note: this yard has no viewing spot, so nothing is judged that an eye must see; write one under spots",
            );
        }
        let night = stage.night()?.remembering();
        let (case, found) = timed("judging", || {
            let case = Case::of(&stage.yard, &stage.catalogue, &night);
            let found = judge(&case);
            (case, found)
        });
        let mut found: Vec<Finding> = match &self.from {
            Some(from) => found.into_iter().filter(|one| one.shows_from(from)).map(|one| one.seen_from(from)).collect(),
            None => found,
        };
        // What is to be mended elsewhere may be worth no more than a look from there.
        found.sort_by_key(|finding| std::cmp::Reverse(finding.level));
        if case.lit().next().is_none() {
            super::aside(
                "note: no station lights anything, so there is little to judge: switch one on, bring it out or aim it",
            );
        }
        let folder = self.yard.parent();
        let tried = (self.why || self.json) && !self.quick;
        let work = Work::default();
        let try_all = || all_remedies(&case, &found, &stage.shelf, folder, &work);
        let remedies =
            if tried { shown("trying what helps", &work, try_all).map_err(Failure::said)? } else { Vec::new() };
        let help = |finding: &Finding| -> Vec<Help> {
            let help = |remedy: &Remedy| Help { does: remedy.says.clone(), worsens: remedy.worsens.clone() };
            let of = found.iter().zip(&remedies).find(|(one, _)| *one == finding);
            of.map_or_else(Vec::new, |(_, found)| found.iter().map(help).collect())
        };
        let lines = if self.all { each(&found) } else { told(&found) };
        if self.json {
            let helped: Vec<Helped> =
                found.iter().map(|one| Helped { finding: one.clone(), remedies: help(one) }).collect();
            super::say(serde_json::to_string_pretty(&helped).map_err(Failure::said)?);
        } else if found.is_empty() {
            super::say("fine: nothing to mend was found");
        } else if self.why {
            super::say(self.reasons(&lines, help).trim_end());
        } else {
            let most = if self.all { usize::MAX } else { LINES };
            super::say(short(&lines, most, WIDTH).join("\n"));
        }
        match found.iter().map(|finding| finding.level).max() {
            Some(level) => Err(Failure::Judged(level)),
            None => Ok(()),
        }
    }

    /// Every line with its reasons; where a limit comes from is said once for all of them, at the end.
    fn reasons(&self, lines: &[Told<'_>], help: impl Fn(&Finding) -> Vec<Help>) -> String {
        let mut page = String::new();
        let mut sources: Vec<&str> = Vec::new();
        for line in lines {
            let _ = writeln!(page, "{}", line.line(WIDTH));
            for finding in line.findings() {
                let at = sources.iter().position(|why| *why == finding.why).unwrap_or_else(|| {
                    sources.push(&finding.why);
                    sources.len() - 1
                });
                let _ = writeln!(page, "       {}; limit [{}]", finding.says, at + 1);
                for place in finding.places.iter().skip(1) {
                    let _ = writeln!(page, "       {}", place.says);
                }
                let found = help(finding);
                for remedy in &found {
                    let _ = writeln!(page, "       helps: {}", remedy.does);
                    for worse in &remedy.worsens {
                        let _ = writeln!(page, "              but then: {worse}");
                    }
                }
                if found.is_empty() && !self.quick {
                    let _ = writeln!(page, "       nothing that was tried takes it away");
                }
            }
        }
        let _ = writeln!(page, "\nLimits");
        for (at, why) in sources.iter().enumerate() {
            let _ = writeln!(page, "  [{}] {why}", at + 1);
        }
        page
    }
}
