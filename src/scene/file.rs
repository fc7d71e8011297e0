//! Yard files: text to a yard.

use super::check::check;
use super::document::{self, Document, Opened};
use super::{Catalogue, Fault, Faults, Severity, Yard, syntax};
use std::path::Path;

/// A yard as read.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The yard.
    pub yard: Yard,
    /// What its owner should know, though it can be used.
    pub warnings: Faults,
    /// Whether the file holds comments, which saving loses; [`Yard::save`] keeps a copy of such a file.
    pub comments: bool,
}

impl Document for Yard {
    const FORMAT: u32 = Self::FORMAT;
    const ELSEWHERE: &'static str = "pictures stand in files of their own beside it";
}

impl Yard {
    /// Reads a yard from text. On failure every fault is there at once, with its place; `file_name` is only for these.
    /// Pictures in files are taken to be there.
    pub fn parse(text: &str, file_name: &str, catalogue: &Catalogue) -> Result<Loaded, Faults> {
        parse(text, file_name, catalogue, None)
    }

    /// Reads a yard from its file; pictures are looked for beside it.
    pub fn open(path: &Path, catalogue: &Catalogue) -> Result<Loaded, Faults> {
        let text = document::read_text::<Self>(path)?;
        let folder = path.parent().unwrap_or(Path::new(""));
        parse(&text, &path.display().to_string(), catalogue, Some(folder))
    }
}

impl Loaded {
    /// Adds a warning of a part of the yard, by its path in the document (`stations[2].aim`), with its place in the file.
    pub fn warn(&mut self, path: &str, fault: Fault) {
        if self.warnings.is_full() {
            return self.warnings.push(fault);
        }
        let source = std::sync::Arc::clone(&self.warnings.source);
        // The text was read before; its faults, if any, are told.
        let root = syntax::parse(source.inner(), &mut Faults::none("", "")).root;
        let place = root.map(|root| root.find(path)).unwrap_or_default();
        self.warnings.push(Fault { path: path.to_owned(), place, severity: Severity::Warning, ..fault });
        self.warnings.sort();
    }
}

fn parse(text: &str, file_name: &str, catalogue: &Catalogue, folder: Option<&Path>) -> Result<Loaded, Faults> {
    let opened = document::parse(text, file_name, |yard, unread, faults| {
        check(yard, catalogue, folder, unread, faults);
    })?;
    let Opened { noun: yard, warnings, comments } = opened;
    Ok(Loaded { yard, warnings, comments })
}
