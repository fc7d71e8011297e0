//! Every evening of a season.

use super::{Hours, Start, Watch};
use crate::{
    judge::Word,
    light::ambient::Moment,
    scene::{Date, When, Yard},
    units::border,
};
use serde::{Serialize, Serializer};

/// Days before and after the evening's date that stand for a yard's season where it gives none.
const AROUND: i64 = 30;
/// Minutes from step to step; between them changes are found to the minute.
const STEP: u16 = 5;

/// From when on every station is seen well enough, night by night.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Season {
    /// The word that is well enough.
    pub wanted: Word,
    /// Names of the stations that are on and not hidden.
    pub stations: Vec<String>,
    /// The nights in order.
    pub nights: Vec<SeasonNight>,
}

/// One night of a season.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SeasonNight {
    /// The evening's date.
    #[serde(serialize_with = "as_text")]
    pub date: Date,
    /// Sunset and the visitors' hours.
    #[serde(flatten)]
    pub hours: Hours,
    /// Illuminance of open level ground by the moon, mean over the visitors' hours, lx.
    #[serde(serialize_with = "border::light")]
    pub moon_lx: f64,
    /// For every station from when on it is seen well enough.
    pub starts: Vec<Start>,
}

fn as_text<S: Serializer>(date: &Date, to: S) -> Result<S::Ok, S::Error> {
    to.collect_str(date)
}

/// The dates of a yard's season, or those within 30 days of the evening's where it gives none.
pub fn season_dates(yard: &Yard, when: &When) -> Vec<Date> {
    match yard.season {
        Some((first, last)) => {
            std::iter::successors(Some(first), |date| date.later(1)).take_while(|date| *date <= last).collect()
        }
        None => (-AROUND..=AROUND).filter_map(|days| when.date.later(days)).collect(),
    }
}

impl Watch {
    /// The season at a place; `wanted` is the word that is well enough.
    pub fn season(&mut self, yard: &Yard, when: &When, wanted: Word) -> Season {
        let nights = season_dates(yard, when).into_iter().map(|date| self.season_night(yard, &when.on(date), wanted));
        let nights = nights.collect();
        let stations = (0..self.len()).map(|at| self.station(at).1.to_owned()).collect();
        Season { wanted, stations, nights }
    }

    /// One night at a place; `wanted` is the word that is well enough.
    pub fn season_night(&mut self, yard: &Yard, when: &When, wanted: Word) -> SeasonNight {
        let hours = Hours::of(yard, when);
        let moments = hours.moments(when, STEP, hours.until.instant, self.switches());
        let starts = (0..self.len()).map(|at| {
            let words: Vec<Option<Word>> = moments.iter().map(|moment| self.word(at, moment, wanted)).collect();
            self.start(at, when, &hours, (&moments, &words), wanted)
        });
        let starts = starts.collect();
        SeasonNight { date: when.date, hours, moon_lx: mean_moon_lx(&moments, &hours), starts }
    }
}

/// The moon's light on open level ground, mean over the time that visitors are there, lx.
fn mean_moon_lx(moments: &[Moment], hours: &Hours) -> f64 {
    let between = moments.windows(2).filter(|pair| hours.has_visitors(pair[0].instant));
    let (mut sum, mut seconds) = (0.0, 0.0);
    for pair in between {
        let long = pair[1].instant.duration_since(pair[0].instant).as_secs_f64();
        sum += 0.5 * long * (pair[0].ambient.moon_lx + pair[1].ambient.moon_lx);
        seconds += long;
    }
    if seconds > 0.0 { sum / seconds } else { 0.0 }
}
