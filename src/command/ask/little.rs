//! The little yard's file: never written over unless that is asked for.

use crate::command::Failure;
use gauzelight::units::reason;
use std::{
    fs::OpenOptions,
    io::{self, Write},
    path::{Path, PathBuf},
};

/// Names tried before giving up.
const MOST: u32 = 1000;

/// Writes the text to a file, or beside it where it is there already: `little.ron`, `little_2.ron` and so on. The answer is
/// where it went.
pub fn write(path: &Path, text: &str, force: bool) -> Result<PathBuf, Failure> {
    let failed = |path: &Path, error: io::Error| {
        Failure::said(format!(
            "cannot write the little yard: {}: {}; choose another --out",
            reason(&error),
            path.display()
        ))
    };
    for number in 1..=MOST {
        let path = numbered(path, number);
        let mut options = OpenOptions::new();
        options.write(true);
        // A file that appears between looking and writing must not be lost either.
        if force {
            options.create(true).truncate(true)
        } else {
            options.create_new(true)
        };
        match options.open(&path).and_then(|mut file| file.write_all(text.as_bytes())) {
            Ok(()) => return Ok(path),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
            Err(error) => return Err(failed(&path, error)),
        }
    }
    Err(failed(path, io::ErrorKind::AlreadyExists.into()))
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
