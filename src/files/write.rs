//! A file written whole or not at all.

use super::target::{Target, folder_of};
use super::temporary::{Temporary, sweep};
use super::{Disk, Kept, System, WriteError};
use std::{
    fs::{self, File, Metadata},
    io::{self, ErrorKind, Write as _},
    path::Path,
};

/// Bytes handed to the disk at a time.
const PIECE: usize = 64 << 10;

/// Whether a file can come to be written there; asked before the work for it is done.
pub fn check(path: &Path, kept: &Kept) -> Result<(), WriteError> {
    Target::of(path, kept).map(drop)
}

/// Makes a folder for files to be written into, where none is; the one that it is to lie in must be there.
pub fn make_folder(path: &Path) -> Result<(), WriteError> {
    match fs::create_dir(path) {
        Ok(()) => Ok(()),
        Err(_) if path.is_dir() => Ok(()),
        Err(error) if error.kind() == ErrorKind::AlreadyExists => Err(WriteError::Taken(path.to_owned())),
        Err(error) if error.kind() == ErrorKind::NotFound => Err(WriteError::NoFolder(folder_of(path).to_owned())),
        Err(error) => Err(WriteError::Failed(error, path.to_owned())),
    }
}

/// Writes a file, in the place of one that is there.
pub fn write(path: &Path, bytes: &[u8], kept: &Kept) -> Result<(), WriteError> {
    write_on(&System, path, bytes, kept)
}

/// [`write()`] on this disk.
pub fn write_on(disk: &dyn Disk, path: &Path, bytes: &[u8], kept: &Kept) -> Result<(), WriteError> {
    let failed = |error| WriteError::Failed(error, path.to_owned());
    match Target::of(path, kept)? {
        Target::File(place, old) => beside(disk, &place, old.as_ref(), bytes, |new| disk.rename(new, &place)),
        Target::Stream => {
            let mut file = disk.open(path).map_err(failed)?;
            pour(disk, &mut file, bytes).and_then(|()| disk.sync(&file)).map_err(failed)
        }
        Target::Output => {
            let mut output = io::stdout().lock();
            output.write_all(bytes).and_then(|()| output.flush()).map_err(failed)
        }
    }
}

/// Writes a file where none is; [`WriteError::Taken`] where one is, also if it came in the meantime.
pub fn write_new(path: &Path, bytes: &[u8]) -> Result<(), WriteError> {
    write_new_on(&System, path, bytes)
}

/// [`write_new`] on this disk.
pub fn write_new_on(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<(), WriteError> {
    let taken = || WriteError::Taken(path.to_owned());
    let place = match Target::of(path, &Kept::none()) {
        Ok(Target::File(place, None)) => place,
        Ok(_) | Err(WriteError::Protected(_)) => return Err(taken()),
        Err(error) => return Err(error),
    };
    let placed = beside(disk, &place, None, bytes, |new| match disk.link(new, &place) {
        Ok(()) => fs::remove_file(new),
        // Some file systems give a file one name only.
        Err(error) if matches!(error.kind(), ErrorKind::Unsupported | ErrorKind::PermissionDenied) => {
            if place.exists() { Err(ErrorKind::AlreadyExists.into()) } else { disk.rename(new, &place) }
        }
        Err(error) => Err(error),
    });
    match placed {
        Err(WriteError::Failed(error, _)) if error.kind() == ErrorKind::AlreadyExists => Err(taken()),
        placed => placed,
    }
}

/// Writes a whole new file beside its place, and then places it.
fn beside(
    disk: &dyn Disk,
    place: &Path,
    old: Option<&Metadata>,
    bytes: &[u8],
    put: impl FnOnce(&Path) -> io::Result<()>,
) -> Result<(), WriteError> {
    let folder = folder_of(place);
    sweep(folder);
    let written = || -> io::Result<Temporary> {
        let mut new = Temporary::create(disk, folder)?;
        if let Some(old) = old {
            // Before anything stands in it, so that what was private never lies open.
            like(old, &new)?;
        }
        pour(disk, &mut new.file, bytes)?;
        disk.sync(&new.file)?;
        put(&new.path)?;
        Ok(new)
    };
    written().map_err(|error| WriteError::Failed(error, place.to_owned()))?.placed();
    disk.sync_folder(folder).map_err(|error| WriteError::Unsettled(error, place.to_owned()))
}

/// Gives a new file the owner and the permissions of the old one.
fn like(old: &Metadata, new: &Temporary) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::{MetadataExt as _, fchown};
        let now = new.file.metadata()?;
        if (now.uid(), now.gid()) != (old.uid(), old.gid()) {
            // Only whoever may do anything can give a file away; anybody else's is theirs from now on.
            let _ = fchown(&new.file, Some(old.uid()), Some(old.gid()));
        }
    }
    match new.file.set_permissions(old.permissions()) {
        Err(error) if error.kind() == ErrorKind::Unsupported => Ok(()),
        done => done,
    }
}

/// Writes all of it, piece by piece.
fn pour(disk: &dyn Disk, file: &mut File, bytes: &[u8]) -> io::Result<()> {
    let mut left = bytes;
    while !left.is_empty() {
        match disk.write(file, &left[..left.len().min(PIECE)]) {
            Ok(0) => return Err(ErrorKind::WriteZero.into()),
            Ok(written) => left = left.get(written..).unwrap_or_default(),
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) => return Err(error),
        }
    }
    Ok(())
}
