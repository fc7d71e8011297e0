//! `evening`: from when on every station is seen well enough, tonight and over a season.

mod tables;

use super::{Failure, hour::Hour, stage::Stage, still::find_spot, trust::Trust, which};
use gauzelight::{
    files::{self, Kept},
    judge::{
        Word,
        evening::{EveningCourse, Season, SeasonNight, Watch},
    },
    light::ambient::Moment,
    picture::plot,
    units::border::sent_light,
};
use serde::Serialize;
use std::path::PathBuf;

/// Minutes from step to step of the course that JSON has.
const STEP: u16 = 5;

/// Options of `evening`.
#[derive(clap::Args)]
pub struct Evening {
    /// Yard whose evening has a date and place
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Viewing spot to look from; the first one where none is named
    #[arg(long, value_name = "SPOT")]
    from: Option<String>,
    /// The word that is well enough: faint, clear or strong
    #[arg(long, value_name = "WORD", default_value = "clear", value_parser = word)]
    word: Word,
    /// Every night of the yard's season, or 30 days before and after the date where it gives none
    #[arg(long)]
    season: bool,
    /// As JSON, with the whole course of tonight
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// As CSV, a line for each night and station
    #[arg(long)]
    csv: bool,
    /// Write a plot of the season, an .svg
    #[arg(long, value_name = "FILE")]
    plot: Option<PathBuf>,
    #[command(flatten)]
    hour: Hour,
}

/// Everything, as JSON has it.
#[derive(Serialize)]
struct All<'a> {
    spot: &'a str,
    wanted: Word,
    stations: Vec<&'a str>,
    tonight: &'a SeasonNight,
    course: Vec<Step>,
    #[serde(skip_serializing_if = "Option::is_none")]
    season: Option<&'a [SeasonNight]>,
}

/// A step of tonight's course.
#[derive(Serialize)]
struct Step {
    clock: String,
    /// Illuminance of open level ground in all, lx.
    lx: f64,
    /// What of it the sky gives, lx.
    sky_lx: f64,
    /// What of it the moon gives, straight and by way of the sky, lx.
    moon_lx: f64,
    words: Vec<Option<Word>>,
}

impl Evening {
    /// Prints the tables, and writes the plot.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        if let Some(file) = self.plot.as_ref().filter(|file| file.extension().is_none_or(|end| end != "svg")) {
            return Err(Failure::options(format!("a plot is an .svg, not {}", file.display())));
        }
        let may_write = |kept: &Kept| match &self.plot {
            Some(file) => files::check(file, kept).map_err(|error| Failure::unwritten("the plot", &error)),
            None => Ok(()),
        };
        may_write(&Kept::none())?;
        let mut stage = Stage::open(&self.yard, self.trust)?;
        self.hour.set(&mut stage)?;
        let kept = stage.kept();
        may_write(&kept)?;
        let Some(when) = stage.yard.evening.when.clone() else {
            return Err(Failure::options(
                "the yard's evening has no date and place, which sunset and twilight follow from; write them into it, as \
                 evening: (when: (date: \"2026-12-21\", clock: \"18:30\", latitude_deg: 52.5, longitude_deg: 13.4, \
                 zone: \"Europe/Berlin\", faces_deg: 180))",
            ));
        };
        if stage.yard.spots.is_empty() {
            return Err(Failure::options("the yard has no viewing spot to look from; write one into its `spots`"));
        }
        let spot = find_spot(&stage, self.from.as_deref())?.name.0.clone();
        let at = stage.yard.spots.iter().position(|s| s.name.0 == spot).unwrap_or_default();
        let night = stage.night()?;
        let mut watch = Watch::of(&night, &stage.yard, &stage.catalogue, &stage.shelf, at).map_err(Failure::said)?;
        let tonight = watch.season_night(&stage.yard, &when, self.word);
        let season = (self.season || self.plot.is_some()).then(|| watch.season(&stage.yard, &when, self.word));
        if let (Some(file), Some(season)) = (&self.plot, &season) {
            let drawn = plot::season(season, &stage.yard.name.0, &spot, &when.zone.to_string());
            files::write(file, drawn.as_bytes(), &kept).map_err(|error| Failure::unwritten("the plot", &error))?;
        }
        let shown = season.as_ref().filter(|_| self.season);
        let stations: Vec<&str> = (0..watch.len()).map(|at| watch.station(at).1).collect();
        if self.json {
            let stations: Vec<String> = stations.into_iter().map(str::to_owned).collect();
            let course = watch.course(&stage.yard, &when, STEP, self.word);
            let all = All {
                spot: &spot,
                wanted: self.word,
                stations: stations.iter().map(String::as_str).collect(),
                tonight: &tonight,
                course: steps(&course),
                season: shown.map(|season| season.nights.as_slice()),
            };
            super::say(serde_json::to_string_pretty(&all).map_err(Failure::said)?);
        } else if self.csv {
            let nights = shown.map_or(std::slice::from_ref(&tonight), |season| &season.nights);
            super::say(tables::csv(nights, &stations, &spot, self.word).trim_end());
        } else {
            let light = [tonight.hours.from, tonight.hours.until]
                .map(|hour| Moment::of(&when, stage.yard.setting, hour.instant).ambient.level_lx());
            let mut page = tables::tonight(&tonight, &stations, &spot, self.word, light);
            page += &shown.map_or_else(String::new, |season: &Season| format!("\n{}", tables::season(season)));
            super::say(page.trim_end());
        }
        Ok(())
    }
}

fn steps(course: &EveningCourse) -> Vec<Step> {
    let step = |(at, moment): (usize, &Moment)| Step {
        clock: moment.clock.to_string(),
        lx: sent_light(moment.ambient.level_lx()),
        sky_lx: sent_light(moment.ambient.sky_lx),
        moon_lx: sent_light(moment.ambient.moon_lx),
        words: course.threads.iter().map(|thread| thread.words.get(at).copied()).collect(),
    };
    course.moments.iter().enumerate().map(step).collect()
}

fn word(text: &str) -> Result<Word, String> {
    let words = &Word::ALL[1..];
    let found = words.iter().find(|word| word.name() == text.trim().to_lowercase());
    found.copied().ok_or_else(|| "one of faint, clear and strong".to_owned())
}
