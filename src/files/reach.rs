//! Where a yard may look for what it names.

use super::ReadError;
use std::{
    fs,
    path::{Component, Path, PathBuf},
};

/// Where a yard may look for what it names: in its own folder and below, and further only once its owner has said so. A yard may
/// come from anybody, and must not show what else lies on this machine.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reach {
    anywhere: bool,
    more: Vec<PathBuf>,
}

impl Reach {
    /// Anywhere at all.
    pub fn anywhere() -> Self {
        Self { anywhere: true, more: Vec::new() }
    }

    /// In this folder, or at this file, as well.
    pub fn and(mut self, more: &Path) -> Self {
        self.more.push(more.to_owned());
        self
    }

    /// Where a file lies that a yard in `folder` names, all links followed.
    pub fn find(&self, folder: &Path, name: &str) -> Result<PathBuf, ReadError> {
        // A folder that is where the program runs adds nothing to a path, which people read.
        let path = folder.strip_prefix(".").unwrap_or(folder).join(name);
        let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
        if self.anywhere {
            return Ok(path);
        }
        // Not even looked for: on some systems a look is a word with another machine.
        if leads_out(name) && self.more.is_empty() {
            return Err(ReadError::Outside(path));
        }
        let allowed: Vec<PathBuf> =
            std::iter::once(folder).chain(self.more.iter().map(PathBuf::as_path)).flat_map(fs::canonicalize).collect();
        let real = match fs::canonicalize(&path) {
            Ok(real) => real,
            Err(_) if leads_out(name) => return Err(ReadError::Outside(path)),
            Err(error) => return Err(error.into()),
        };
        if allowed.iter().any(|root| real.starts_with(root)) { Ok(real) } else { Err(ReadError::Outside(real)) }
    }
}

/// Whether a name leads out of its folder by how it is written.
pub(crate) fn leads_out(name: &str) -> bool {
    let mut depth = 0_i32;
    Path::new(name).components().any(|part| {
        match part {
            Component::Prefix(_) | Component::RootDir => return true,
            Component::ParentDir => depth -= 1,
            Component::Normal(_) => depth += 1,
            Component::CurDir => {}
        }
        depth < 0
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_lead_out_are_told_by_how_they_are_written() {
        for name in ["/etc/owl.png", "../owl.png", "a/../../owl.png", "a/b/../../../owl.png", ".."] {
            assert!(leads_out(name), "{name}");
        }
        for name in ["owl.png", "a/owl.png", "a/../owl.png", "./a/./owl.png", "..owl.png", ""] {
            assert!(!leads_out(name), "{name}");
        }
    }

    #[test]
    fn the_folder_at_hand_adds_nothing_to_a_path() {
        for folder in ["", ".", "./"] {
            let found = Reach::default().find(Path::new(folder), "../owl.png");
            assert!(
                matches!(&found, Err(ReadError::Outside(path)) if path.to_str() == Some("../owl.png")),
                "{found:?}"
            );
        }
        let found = Reach::anywhere().find(Path::new("./yards"), "owl.png").map(|path| path.display().to_string());
        assert_eq!(found.ok().as_deref(), Some("yards/owl.png"));
    }
}
