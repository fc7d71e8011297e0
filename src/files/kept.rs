//! Files that nothing is written over: a yard and all that it reads.

use super::WriteError;
use std::{
    fs,
    path::{Path, PathBuf},
};

/// Files that nothing is written over, each with what it is to its owner.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Kept(Vec<(PathBuf, &'static str)>);

impl Kept {
    /// No file: whatever lies in the way may be written over.
    pub fn none() -> Self {
        Self::default()
    }

    /// These too; `what` they are, as “the yard itself”.
    pub fn and(mut self, files: impl IntoIterator<Item = PathBuf>, what: &'static str) -> Self {
        self.0.extend(files.into_iter().map(|file| (file, what)));
        self
    }

    /// Refuses a file that is one of them, by whatever path it is named.
    pub(super) fn check(&self, path: &Path) -> Result<(), WriteError> {
        match self.0.iter().find(|(kept, _)| is_one_file(path, kept)) {
            Some((_, what)) => Err(WriteError::Kept(path.to_owned(), what)),
            None => Ok(()),
        }
    }
}

/// Whether two paths lead to one regular file: over links of both kinds, and in any spelling.
fn is_one_file(one: &Path, other: &Path) -> bool {
    // Anything else than a file must not even be opened: a pipe would wait.
    if !one.is_file() || !other.is_file() {
        return false;
    }
    same_file::is_same_file(one, other).unwrap_or_else(|_| {
        // One that may not be read has its place all the same.
        matches!((fs::canonicalize(one), fs::canonicalize(other)), (Ok(one), Ok(other)) if one == other)
    })
}
