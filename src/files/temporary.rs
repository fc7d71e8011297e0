//! A file under a name of its own until it is whole.
//!
//! Its writer holds a lock on it, which the system lets go of when the writer ends in whatever way. So a file of such a name
//! that can be locked is one that somebody was killed over, and the next one to write in that folder removes it.

use super::Disk;
use std::{
    fs::{self, File, TryLockError},
    io::{self, ErrorKind},
    path::{Path, PathBuf},
    sync::atomic::{AtomicU64, Ordering},
};

const HEAD: &str = ".gauzelight-";
const ENDING: &str = ".part";

/// Names tried before giving up.
const MOST_NAMES: usize = 1000;

static COUNT: AtomicU64 = AtomicU64::new(0);

/// A new file that is gone again unless it was put into its place.
pub(super) struct Temporary {
    pub path: PathBuf,
    pub file: File,
    is_placed: bool,
}

impl Temporary {
    pub fn create(disk: &dyn Disk, folder: &Path) -> io::Result<Self> {
        for _ in 0..MOST_NAMES {
            let count = COUNT.fetch_add(1, Ordering::Relaxed);
            let path = folder.join(format!("{HEAD}{}-{count}{ENDING}", std::process::id()));
            let file = match disk.create(&path) {
                Ok(file) => file,
                Err(error) if error.kind() == ErrorKind::AlreadyExists => continue,
                Err(error) => return Err(error),
            };
            let new = Self { path, file, is_placed: false };
            // Somebody who sweeps may have been quicker than this lock; then the next name is tried. Where the file system knows
            // no locks, nobody sweeps.
            let is_swept = matches!(new.file.try_lock(), Err(TryLockError::WouldBlock)) || !new.path.exists();
            if !is_swept {
                return Ok(new);
            }
        }
        Err(ErrorKind::AlreadyExists.into())
    }

    /// It has its own name now and stays.
    pub fn placed(mut self) {
        self.is_placed = true;
    }
}

impl Drop for Temporary {
    fn drop(&mut self) {
        if !self.is_placed {
            // What goes wrong here the next one to write sweeps up.
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// Removes what somebody was killed over in this folder.
pub(super) fn sweep(folder: &Path) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let file = entry.file_name();
        let is_ours = file.to_str().is_some_and(|file| file.starts_with(HEAD) && file.ends_with(ENDING));
        if !is_ours || !entry.file_type().is_ok_and(|kind| kind.is_file()) {
            continue;
        }
        // Kept locked until it is gone, so that nobody takes it for his.
        if let Ok(file) = File::open(entry.path())
            && file.try_lock().is_ok()
        {
            let _ = fs::remove_file(entry.path());
        }
    }
}
