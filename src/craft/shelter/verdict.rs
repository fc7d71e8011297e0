//! What is to be said of a box, in one plain sentence.

use serde::Serialize;

/// How much it matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Grade {
    /// As it should be.
    Fine,
    /// Worth a look.
    Check,
    /// The show, or the projector, suffers by it.
    Fix,
}

impl Grade {
    /// The word itself.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Check => "check",
            Self::Fix => "fix",
        }
    }
}

/// One sentence with its number, its limit and what helps.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Verdict {
    /// How much it matters.
    pub grade: Grade,
    /// What is so, against its limit.
    pub says: String,
    /// What helps; empty where nothing need be done.
    pub helps: String,
}

impl Verdict {
    /// A verdict; nothing helps what is fine.
    pub(super) fn new(grade: Grade, says: String, helps: impl Into<String>) -> Self {
        Self { grade, says, helps: if grade == Grade::Fine { String::new() } else { helps.into() } }
    }
}
