//! What lies at a path that is to be written to.

use super::{Kept, WriteError};
use std::{
    fs::{self, Metadata, OpenOptions},
    io::{self, ErrorKind},
    path::{Path, PathBuf},
};

/// Links to links to links: further than this they go round.
const MOST_LINKS: usize = 40;

/// What lies at a path, once it may be written to.
pub(super) enum Target {
    /// A place for a file, with what is said of the one that is there; all links are followed.
    File(PathBuf, Option<Metadata>),
    /// A pipe, a terminal, a device.
    Stream,
    /// What this program's own standard output goes into.
    Output,
}

impl Target {
    pub fn of(path: &Path, kept: &Kept) -> Result<Self, WriteError> {
        let failed = |error| WriteError::Failed(error, path.to_owned());
        match fs::metadata(path) {
            Ok(there) if there.is_dir() => Err(WriteError::Folder(path.to_owned())),
            Ok(there) if !there.is_file() => Ok(Self::Stream),
            Ok(there) => {
                kept.check(path)?;
                if is_output(path) {
                    return Ok(Self::Output);
                }
                let whole = fs::canonicalize(path).map_err(failed)?;
                // Whoever may do anything, as root may, is still told by the file itself.
                if there.permissions().readonly() {
                    return Err(WriteError::Protected(path.to_owned()));
                }
                match OpenOptions::new().write(true).open(&whole) {
                    Ok(_) => Ok(Self::File(whole, Some(there))),
                    Err(error) if error.kind() == ErrorKind::PermissionDenied => {
                        Err(WriteError::Protected(path.to_owned()))
                    }
                    Err(error) => Err(failed(error)),
                }
            }
            Err(error) if error.kind() == ErrorKind::NotFound => {
                let place = end_of_links(path).map_err(failed)?;
                let folder = folder_of(&place);
                if !folder.is_dir() {
                    return Err(WriteError::NoFolder(folder.to_owned()));
                }
                if place.file_name().is_none() {
                    return Err(failed(ErrorKind::InvalidFilename.into()));
                }
                Ok(Self::File(place, None))
            }
            Err(error) => Err(failed(error)),
        }
    }
}

/// The folder that a file lies in.
pub(super) fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// Where a link leads whose end is not there yet: a link stays a link.
fn end_of_links(path: &Path) -> io::Result<PathBuf> {
    let mut place = path.to_owned();
    for _ in 0..MOST_LINKS {
        match fs::read_link(&place) {
            Ok(next) => place = folder_of(&place).join(next),
            Err(_) => return Ok(place),
        }
    }
    Err(io::Error::other("links lead round in a circle"))
}

/// Whether a path leads to the file that standard output goes into, as `/dev/stdout` does: a renamed file would not reach whoever
/// asked for that.
fn is_output(path: &Path) -> bool {
    let output = same_file::Handle::stdout();
    output.is_ok_and(|output| same_file::Handle::from_path(path).is_ok_and(|there| there == output))
}
