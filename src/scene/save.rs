//! A yard, or whatever else has a file of its own, to that file, without ever losing one.

use super::document::{self, Document};
use super::write::{Write, Written};
use super::{Faults, Yard, syntax};
use crate::units::reason;
use std::fs::{self, OpenOptions};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

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
    #[error("the {} was not saved, because the file with its comments could not be copied to {}: {}", .2, .1.display(), reason(.0))]
    NotKept(#[source] io::Error, PathBuf, &'static str),
    /// The new file could not be written.
    #[error("the {} was not saved: {}: {}", .2, reason(.0), .1.display())]
    NotWritten(#[source] io::Error, PathBuf, &'static str),
}

impl Yard {
    /// The text of its file: fields at their default left out, lengths in the notation that they were read in.
    pub fn to_text(&self) -> String {
        text(self, self.format)
    }

    /// Saves it: first to a new file beside the old one, then in its place, so that a full disk or a pulled plug costs
    /// nothing. A file that holds comments is copied before it is first written over.
    pub fn save(&self, path: &Path) -> Result<Saved, SaveError> {
        save::<Self>(&self.to_text(), path)
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
pub(super) fn save<N: Document>(text: &str, path: &Path) -> Result<Saved, SaveError> {
    // Faults of something half built are its owner's business; what cannot be read at all would be lost.
    let faults = document::unreadable::<N>(text);
    if faults.has_errors() {
        return Err(SaveError::Unreadable(Box::new(faults), N::WORD));
    }
    // A link stays a link: what it points to is replaced.
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let kept = if holds_comments(&path) {
        let copy = free_name(&path);
        fs::copy(&path, &copy).map_err(|error| SaveError::NotKept(error, copy.clone(), N::WORD))?;
        Some(copy)
    } else {
        None
    };
    replace(&path, text).map_err(|error| SaveError::NotWritten(error, path, N::WORD))?;
    Ok(Saved { kept })
}

/// Whether saving over this file would lose what a person wrote beside the values; so too if it cannot be made out.
fn holds_comments(path: &Path) -> bool {
    let Ok(bytes) = fs::read(path) else { return false };
    let Ok(text) = String::from_utf8(bytes) else { return true };
    let mut faults = Faults::none("", "");
    let parsed = syntax::parse(&text, &mut faults);
    parsed.comments || faults.has_errors()
}

/// `yard.ron.bak`, or the first with a number that is free.
fn free_name(path: &Path) -> PathBuf {
    let with = |ending: String| {
        let mut name = path.as_os_str().to_owned();
        name.push(ending);
        PathBuf::from(name)
    };
    let numbered = (2_u32..).map(|number| with(format!(".bak{number}")));
    std::iter::once(with(".bak".to_owned()))
        .chain(numbered)
        .find(|copy| !copy.exists())
        .unwrap_or_else(|| with(".bak".to_owned()))
}

fn replace(path: &Path, text: &str) -> io::Result<()> {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(format!(".{}.new", std::process::id()));
    let new = path.with_file_name(name);
    let written = write_new(&new, text).and_then(|()| {
        if let Ok(old) = fs::metadata(path) {
            fs::set_permissions(&new, old.permissions())?;
        }
        fs::rename(&new, path)
    });
    if written.is_err() {
        // The first error is the one to tell; this file may not even exist.
        let _ = fs::remove_file(&new);
    }
    written
}

fn write_new(path: &Path, text: &str) -> io::Result<()> {
    let mut file = OpenOptions::new().write(true).create(true).truncate(true).open(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}
