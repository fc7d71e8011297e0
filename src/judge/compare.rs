//! Compare before buying: what a station would give on every fabric that fits its target, on every pair of them, or with every
//! projector class, each tried in a copy of the yard.

mod candidate;
mod key;
mod money;
mod row;

pub use key::Key;
pub use row::{FromSpot, Ghost, Row};

use super::{StationReading, read_station};
use crate::{
    craft::money::Running,
    edit::Edit,
    frames::Shelf,
    light::{Followed, Night},
    scene::{Catalogue, Yard},
};
use candidate::Candidate;
use rayon::prelude::*;
use serde::Serialize;

/// What is held against each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Of {
    /// Every fabric that fits the target: films for a film, the rest for a hanging cloth.
    Fabrics,
    /// Every two layers of them, in either order; of a hanging cloth only.
    Pairs,
    /// Every projector class, from where the station stands.
    Projectors,
}

impl Of {
    /// Each of them.
    pub const ALL: [Self; 3] = [Self::Fabrics, Self::Pairs, Self::Projectors];

    /// What to call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Fabrics => "fabrics",
            Self::Pairs => "pairs",
            Self::Projectors => "projectors",
        }
    }
}

/// What is asked.
#[derive(Clone, Copy)]
pub struct Question<'a> {
    /// The yard as it stands.
    pub yard: &'a Yard,
    /// The catalogue, with what its owner has.
    pub catalogue: &'a Catalogue,
    /// The night of that yard.
    pub night: &'a Night,
    /// The pictures of its stations.
    pub shelf: &'a Shelf,
    /// The station, by its index.
    pub station: usize,
    /// What is held against each other.
    pub of: Of,
    /// How long it will run, for what it costs.
    pub running: Running,
}

/// Why nothing can be compared.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NoComparison {
    /// There is no such station, or it gives no light.
    #[error("“{0}” gives no light; switch it on, and bring it out if it is put away")]
    Dark(String),
    /// Nothing of its light lands on a target.
    #[error("“{0}” lights nothing; aim it first")]
    Aimless(String),
    /// The target is not made of fabric.
    #[error("“{station}” lights “{target}”, which is {wanted}; what can be compared there are projectors")]
    NoFabric {
        /// The station.
        station: String,
        /// Its target.
        target: String,
        /// What it is not.
        wanted: &'static str,
    },
}

/// Everything that was tried, row by row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Comparison {
    /// The station.
    pub station: String,
    /// What it lights; of several things all.
    pub target: String,
    /// What was held against each other.
    pub of: Of,
    /// How long it is taken to run.
    pub running: Running,
    /// The viewing spots, in the order in which each row has them.
    pub spots: Vec<String>,
    /// What was tried.
    pub rows: Vec<Row>,
    /// What could not be tried, with the reason.
    pub left_out: Vec<(String, String)>,
}

/// Rows that one copy of the night is led through.
const TOGETHER: usize = 12;

/// Tries everything. The yard stays as it is; locks keep nobody from trying.
pub fn compare(question: Question) -> Result<Comparison, NoComparison> {
    let Question { yard, catalogue, night, station, of, .. } = question;
    let name = yard.stations.get(station).map_or_else(String::new, |s| s.name.0.clone());
    let dark = || NoComparison::Dark(name.clone());
    let reading = read_station(night, yard, catalogue, station).filter(|r| r.on).ok_or_else(dark)?;
    if !night.beams.iter().any(|beam| beam.station as usize == station) {
        return Err(dark());
    }
    let owner = night.names.number(&reading.target);
    if owner.is_none() {
        return Err(NoComparison::Aimless(name));
    }
    let free = Yard { locked: Vec::new(), ..yard.clone() };
    let targets: Vec<&str> = reading.targets.iter().map(|one| one.target.as_str()).collect();
    let candidates = candidate::list(&free, catalogue, &free.stations[station], &targets, of)?;
    let tried: Vec<Result<Row, (String, String)>> = candidates
        .par_chunks(TOGETHER)
        .flat_map_iter(|some| {
            let mut copy = Copy { night: night.clone(), yard: free.clone() };
            some.iter().map(|one| copy.attempt(&question, &reading, one)).collect::<Vec<_>>()
        })
        .collect();
    let (mut rows, mut left_out) = (Vec::new(), Vec::new());
    for one in tried {
        match one {
            Ok(row) => rows.push(row),
            Err(why) => left_out.push(why),
        }
    }
    let spots = yard.spots.iter().map(|spot| spot.name.0.clone()).collect();
    Ok(Comparison { station: name, target: reading.onto(), of, running: question.running, spots, rows, left_out })
}

/// A yard and its night that things are tried in.
struct Copy {
    night: Night,
    yard: Yard,
}

impl Copy {
    fn attempt(
        &mut self,
        question: &Question,
        now: &StationReading,
        candidate: &Candidate,
    ) -> Result<Row, (String, String)> {
        let refused = |why: String| (candidate.names.join(" + "), why);
        let after = Edit::Change(candidate.item.clone())
            .apply(&self.yard, question.catalogue, None)
            .map_err(|refusal| refused(refusal.to_string()))?;
        match self.night.follow(&self.yard, &after, question.catalogue, question.shelf) {
            Ok(Followed::Rebuild) => return Err(refused("the yard would have to be built anew".to_owned())),
            Ok(_) => self.yard = after,
            Err(fault) => {
                // A night that gave up half-way shows neither yard.
                self.night = question.night.clone();
                self.yard = Yard { locked: Vec::new(), ..question.yard.clone() };
                return Err(refused(fault.to_string()));
            }
        }
        let row = row::row(question, &self.night, &self.yard, candidate);
        row.ok_or_else(|| refused(format!("nothing lands on “{}”", candidate.target.as_ref().unwrap_or(&now.target))))
    }
}

impl Comparison {
    /// The spot to look from where none is chosen: the first from which anything is in sight.
    pub fn usual_spot(&self) -> usize {
        (0..self.spots.len()).find(|spot| self.rows.iter().any(|row| row.spots[*spot].word.is_some())).unwrap_or(0)
    }

    /// Sorts the rows, what is better first, as seen from one of the spots; what is not known comes last.
    pub fn sort(&mut self, key: Key, spot: usize) {
        self.rows.sort_by(|a, b| key.order(a, b, spot));
    }
}
