//! A file read whole, if it is one and not too large.

use crate::units::reason;
use std::{
    fs::{self, File},
    io::{self, Read as _},
    path::{Path, PathBuf},
};

/// Why a file was not read, as what is said after its name: “the picture is a folder”.
#[derive(Debug, thiserror::Error)]
pub enum ReadError {
    /// It is not there, or the system refused.
    #[error("cannot be read: {}", reason(.0))]
    Unreadable(#[from] io::Error),
    /// It is a folder.
    #[error("is a folder")]
    Folder,
    /// It is neither a file nor a folder.
    #[error("is no file but a pipe or a device")]
    NoFile,
    /// It has more bytes than are taken.
    #[error("is larger than {} MB", .0 >> 20)]
    TooLarge(u64),
    /// It lies where its yard may not look.
    #[error("lies outside the yard's folder, at {}; put it beside the yard", .0.display())]
    Outside(PathBuf),
}

/// The bytes of a regular file that has `most` of them at most.
pub fn read(path: &Path, most: u64) -> Result<Vec<u8>, ReadError> {
    // Asked before it is opened: a pipe that nobody writes to would wait for ever.
    regular(&fs::metadata(path)?, most)?;
    let file = File::open(path)?;
    regular(&file.metadata()?, most)?;
    let mut bytes = Vec::new();
    // One byte more than is allowed tells that there are more.
    file.take(most.saturating_add(1)).read_to_end(&mut bytes)?;
    if bytes.len() as u64 > most { Err(ReadError::TooLarge(most)) } else { Ok(bytes) }
}

fn regular(there: &fs::Metadata, most: u64) -> Result<(), ReadError> {
    if there.is_dir() {
        Err(ReadError::Folder)
    } else if !there.is_file() {
        Err(ReadError::NoFile)
    } else if there.len() > most {
        Err(ReadError::TooLarge(most))
    } else {
        Ok(())
    }
}
