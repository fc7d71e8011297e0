//! Files of one noun: text to the noun, every fault at once and at its place, and the checks after it.

use super::read::{Fields, Noun, Read, a};
use super::tree::{Node, Shape};
use super::{Fault, Faults, syntax};
use crate::files::{self, ReadError};
use std::path::Path;

/// A file larger than this is something else.
pub(super) const LARGEST: u64 = 8 << 20;

/// A noun that stands in a file of its own.
pub(super) trait Document: Noun + Read {
    /// The version of the notation that this program writes, and the newest that it reads.
    const FORMAT: u32;

    /// Where a file that has grown too large should have put what it holds.
    const ELSEWHERE: &'static str;
}

/// A noun as it stood in its file.
pub(super) struct Opened<N> {
    /// The noun.
    pub noun: N,
    /// What its owner should know, though it can be used.
    pub warnings: Faults,
    /// Whether the text holds comments.
    pub comments: bool,
}

/// Reads a noun from text and checks it. `check` also takes the names that stand on nouns that could not be read.
pub(super) fn parse<N: Document>(
    text: &str,
    file_name: &str,
    check: impl FnOnce(&N, &[&str], &mut Faults),
) -> Result<Opened<N>, Faults> {
    if let Some(fault) = nothing_at_all::<N>(text) {
        return Err(only(fault, file_name));
    }
    let mut faults = Faults::none(file_name, text);
    let parsed = syntax::parse(text, &mut faults);
    let noun = parsed.root.as_ref().and_then(|root| read_and_check(root, check, &mut faults));
    faults.sort();
    match noun {
        Some(noun) if !faults.has_errors() => Ok(Opened { noun, warnings: faults, comments: parsed.comments }),
        _ => Err(faults),
    }
}

/// What keeps a text from being read at all, whether or not its parts fit each other.
pub(super) fn unreadable<N: Document>(text: &str) -> Faults {
    let mut faults = Faults::none("saved", text);
    if let Some(root) = syntax::parse(text, &mut faults).root {
        // Only the faults are wanted.
        let _ = N::read(&root, &mut faults);
    }
    faults
}

/// The text of a file.
pub(super) fn read_text<N: Document>(path: &Path) -> Result<String, Faults> {
    text_of::<N>(path).map_err(|fault| only(fault, &path.display().to_string()))
}

/// The one fault of a file that there is no text of to point into.
fn only(fault: Fault, file_name: &str) -> Faults {
    let mut faults = Faults::none(file_name, "");
    faults.push(fault);
    faults
}

fn nothing_at_all<N: Document>(text: &str) -> Option<Fault> {
    if text.len() as u64 > LARGEST {
        return Some(too_large::<N>());
    }
    let remedy = || format!("{} begins with {}( and ends with )", a(N::WORD), N::TITLE);
    text.trim().is_empty().then(|| Fault::new("the file is empty").remedy(remedy()))
}

fn read_and_check<N: Document>(
    root: &Node<'_>,
    check: impl FnOnce(&N, &[&str], &mut Faults),
    faults: &mut Faults,
) -> Option<N> {
    if is_newer::<N>(root, faults) {
        return None;
    }
    let mut fields = Fields::open(root, N::TITLE, N::WORD, N::FIELDS, faults)?;
    // A noun with unsound fields is checked all the same, so that all faults show; they keep it from its reader.
    let noun = N::read_fields(&mut fields, faults)?;
    if !faults.is_full() {
        let mut unread = Vec::new();
        if faults.has_errors() {
            root.each_name(&mut |name| unread.push(name));
        }
        check(&noun, &unread, faults);
        faults.locate(root);
    }
    Some(noun)
}

/// A newer notation has fields that this program would call unknown; so it says only that it is newer.
fn is_newer<N: Document>(root: &Node<'_>, faults: &mut Faults) -> bool {
    let Shape::Group { entries, .. } = &root.shape else { return false };
    for entry in entries {
        if let (Some("format"), Shape::Number(digits)) = (entry.key.map(|key| key.name), &entry.value.shape)
            && digits.parse::<u32>().is_ok_and(|format| format > N::FORMAT)
        {
            let what = format!("this {} is written in format {digits}, which is newer than this program", N::WORD);
            let fault = Fault::new(what).remedy(format!("it reads format {}; a newer program is needed", N::FORMAT));
            faults.push_in("format", fault.at(entry.value.place));
            return true;
        }
    }
    false
}

fn text_of<N: Document>(path: &Path) -> Result<String, Fault> {
    let bytes = files::read(path, LARGEST).map_err(|error| match error {
        ReadError::Folder => Fault::new("this is a folder").remedy(format!("name {} file in it", a(N::WORD))),
        ReadError::TooLarge(_) => too_large::<N>(),
        error => Fault::new(format!("the file {error}")),
    })?;
    String::from_utf8(bytes).map_err(|error| {
        let before = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
        Fault::new(format!("the file is not text in UTF-8: line {line} holds other bytes")).remedy("save it as UTF-8")
    })
}

fn too_large<N: Document>() -> Fault {
    let what = format!("the file is larger than {} MB, which no {} is", LARGEST >> 20, N::WORD);
    Fault::new(what).remedy(N::ELSEWHERE)
}
