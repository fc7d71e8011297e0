//! `compare`: fabrics, pairs of them, or projectors held against each other for a station, before any is bought.

mod draw;
mod table;

use super::{Failure, hour::Hour, stage::Stage, still::find_spot, trust::Trust, which};
use gauzelight::craft::money::Running;
use gauzelight::files::Kept;
use gauzelight::judge::compare::{Comparison, Key, Of, Question, compare};
use std::path::PathBuf;

/// Options of `compare`.
#[derive(clap::Args)]
pub struct Compare {
    /// Yard that the station is in
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Station to compare for
    #[arg(long, value_name = "NAME")]
    station: String,
    /// What is compared: fabrics, pairs (two layers of fabric) or projectors
    #[arg(long, default_value = "fabrics", value_parser = of)]
    of: Of,
    /// Viewing spot to show, and to sort by; all are shown where none is named
    #[arg(long, value_name = "SPOT")]
    from: Option<String>,
    /// What to sort by: name, word, luminance, ghost, day, through or cost
    #[arg(long, default_value = "word", value_parser = key)]
    sort: Key,
    /// Seasons that a projector is to last, for the lamps that it takes
    #[arg(long, default_value_t = 5, value_parser = clap::value_parser!(u32).range(1..=100))]
    seasons: u32,
    /// As JSON
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// As CSV, a line for each row and viewing spot
    #[arg(long)]
    csv: bool,
    /// Also draw it there: luminance against what passes straight through; of projectors, against lumens
    #[arg(long, value_name = "FILE.svg")]
    plot: Option<PathBuf>,
    #[command(flatten)]
    hour: Hour,
}

impl Compare {
    /// Prints the comparison.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        if let Some(plot) = &self.plot {
            draw::can_write(plot, &Kept::none())?;
        }
        let mut stage = Stage::open(&self.yard, self.trust)?;
        self.hour.set(&mut stage)?;
        let kept = stage.kept();
        if let Some(plot) = &self.plot {
            draw::can_write(plot, &kept)?;
        }
        let station = find_station(&stage, &self.station)?;
        let from = match &self.from {
            Some(name) => {
                find_spot(&stage, Some(name))?;
                stage.yard.spots.iter().position(|spot| spot.name.0 == *name)
            }
            None => None,
        };
        let night = stage.night()?;
        let question = Question {
            yard: &stage.yard,
            catalogue: &stage.catalogue,
            night: &night,
            shelf: &stage.shelf,
            station,
            of: self.of,
            running: Running::of(&stage.yard, self.seasons),
        };
        let mut comparison = compare(question).map_err(Failure::said)?;
        let by = from.unwrap_or_else(|| comparison.usual_spot());
        comparison.sort(self.sort, by);
        // Before anything is printed: who has read enough still gets the plot.
        if let Some(plot) = &self.plot {
            draw::write(&comparison, by, plot, &kept)?;
        }
        if self.json {
            super::say(serde_json::to_string_pretty(&comparison).map_err(Failure::said)?);
        } else if self.csv {
            super::say(table::csv(&comparison, from).trim_end());
        } else {
            super::say(table::text(&comparison, from, stage.yard.units).trim_end());
        }
        Ok(())
    }
}

fn find_station(stage: &Stage, name: &str) -> Result<usize, Failure> {
    let stations = &stage.yard.stations;
    stations.iter().position(|station| station.name.0 == name).ok_or_else(|| {
        let names: Vec<&str> = stations.iter().map(|station| station.name.0.as_str()).collect();
        Failure::options(match names.as_slice() {
            [] => "the yard has no station to compare for".to_owned(),
            names => format!("no station is called “{name}”; there are: {}", names.join(", ")),
        })
    })
}

fn of(word: &str) -> Result<Of, String> {
    Of::ALL.into_iter().find(|of| of.name() == word).ok_or_else(|| one_of(&Of::ALL.map(Of::name)))
}

fn key(word: &str) -> Result<Key, String> {
    Key::ALL.into_iter().find(|key| key.name() == word).ok_or_else(|| one_of(&Key::ALL.map(Key::name)))
}

fn one_of(names: &[&str]) -> String {
    format!("it is one of: {}", names.join(", "))
}

/// The spots that are shown: the one that was named, or all.
fn shown(comparison: &Comparison, from: Option<usize>) -> Vec<usize> {
    from.map_or_else(|| (0..comparison.spots.len()).collect(), |spot| vec![spot])
}
