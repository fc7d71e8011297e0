//! Yard files: text to a yard.

use super::check::check;
use super::read::{Fields, Noun, Read};
use super::tree::{Node, Shape};
use super::{Catalogue, Fault, Faults, Severity, Yard, syntax};
use crate::units::reason;
use std::io::Read as _;
use std::path::Path;

/// A yard file larger than this is something else.
const LARGEST: usize = 8 << 20;

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

impl Yard {
    /// Reads a yard from text. On failure every fault is there at once, with its place; `file_name` is only for these.
    /// Pictures in files are taken to be there.
    pub fn parse(text: &str, file_name: &str, catalogue: &Catalogue) -> Result<Loaded, Faults> {
        parse(text, file_name, catalogue, None)
    }

    /// Reads a yard from its file; pictures are looked for beside it.
    pub fn open(path: &Path, catalogue: &Catalogue) -> Result<Loaded, Faults> {
        let file_name = path.display().to_string();
        let text = read_text(path).map_err(|fault| only(fault, &file_name))?;
        parse(&text, &file_name, catalogue, Some(path.parent().unwrap_or(Path::new(""))))
    }
}

impl Loaded {
    /// Adds a warning of a part of the yard, by its path in the document (`stations[2].aim`), with its place in the file.
    pub fn warn(&mut self, path: &str, fault: Fault) {
        let source = std::sync::Arc::clone(&self.warnings.source);
        // The text was read before; its faults, if any, are told.
        let root = syntax::parse(source.inner(), &mut Faults::none("", "")).root;
        let place = root.map(|root| root.find(path)).unwrap_or_default();
        self.warnings.push(Fault { path: path.to_owned(), place, severity: Severity::Warning, ..fault });
        self.warnings.sort();
    }
}

fn parse(text: &str, file_name: &str, catalogue: &Catalogue, folder: Option<&Path>) -> Result<Loaded, Faults> {
    if let Some(fault) = no_yard_at_all(text) {
        return Err(only(fault, file_name));
    }
    let mut faults = Faults::none(file_name, text);
    let parsed = syntax::parse(text, &mut faults);
    let yard = parsed.root.as_ref().and_then(|root| read_and_check(root, catalogue, folder, &mut faults));
    faults.sort();
    match yard {
        Some(yard) if !faults.has_errors() => Ok(Loaded { yard, warnings: faults, comments: parsed.comments }),
        _ => Err(faults),
    }
}

/// What keeps a text from being read as a yard at all, whether or not its parts fit each other.
pub(super) fn unreadable(text: &str) -> Faults {
    let mut faults = Faults::none("saved", text);
    if let Some(root) = syntax::parse(text, &mut faults).root {
        // Only the faults are wanted.
        let _ = Yard::read(&root, &mut faults);
    }
    faults
}

/// The one fault of a file that there is no text of to point into.
fn only(fault: Fault, file_name: &str) -> Faults {
    let mut faults = Faults::none(file_name, "");
    faults.push(fault);
    faults
}

fn no_yard_at_all(text: &str) -> Option<Fault> {
    if text.len() > LARGEST {
        return Some(too_large());
    }
    text.trim().is_empty().then(|| Fault::new("the file is empty").remedy("a yard begins with Yard( and ends with )"))
}

fn read_and_check(root: &Node<'_>, catalogue: &Catalogue, folder: Option<&Path>, faults: &mut Faults) -> Option<Yard> {
    if is_newer(root, faults) {
        return None;
    }
    let mut fields = Fields::open(root, Yard::TITLE, Yard::WORD, Yard::FIELDS, faults)?;
    // A yard with unsound fields is checked all the same, so that all faults show; they keep it from its reader.
    let yard = Yard::read_fields(&mut fields, faults)?;
    if !faults.is_full() {
        let mut unread = Vec::new();
        if faults.has_errors() {
            root.each_name(&mut |name| unread.push(name));
        }
        check(&yard, catalogue, folder, &unread, faults);
        faults.locate(root);
    }
    Some(yard)
}

/// A newer notation has fields that this program would call unknown; so it says only that it is newer.
fn is_newer(root: &Node<'_>, faults: &mut Faults) -> bool {
    let Shape::Group { entries, .. } = &root.shape else { return false };
    for entry in entries {
        if let (Some("format"), Shape::Number(digits)) = (entry.key.map(|key| key.name), &entry.value.shape)
            && digits.parse::<u32>().is_ok_and(|format| format > Yard::FORMAT)
        {
            let what = format!("this yard is written in format {digits}, which is newer than this program");
            let fault = Fault::new(what).remedy(format!("it reads format {}; a newer program is needed", Yard::FORMAT));
            faults.push_in("format", fault.at(entry.value.place));
            return true;
        }
    }
    false
}

fn read_text(path: &Path) -> Result<String, Fault> {
    let unreadable = |error: std::io::Error| Fault::new(format!("the file cannot be read: {}", reason(&error)));
    let file = std::fs::File::open(path).map_err(unreadable)?;
    if file.metadata().map_err(unreadable)?.is_dir() {
        return Err(Fault::new("this is a folder").remedy("name a yard file in it"));
    }
    let mut bytes = Vec::new();
    file.take(LARGEST as u64 + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    if bytes.len() > LARGEST {
        return Err(too_large());
    }
    String::from_utf8(bytes).map_err(|error| {
        let before = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
        Fault::new(format!("the file is not text in UTF-8: line {line} holds other bytes")).remedy("save it as UTF-8")
    })
}

fn too_large() -> Fault {
    let what = format!("the file is larger than {} MB, which no yard is", LARGEST >> 20);
    Fault::new(what).remedy("pictures stand in files of their own beside it")
}
