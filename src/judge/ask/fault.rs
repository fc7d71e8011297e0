//! Why a question has no answer.

use super::{Doubt, Part};
use crate::{light::NightFault, scene::Faults};

/// Why a question has no answer, as a sentence with its remedy.
#[derive(Debug, thiserror::Error)]
pub enum AskFault {
    /// A name that nothing on offer has.
    #[error("no {what} is called “{said}”{}; there are: {known}", guess(.nearest.as_deref()))]
    Unknown {
        /// Where.
        part: Part,
        /// What was asked for.
        what: &'static str,
        /// What was said.
        said: String,
        /// The name on offer that is most like it.
        nearest: Option<String>,
        /// The names on offer.
        known: String,
    },
    /// A size or a number that no such thing has.
    #[error("{what} of {said} is out of range; {remedy}")]
    Range {
        /// Where.
        part: Part,
        /// What was asked for.
        what: &'static str,
        /// What was said.
        said: String,
        /// What to say.
        remedy: &'static str,
    },
    /// Lumens that no projector of the class gives, or that no box of it claims.
    #[error("{0}")]
    Doubted(Box<Doubt>),
    /// Answers that don't go together.
    #[error("{why}")]
    Unfit {
        /// Where.
        part: Part,
        /// Why, with the remedy.
        why: String,
    },
    /// A yard that its own reader refuses, say because the catalogue lacks what it is made of.
    #[error("no yard can be made of this:\n{0}")]
    Yard(Box<Faults>),
    /// A yard that cannot be lit.
    #[error("no yard can be lit with this: {0}")]
    Night(#[from] NightFault),
    /// A yard that gives no reading.
    #[error("this gives no reading; name a target and a projector class")]
    NoReading,
}

impl AskFault {
    /// The part of the question that it lies in, where it lies in one.
    pub fn part(&self) -> Option<Part> {
        match self {
            Self::Unknown { part, .. } | Self::Range { part, .. } | Self::Unfit { part, .. } => Some(*part),
            Self::Doubted(_) => Some(Part::Lumens),
            Self::Yard(_) | Self::Night(_) | Self::NoReading => None,
        }
    }
}

fn guess(nearest: Option<&str>) -> String {
    nearest.map_or_else(String::new, |name| format!(" (did you mean “{name}”?)"))
}
