//! Why a file was not written.

use crate::units::reason;
use std::{
    io::{self, ErrorKind},
    path::PathBuf,
};

/// Why a file was not written; whatever stood there before is as it was.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// There is a folder of this name.
    #[error("this is a folder: {}; name a file in it", .0.display())]
    Folder(PathBuf),
    /// Its folder is not there.
    #[error("there is no folder {}; make it, or name another", .0.display())]
    NoFolder(PathBuf),
    /// A file of this name is there already, and none was to be written over.
    #[error("this file is there already: {}; choose another name", .0.display())]
    Taken(PathBuf),
    /// The file there may not be written over.
    #[error("this file is write-protected and stays as it is: {}; lift that, or choose another name", .0.display())]
    Protected(PathBuf),
    /// The file there is one that must not be written over.
    #[error("this is {}, which nothing is written over: {}; choose another name", .1, .0.display())]
    Kept(PathBuf, &'static str),
    /// The system refused.
    #[error("{}: {}; {}", reason(.0), .1.display(), remedy(.0))]
    Failed(#[source] io::Error, PathBuf),
    /// The new file is whole and in its place, but a power cut might bring the old one back.
    #[error(
        "the new file is in its place, but the disk does not say that it will stay there: {}: {}; write it again",
        reason(.0),
        .1.display()
    )]
    Unsettled(#[source] io::Error, PathBuf),
}

/// What to do where a system refuses.
fn remedy(error: &io::Error) -> &'static str {
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded | ErrorKind::FileTooLarge => {
            "make room there, or choose another folder"
        }
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => "choose a folder that you may write in",
        ErrorKind::InvalidFilename => "choose a shorter or plainer name",
        ErrorKind::TimedOut => "start its reader first, or name a file",
        _ => "try again, or choose another folder",
    }
}
