//! `sheet`: paper for the day with the ladder.

use super::{Failure, home, stage::Stage, still::find_spot, trust::Trust, which};
use gauzelight::{
    files::{self, Kept},
    judge::findings::{Case, judge},
    scene::Units,
    sheet::{self, Paper, Setup, Subject},
};
use std::path::PathBuf;

/// Options of `sheet`.
#[derive(clap::Args)]
pub struct Hang {
    /// Yard to hang
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// File to write: .pdf, or .html
    #[arg(long)]
    out: PathBuf,
    /// Paper to print on; Letter where people measure in feet, else A4
    #[arg(long, value_enum)]
    paper: Option<PaperName>,
    /// Units in place of the yard's own
    #[arg(long, value_enum)]
    units: Option<UnitsName>,
    /// Viewing spot that the pictures are taken from; the first where none is named
    #[arg(long, value_name = "SPOT")]
    from: Option<String>,
}

/// A paper by its name.
#[derive(Clone, Copy, clap::ValueEnum)]
pub enum PaperName {
    /// ISO A4
    A4,
    /// US Letter
    Letter,
}

/// Units by their name.
#[derive(Clone, Copy, clap::ValueEnum)]
pub enum UnitsName {
    /// Metres, to the millimetre
    Metric,
    /// Feet and inches, to the sixteenth
    Feet,
}

impl Hang {
    /// Writes the sheet.
    pub fn run(&self) -> Result<(), Failure> {
        let ending = self.out.extension().and_then(|e| e.to_str()).unwrap_or("").to_ascii_lowercase();
        if !matches!(ending.as_str(), "pdf" | "html") && !self.out.is_dir() {
            return Err(Failure::options(format!("a hang sheet is a .pdf or an .html, not {}", self.out.display())));
        }
        which::there(&self.yard, &[])?;
        let may_write = |kept: &Kept| files::check(&self.out, kept).map_err(|e| Failure::unwritten("the sheet", &e));
        may_write(&Kept::none())?;
        let mut stage = Stage::open(&self.yard, self.trust)?;
        let kept = stage.kept();
        may_write(&kept)?;
        match self.units {
            Some(UnitsName::Metric) => stage.yard.units = Units::Metric,
            Some(UnitsName::Feet) => stage.yard.units = Units::Feet,
            None => {}
        }
        let units = stage.yard.units;
        let spots = &stage.yard.spots;
        let from = match &self.from {
            Some(name) => {
                let spot = find_spot(&stage, Some(name))?;
                spots.iter().position(|other| other.name == spot.name).unwrap_or_default()
            }
            None => 0,
        };
        if spots.is_empty() {
            super::aside("note: this yard has no viewing spot, so its sheet has no picture; write one under spots");
        }
        let paper = match self.paper {
            Some(PaperName::A4) => Paper::A4,
            Some(PaperName::Letter) => Paper::Letter,
            None if units == Units::Feet || home::units() == Units::Feet => Paper::Letter,
            None => Paper::A4,
        };
        let night = stage.night()?;
        let case = Case::of(&stage.yard, &stage.catalogue, &night);
        let findings = judge(&case);
        let bar = indicatif::ProgressBar::new(100);
        bar.set_draw_target(indicatif::ProgressDrawTarget::stderr_with_hz(8));
        let views = sheet::views(&night, &stage.yard, from, |share| bar.set_position((share * 100.0) as u64));
        bar.finish_and_clear();
        let (notes, station_notes) = sheet::brief(&stage.yard, &stage.catalogue, &night);
        let subject = Subject {
            yard: &stage.yard,
            catalogue: &stage.catalogue,
            night: &night,
            stand_ins: &stage.shelf.stand_ins,
            findings: &findings,
            views: &views,
            notes: &notes,
            station_notes: &station_notes,
        };
        let sheet = sheet::lay_out(&subject, Setup { paper, units });
        if !sheet.lost.is_empty() {
            let lost: String = sheet.lost.iter().collect();
            super::aside(format_args!("note: the sheet's font lacks these characters, and has � for each: {lost}"));
        }
        let bytes = if ending == "pdf" {
            sheet::pdf(&sheet).map_err(Failure::said)?
        } else {
            sheet::html(&sheet, paper).into_bytes()
        };
        files::write(&self.out, &bytes, &kept).map_err(|error| Failure::unwritten("the sheet", &error))?;
        super::say(self.out.display());
        stage.complete()
    }
}
