//! A yard, or whatever else has a file of its own, to that file, without ever losing one.

use super::document::{self, Document, LARGEST};
use super::write::{Write, Written};
use super::{Faults, Yard, syntax};
use crate::files::{self, Disk, Kept, ReadError, System, WriteError};
use std::fs;
use std::path::{Path, PathBuf};

/// Names of copies tried before giving up.
const MOST_COPIES: u32 = 10_000;

/// What saving did beside saving.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Saved {
    /// Where the file as it was is kept, because it held comments, which the new one does not.
    pub kept: Option<PathBuf>,
}

impl Saved {
    /// What the owner should be told, if anything.
    pub fn message(&self) -> Option<String> {
        let kept = self.kept.as_ref()?;
        Some(format!("The file held comments, which are not kept on saving; as it was, it is now {}", kept.display()))
    }
}

/// Why something was not saved; the old file is as it was.
#[derive(Debug, thiserror::Error)]
pub enum SaveError {
    /// It holds a value that its file could not be read back with.
    #[error("the {1} was not saved, because it could not be opened again:\n{0}")]
    Unreadable(Box<Faults>, &'static str),
    /// The file with comments could not be copied, so it was not written over.
    #[error("the {1} was not saved, because the file with its comments could not be copied: {0}")]
    NotKept(#[source] WriteError, &'static str),
    /// What is there cannot be looked at, or is far too large to be one, so it was not written over.
    #[error("the {} was not saved, because what is there {}: {}; choose another name", .2, .0, .1.display())]
    NotKnown(#[source] ReadError, PathBuf, &'static str),
    /// The new file could not be written.
    #[error("the {1} was not saved: {0}")]
    NotWritten(#[source] WriteError, &'static str),
}

impl Yard {
    /// The text of its file: fields at their default left out, lengths in the notation that they were read in.
    pub fn to_text(&self) -> String {
        text(self, self.format)
    }

    /// Saves it: first to a new file beside the old one, then in its place, so that a full disk or a pulled plug costs
    /// nothing. A file that holds comments is copied before it is first written over.
    pub fn save(&self, path: &Path) -> Result<Saved, SaveError> {
        self.save_on(&System, path)
    }

    /// [`Yard::save`] on this disk.
    pub fn save_on(&self, disk: &dyn Disk, path: &Path) -> Result<Saved, SaveError> {
        save::<Self>(disk, &self.to_text(), path)
    }
}

/// The text of the file of a noun that is written in this format.
pub(super) fn text<N: Document + Write>(noun: &N, format: u32) -> String {
    let mut written = noun.write().titled(N::TITLE);
    if let Written::Fields { fields, .. } = &mut written
        && format == N::FORMAT
    {
        // At its default, but a file must say it for programs to come.
        fields.insert(0, ("format", format.write()));
    }
    written.into_file()
}

/// Saves a text that is to be read as a noun again.
pub(super) fn save<N: Document>(disk: &dyn Disk, text: &str, path: &Path) -> Result<Saved, SaveError> {
    // Faults of something half built are its owner's business; what cannot be read at all would be lost.
    let faults = document::unreadable::<N>(text);
    if faults.has_errors() {
        return Err(SaveError::Unreadable(Box::new(faults), N::WORD));
    }
    files::check(path, &Kept::none()).map_err(|error| SaveError::NotWritten(error, N::WORD))?;
    let kept = match commented(path) {
        Ok(Some(bytes)) => {
            // The copy lies beside the file itself, not beside a link to it.
            let whole = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
            Some(copied(disk, &whole, &bytes).map_err(|error| SaveError::NotKept(error, N::WORD))?)
        }
        Ok(None) => None,
        Err(error) => return Err(SaveError::NotKnown(error, path.to_owned(), N::WORD)),
    };
    match files::write_on(disk, path, text.as_bytes(), &Kept::none()) {
        Ok(()) => Ok(Saved { kept }),
        Err(error) => {
            // The comments are still where they were, unless the new file is in its place already.
            if let Some(copy) = kept.filter(|_| !matches!(error, WriteError::Unsettled(..))) {
                let _ = fs::remove_file(copy);
            }
            Err(SaveError::NotWritten(error, N::WORD))
        }
    }
}

/// What stands in this file, if saving over it would lose what a person wrote beside the values, or if it cannot be made out.
fn commented(path: &Path) -> Result<Option<Vec<u8>>, ReadError> {
    // Nothing to lose there, or nothing that can be: a pipe, a terminal.
    if !path.is_file() {
        return Ok(None);
    }
    let bytes = files::read(path, LARGEST)?;
    let Ok(text) = std::str::from_utf8(&bytes) else { return Ok(Some(bytes)) };
    let mut faults = Faults::none("", "");
    let parsed = syntax::parse(text, &mut faults);
    let is_lost = parsed.comments || faults.has_errors();
    Ok(is_lost.then_some(bytes))
}

/// Writes a copy to `yard.ron.bak`, or to the first with a number that is free.
fn copied(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<PathBuf, WriteError> {
    let with = |ending: String| {
        let mut name = path.as_os_str().to_owned();
        name.push(ending);
        PathBuf::from(name)
    };
    let mut number = 1_u32;
    loop {
        let copy = with(if number == 1 { ".bak".to_owned() } else { format!(".bak{number}") });
        match files::write_new_on(disk, &copy, bytes) {
            Ok(()) => return Ok(copy),
            Err(WriteError::Taken(_) | WriteError::Folder(_)) if number < MOST_COPIES => number += 1,
            Err(error) => {
                if matches!(error, WriteError::Unsettled(..)) {
                    let _ = fs::remove_file(copy);
                }
                return Err(error);
            }
        }
    }
}
