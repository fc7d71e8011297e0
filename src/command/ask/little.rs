//! The little yard's file: never written over unless that is asked for.

use crate::command::{Failure, home};
use gauzelight::files::{self, Kept, WriteError};
use std::path::{Path, PathBuf};

/// Names tried before giving up.
const MOST: u32 = 1000;

/// Writes the text to a file, or beside it where it is there already: `little.ron`, `little_2.ron` and so on. The answer is
/// where it went.
pub fn write(path: &Path, text: &str, force: bool) -> Result<PathBuf, Failure> {
    let kept = Kept::none().and(home::file(home::OWN), "the list of what you own");
    let failed = |error: &WriteError| Failure::said(format!("cannot write the little yard: {error} with --out"));
    // What is there and no file, such as a pipe, is what somebody wants to hear it by.
    if force || path.exists() && !path.is_file() {
        return files::write(path, text.as_bytes(), &kept).map(|()| path.to_owned()).map_err(|error| failed(&error));
    }
    for number in 1..=MOST {
        let path = numbered(path, number);
        // A file that appears between looking and writing must not be lost either.
        match files::write_new(&path, text.as_bytes()) {
            Ok(()) => return Ok(path),
            Err(WriteError::Taken(_)) => {}
            Err(error) => return Err(failed(&error)),
        }
    }
    Err(failed(&WriteError::Taken(path.to_owned())))
}

/// `little.ron` for 1, `little_2.ron` for 2.
fn numbered(path: &Path, number: u32) -> PathBuf {
    if number == 1 {
        return path.to_owned();
    }
    let mut name = path.file_stem().unwrap_or_default().to_owned();
    name.push(format!("_{number}"));
    if let Some(ending) = path.extension() {
        name.push(".");
        name.push(ending);
    }
    path.with_file_name(name)
}
