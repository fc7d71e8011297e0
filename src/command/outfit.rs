//! `outfit`: what boxes, power and wind ask for, what is seen of it by day, and what to do when.

use super::{Failure, stage::Stage, trust::Trust, which};
use gauzelight::{
    craft::{cautions, money::Running, power::PowerReport, running, shelter, wind::WindReport},
    judge::{HiddenReading, read_hidden},
    scene::{Catalogue, Station, Yard},
    sheet::{self, Notes, Part},
};
use serde::Serialize;
use std::{fmt::Write as _, path::PathBuf};

/// Options of `outfit`.
#[derive(clap::Args)]
pub struct Outfit {
    /// Yard to fit out
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Only what this station asks for
    #[arg(long, value_name = "NAME")]
    station: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Everything, as JSON has it.
#[derive(Serialize)]
struct All {
    boxes: Vec<shelter::ShelterReport>,
    power: PowerReport,
    wind: WindReport,
    seen_by_day: Vec<HiddenReading>,
    tasks: Vec<(String, Vec<running::Task>)>,
    cautions: Vec<cautions::Caution>,
}

impl Outfit {
    /// Prints it.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let stage = Stage::open(&self.yard, self.trust)?;
        let (yard, catalogue) = (&stage.yard, &stage.catalogue);
        let stations = self.chosen(yard)?;
        let night = stage.night()?;
        if let Some(name) = self.station.as_ref().filter(|_| !self.json) {
            let index = yard.stations.iter().position(|station| station.name.0 == *name).unwrap_or_default();
            let notes = sheet::brief_in_full(yard, catalogue, &night);
            super::say(notes.get(index).map(of_one).unwrap_or_default().trim_end());
            return Ok(());
        }
        let mut all = All {
            boxes: stations.iter().filter_map(|station| shelter::report(yard, catalogue, station)).collect(),
            power: PowerReport::of(yard, catalogue, Running::of(yard, 1)),
            wind: WindReport::of(yard, catalogue),
            seen_by_day: read_hidden(&night, yard, catalogue),
            tasks: stations.iter().map(|s| (s.name.0.clone(), running::tasks(yard, catalogue, s))).collect(),
            cautions: cautions_of(yard, catalogue, &stations, self.station.is_some()),
        };
        all.seen_by_day.retain(|reading| stations.iter().any(|station| station.name.0 == reading.station));
        if self.json {
            super::say(serde_json::to_string_pretty(&all).map_err(Failure::said)?);
        } else {
            super::say(page(&all, yard).trim_end());
        }
        Ok(())
    }

    fn chosen<'a>(&self, yard: &'a Yard) -> Result<Vec<&'a Station>, Failure> {
        let Some(name) = &self.station else { return Ok(yard.stations.iter().collect()) };
        let found = yard.stations.iter().find(|station| station.name.0 == *name);
        let names: Vec<&str> = yard.stations.iter().map(|station| station.name.0.as_str()).collect();
        let none = || Failure::options(format!("there is no station “{name}”; there are: {}", names.join(", ")));
        Ok(vec![found.ok_or_else(none)?])
    }
}

fn cautions_of(yard: &Yard, catalogue: &Catalogue, stations: &[&Station], one: bool) -> Vec<cautions::Caution> {
    match stations {
        [station] if one => cautions::of_station(yard, catalogue, station),
        _ => cautions::of_yard(yard, catalogue),
    }
}

/// What one station asks for, part by part of the work.
fn of_one(notes: &Notes) -> String {
    let mut page = String::new();
    for part in Part::ALL {
        for (title, lines) in notes.of(part) {
            page += &format!("{}: {title}\n", part.name());
            page.extend(lines.iter().map(|line| format!("  {line}\n")));
            page.push('\n');
        }
    }
    page
}

/// All of it as text.
fn page(all: &All, yard: &Yard) -> String {
    let style = yard.units.style();
    let mut page = format!("Power\n\n{}\nWind\n\n{}\n", all.power.page(style), all.wind.page(style));
    for report in &all.boxes {
        page += &format!("{}\n", report.page(style));
    }
    for reading in &all.seen_by_day {
        // Writing to a string cannot fail.
        let _ = writeln!(page, "{}", reading.says());
    }
    page.push('\n');
    for (station, tasks) in &all.tasks {
        page += &format!("{}\n", running::page(station, tasks));
    }
    page + &format!("Be careful\n\n{}", cautions::page(&all.cautions))
}
