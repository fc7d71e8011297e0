//! A judged reading in one plain sentence.

use super::Matter;
use crate::units::border;
use serde::Serialize;
use std::cmp::Ordering;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Worth a look.
    Check,
    /// The show, or somebody, suffers by it.
    Fix,
}

impl Level {
    /// The word itself.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Check => "check",
            Self::Fix => "fix",
        }
    }
}

/// A viewing spot that a finding shows from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Place {
    /// Name of the spot.
    pub spot: String,
    /// How much it matters there.
    pub level: Level,
    /// What is found there, as one sentence with its number.
    pub says: String,
    /// What to do about it there, as one short sentence without its full stop.
    pub does: String,
    /// The number there.
    #[serde(serialize_with = "border::light")]
    pub number: f64,
    /// The limit that it is held against.
    #[serde(serialize_with = "border::light")]
    pub limit: f64,
    /// Whether the limit lies inside the band of what is not known there.
    pub unsure: bool,
}

/// A judged reading: one cause, with every place that it shows from.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// What it is about.
    pub matter: Matter,
    /// How much it matters, where it matters most.
    pub level: Level,
    /// Name of the station or thing that it is about.
    pub of: String,
    /// Names of what else it is about, where one cause has several.
    pub others: Vec<String>,
    /// The viewing spots that it shows from, the worst first; none where it hangs on no spot.
    pub places: Vec<Place>,
    /// What is found, as one sentence with its number; from the worst place.
    pub says: String,
    /// What to do about it, as one short sentence without its full stop.
    pub does: String,
    /// The number.
    #[serde(serialize_with = "border::light")]
    pub number: f64,
    /// The limit that it is held against.
    #[serde(serialize_with = "border::light")]
    pub limit: f64,
    /// Unit of both; empty for a ratio.
    pub unit: String,
    /// Whether the limit lies inside the band of what is not known, so that a measurement would decide.
    pub unsure: bool,
    /// Where the limit comes from.
    pub why: String,
}

/// A limit with its unit and its reason.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Bound {
    pub value: f64,
    pub unit: String,
    pub why: String,
}

impl Finding {
    /// A finding about a thing; what it says comes with [`Finding::against`].
    pub(super) fn new(matter: Matter, level: Level, of: &str, from: Option<&str>) -> Self {
        Self {
            matter,
            level,
            of: of.to_owned(),
            others: Vec::new(),
            places: from.map(|spot| Place::bare(spot, level, matter)).into_iter().collect(),
            says: String::new(),
            does: matter.advice().to_owned(),
            number: 0.0,
            limit: 0.0,
            unit: String::new(),
            unsure: false,
            why: String::new(),
        }
    }

    /// Its number against its limit, in one sentence.
    #[must_use]
    pub(super) fn against(mut self, number: f64, bound: &Bound, says: String) -> Self {
        (self.number, self.limit, self.unit) = (number, bound.value, bound.unit.clone());
        (self.why, self.says) = (bound.why.clone(), says);
        for place in &mut self.places {
            (place.number, place.limit, place.says) = (number, bound.value, self.says.clone());
        }
        self
    }

    /// A measurement would decide it: the limit lies inside the band of what is not known.
    #[must_use]
    pub(super) fn unsure(mut self, unsure: bool) -> Self {
        self.unsure = unsure;
        for place in &mut self.places {
            place.unsure = unsure;
        }
        self
    }

    /// What to do about it, where that is more than the advice of its matter.
    #[must_use]
    pub(super) fn doing(mut self, does: String) -> Self {
        for place in &mut self.places {
            place.does.clone_from(&does);
        }
        self.does = does;
        self
    }

    /// What else it is about.
    #[must_use]
    pub(super) fn with(mut self, others: Vec<String>) -> Self {
        self.others = others;
        self
    }

    /// Whether both are the same cause, be it of another size or seen from other places. What shows from places and what
    /// hangs on none are two causes.
    pub fn is_same(&self, other: &Self) -> bool {
        self.matter == other.matter && self.of == other.of && self.places.is_empty() == other.places.is_empty()
    }

    /// Whether a station or thing of this name has part in it.
    pub fn concerns(&self, name: &str) -> bool {
        self.of == name || self.others.iter().any(|other| other == name)
    }

    /// The spot that it shows worst from.
    pub fn from(&self) -> Option<&str> {
        self.places.first().map(|place| place.spot.as_str())
    }

    /// Whether it shows from a spot, or hangs on none.
    pub fn shows_from(&self, spot: &str) -> bool {
        self.places.is_empty() || self.places.iter().any(|place| place.spot == spot)
    }

