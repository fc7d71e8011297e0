//! One evening of every station from one spot.

use super::{Hours, Start, Watch};
use crate::{
    judge::Word,
    light::ambient::Moment,
    scene::{When, Yard},
};

/// How every station is seen over an evening.
#[derive(Clone, Debug, PartialEq)]
pub struct EveningCourse {
    /// Sunset and the visitors' hours.
    pub hours: Hours,
    /// The moments in order, from before sunset to midnight or to when the visitors have gone, with their light.
    pub moments: Vec<Moment>,
    /// For every station that is on and not hidden its words.
    pub threads: Vec<Thread>,
}

/// How one station is seen over an evening.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    /// Index of the station in the yard.
    pub index: usize,
    /// Its name.
    pub station: String,
    /// The word at each of the moments, at typical values; empty where nothing of the figure is in sight.
    pub words: Vec<Word>,
    /// From when on it is seen well enough.
    pub start: Start,
}

impl Watch {
    /// The evening at a place, a word every so many minutes and whenever a lamp is switched; `wanted` is the word that is well enough.
    pub fn course(&mut self, yard: &Yard, when: &When, step_minutes: u16, wanted: Word) -> EveningCourse {
        let hours = Hours::of(yard, when);
        let moments = hours.moments(when, step_minutes, hours.end, self.switches());
        let threads = (0..self.len()).map(|at| {
            let words: Vec<Option<Word>> = moments.iter().map(|moment| self.word(at, moment, Word::Faint)).collect();
            let start = self.start(at, when, &hours, (&moments, &words), wanted);
            let (index, station) = self.station(at);
            Thread { index, station: station.to_owned(), words: words.into_iter().flatten().collect(), start }
        });
        let threads = threads.collect();
        EveningCourse { hours, moments, threads }
    }
}
