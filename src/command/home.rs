//! Where a person's own things are kept, by the custom of the system: what they own, and what the window remembers.

use super::aside;
use gauzelight::scene::{Catalogue, OwnCatalogue, Units};
use std::path::PathBuf;

/// A file among this program's settings; `None` where the system has no place for any.
pub fn file(name: &str) -> Option<PathBuf> {
    Some(directories::ProjectDirs::from("", "", "gauzelight")?.config_dir().join(name))
}

/// The folder of changes that are not saved yet; `None` where the system has no place for it.
#[cfg(feature = "viewer")]
pub fn unsaved() -> Option<PathBuf> {
    Some(directories::ProjectDirs::from("", "", "gauzelight")?.data_local_dir().join("unsaved"))
}

/// The folder of skies that were gathered, among what the system may throw away; `None` where it has no place for that.
pub fn skies() -> Option<PathBuf> {
    Some(directories::ProjectDirs::from("", "", "gauzelight")?.cache_dir().join("skies"))
}

/// The file of what somebody owns.
pub const OWN: &str = "own.ron";

/// What the person at this machine owns; nothing yet where there is no such file. A file that cannot be read is an error, in
/// words: nothing may be written over it.
pub fn own() -> Result<OwnCatalogue, String> {
    match file(OWN).filter(|path| path.exists()) {
        Some(path) => OwnCatalogue::open(&path).map_err(|faults| faults.plain()),
        None => Ok(OwnCatalogue::default()),
    }
}

/// The program's catalogue, and before it what this person owns; where that cannot be read, this is told.
pub fn catalogue() -> Catalogue {
    let own = own().unwrap_or_else(|faults| {
        aside(faults.trim_end());
        OwnCatalogue::default()
    });
    Catalogue::builtin().with_own(own)
}

/// The units that a person of this country measures in.
pub fn units() -> Units {
    units_of_locale(|name| std::env::var(name).ok())
}

/// Feet for people in the United States, by the first variable that is set of those that POSIX asks for measures.
fn units_of_locale(variable: impl Fn(&str) -> Option<String>) -> Units {
    let set = |name: &&str| variable(name).filter(|value| !value.is_empty());
    let locale = ["LC_ALL", "LC_MEASUREMENT", "LANG"].iter().find_map(set).unwrap_or_default();
    // Language, territory, encoding: en_US.UTF-8.
    let territory = locale.split(['.', '@']).next().and_then(|name| name.split_once('_'));
    if territory.is_some_and(|(_, territory)| territory == "US") { Units::Feet } else { Units::Metric }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_us_locale_starts_in_feet() {
        let of = |set: &[(&str, &str)]| {
            let found = |name: &str| set.iter().find(|(known, _)| *known == name).map(|(_, value)| value.to_string());
            units_of_locale(found)
        };
        assert_eq!(of(&[("LANG", "en_US.UTF-8")]), Units::Feet);
        assert_eq!(of(&[("LANG", "es_US")]), Units::Feet);
        assert_eq!(of(&[("LANG", "en_US.UTF-8"), ("LC_ALL", "en_GB.UTF-8")]), Units::Metric);
        assert_eq!(of(&[("LC_ALL", ""), ("LC_MEASUREMENT", "de_DE"), ("LANG", "en_US")]), Units::Metric);
        assert_eq!(of(&[("LANG", "C.UTF-8")]), Units::Metric);
        assert_eq!(of(&[]), Units::Metric);
    }
}