    /// The same as somebody at one spot has it; as it is where it hangs on none.
    #[must_use]
    pub fn seen_from(mut self, spot: &str) -> Self {
        self.places.retain(|place| place.spot == spot);
        if let Some(place) = self.places.first() {
            (self.level, self.unsure, self.says) = (place.level, place.unsure, place.says.clone());
            (self.number, self.limit, self.does) = (place.number, place.limit, place.does.clone());
        }
        self
    }

    /// How far beyond its limit it is, as a ratio of at least 1.
    pub fn excess(&self) -> f64 {
        excess(self.number, self.limit)
    }

    /// Takes in the same as found from other places, and leads with the worst.
    fn join(&mut self, mut other: Self) {
        let mut places = std::mem::take(&mut self.places);
        places.append(&mut other.places);
        places.sort_by(Place::worst_first);
        if worst_first(self, &other) == Ordering::Greater {
            std::mem::swap(self, &mut other);
        }
        self.others.append(&mut other.others);
        self.others.sort_unstable();
        self.others.dedup();
        self.places = places;
    }
}

impl Place {
    fn bare(spot: &str, level: Level, matter: Matter) -> Self {
        Self {
            spot: spot.to_owned(),
            level,
            says: String::new(),
            does: matter.advice().to_owned(),
            number: 0.0,
            limit: 0.0,
            unsure: false,
        }
    }

    /// How far beyond its limit it is there, as a ratio of at least 1.
    pub fn excess(&self) -> f64 {
        excess(self.number, self.limit)
    }

    fn worst_first(a: &Self, b: &Self) -> Ordering {
        b.level.cmp(&a.level).then(b.excess().total_cmp(&a.excess())).then_with(|| a.spot.cmp(&b.spot))
    }
}

fn excess(number: f64, limit: f64) -> f64 {
    let ratio = (number / limit).abs();
    if ratio.is_finite() && ratio > 0.0 { ratio.max(1.0 / ratio) } else { f64::MAX }
}

/// One finding a cause: what several places have of the same becomes one. What hangs on no place stays as it is.
pub(super) fn gathered(list: Vec<Finding>) -> Vec<Finding> {
    let mut causes: Vec<Finding> = Vec::new();
    for finding in list {
        match causes.iter_mut().find(|cause| !finding.places.is_empty() && cause.is_same(&finding)) {
            Some(cause) => cause.join(finding),
            None => causes.push(finding),
        }
    }
    causes
}

/// The worst first: by level, then by matter in their order, then by how far beyond the limit; names settle the rest.
pub(super) fn worst_first(a: &Finding, b: &Finding) -> Ordering {
    let key = |f: &Finding| (std::cmp::Reverse(f.level), f.matter);
    key(a)
        .cmp(&key(b))
        .then(b.excess().total_cmp(&a.excess()))
        .then_with(|| a.of.cmp(&b.of))
        .then_with(|| a.from().cmp(&b.from()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seen(spot: &str, level: Level, number: f64) -> Finding {
        let bound = Bound { value: 2.0, unit: String::new(), why: "a reason".to_owned() };
        let finding = Finding::new(Matter::Ghost, level, "one", Some(spot));
        finding.against(number, &bound, format!("{number} from {spot}")).doing(format!("Stand beside {spot}"))
    }

    #[test]
    fn a_cause_is_told_once_and_leads_with_its_worst_place() {
        let all = [("near", Level::Check, 3.0), ("gate", Level::Fix, 9.0), ("far", Level::Check, 5.0)];
        let found = gathered(all.map(|(spot, level, number)| seen(spot, level, number)).to_vec());
        let [one] = found.as_slice() else { panic!("{found:?}") };
        let spots: Vec<&str> = one.places.iter().map(|place| place.spot.as_str()).collect();
        assert_eq!((spots, one.level, one.number), (vec!["gate", "far", "near"], Level::Fix, 9.0));
        assert_eq!(one.says, "9 from gate");
        let far = one.clone().seen_from("far");
        assert_eq!((far.level, far.number, far.says.as_str()), (Level::Check, 5.0, "5 from far"));
        assert_eq!((one.does.as_str(), far.does.as_str()), ("Stand beside gate", "Stand beside far"));
        assert!(one.is_same(&far) && one.shows_from("near") && !far.shows_from("near"));
    }

    #[test]
    fn what_hangs_on_no_place_stays_apart() {
        let bare = Finding { places: Vec::new(), ..seen("near", Level::Fix, 4.0) };
        assert_eq!(gathered(vec![bare.clone(), seen("near", Level::Fix, 4.0), bare]).len(), 3);
    }
}
