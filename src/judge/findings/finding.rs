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

/// A judged reading.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// What it is about.
    pub matter: Matter,
    /// How much it matters.
    pub level: Level,
    /// Name of the station or thing that it is about.
    pub of: String,
    /// Name of the viewing spot that it shows from, where it shows from one.
    pub from: Option<String>,
    /// What is found, as one sentence with its number.
    pub says: String,
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
            from: from.map(str::to_owned),
            says: String::new(),
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
        self
    }

    /// A measurement would decide it: the limit lies inside the band of what is not known.
    #[must_use]
    pub(super) fn unsure(mut self, unsure: bool) -> Self {
        self.unsure = unsure;
        self
    }

    /// Whether both are the same finding, be it of another size.
    pub fn is_same(&self, other: &Self) -> bool {
        self.matter == other.matter && self.of == other.of && self.from == other.from
    }

    /// How far beyond its limit it is, as a ratio of at least 1.
    pub fn excess(&self) -> f64 {
        let ratio = (self.number / self.limit).abs();
        if ratio.is_finite() && ratio > 0.0 { ratio.max(1.0 / ratio) } else { f64::MAX }
    }
}

/// The worst first: by level, then by matter in their order, then by how far beyond the limit; names settle the rest.
pub(super) fn worst_first(a: &Finding, b: &Finding) -> Ordering {
    let key = |f: &Finding| (std::cmp::Reverse(f.level), f.matter);
    key(a)
        .cmp(&key(b))
        .then(b.excess().total_cmp(&a.excess()))
        .then_with(|| a.of.cmp(&b.of))
        .then_with(|| a.from.cmp(&b.from))
}
