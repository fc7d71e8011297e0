//! Where a person's own things are kept, by the custom of the system: what they own, and what the window remembers.

use super::aside;
use gauzelight::scene::{Catalogue, OwnCatalogue};
use std::path::PathBuf;

/// A file among this program's settings; `None` where the system has no place for any.
pub fn file(name: &str) -> Option<PathBuf> {
    Some(directories::ProjectDirs::from("", "", "gauzelight")?.config_dir().join(name))
}

/// What the person at this machine owns; nothing yet where there is no such file. One that cannot be read is told of.
pub fn own() -> OwnCatalogue {
    let path = file("own.ron").filter(|path| path.exists());
    let Some(path) = path else { return OwnCatalogue::default() };
    OwnCatalogue::open(&path).unwrap_or_else(|faults| {
        aside(faults.plain().trim_end());
        OwnCatalogue::default()
    })
}

/// The program's catalogue, and before it what this person owns.
pub fn catalogue() -> Catalogue {
    Catalogue::builtin().with_own(own())
}
