//! Entries of an own catalogue, made of what people know of what they have: a box, a tape, a name for a cloth.
//!
//! Every entry is held to the rules of the files before it is handed out, so that what is made here can be saved and opened.

mod cloth;
mod projector;

pub use cloth::{ClothColour, ClothKind, OwnCloth};
pub use projector::{LightSource, OwnProjector};

use crate::scene::{Faults, OwnCatalogue};

/// Why no entry can be made, as a sentence with its remedy.
#[derive(Debug, thiserror::Error)]
pub enum OwnFault {
    /// Something that no such thing has.
    #[error("{what} of {said} is out of range; {remedy}")]
    Range {
        /// What was said.
        what: &'static str,
        /// The value.
        said: String,
        /// What may be said.
        remedy: &'static str,
    },
    /// The catalogue lacks what guesses are made by.
    #[error("the catalogue has no “{0}” to go by; use the program's own catalogue")]
    Nothing(&'static str),
    /// An entry that the rules of the files refuse, say for its name.
    #[error("{0}")]
    Refused(Box<Faults>),
}

/// Holds an entry to the rules of the files.
fn checked(own: &OwnCatalogue) -> Result<(), OwnFault> {
    let faults = own.check();
    if faults.has_errors() { Err(OwnFault::Refused(Box::new(faults))) } else { Ok(()) }
}
