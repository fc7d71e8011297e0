//! Skies that were gathered, kept from one run to the next in the system's cache folder: by what they depend on, a few of them, and none
//! that is large. What cannot be read, written or understood is as if it were not there.

use super::home;
use gauzelight::{
    files::{self, Kept},
    light::{Night, SkyKey},
};
use std::{
    path::{Path, PathBuf},
    time::SystemTime,
};

/// Skies that are kept at most, and bytes of each.
const MOST: usize = 12;
const MOST_BYTES: u64 = 8 << 20;

/// How their files end.
const ENDING: &str = "sky";

/// Where a sky is kept by this very build of the program: another may ask in another way.
fn file(folder: &Path, [first, second]: SkyKey) -> Option<PathBuf> {
    let build = std::fs::metadata(std::env::current_exe().ok()?).ok()?;
    let since = build.modified().ok()?.duration_since(SystemTime::UNIX_EPOCH).ok()?;
    Some(folder.join(format!("{first:016x}{second:016x}-{:x}-{:x}.{ENDING}", build.len(), since.as_nanos())))
}

/// The folder of all, and where that of a night is kept.
fn place(night: &Night) -> Option<(PathBuf, PathBuf)> {
    let folder = home::skies()?;
    let file = file(&folder, night.sky_key()?)?;
    Some((folder, file))
}

/// Gathers all of a night's sky as long as it is wanted: what is kept is learnt, and what is not is kept.
#[cfg(feature = "viewer")]
pub fn gather(night: &Night, wanted: &(dyn Fn() -> bool + Sync)) {
    recall(night);
    if night.gather_while(wanted) {
        keep(night);
    }
}

/// Lets a night learn its sky, where it is kept.
pub fn recall(night: &Night) {
    let Some((_, file)) = place(night) else { return };
    if let Ok(bytes) = files::read(&file, MOST_BYTES) {
        night.learn_sky(&bytes);
    }
}

/// Keeps what a night knows of its sky, where that is not what was kept.
pub fn keep(night: &Night) {
    let Some((folder, file)) = place(night) else { return };
    let Some(bytes) = night.sky_bytes().filter(|bytes| bytes.len() as u64 <= MOST_BYTES) else { return };
    if files::read(&file, MOST_BYTES).is_ok_and(|kept| kept == bytes) {
        return;
    }
    let made = folder.parent().is_some_and(|above| files::make_folder(above).is_ok());
    if made && files::make_folder(&folder).is_ok() && files::write(&file, &bytes, &Kept::none()).is_ok() {
        thin(&folder);
    }
}

/// Takes the oldest away where there are too many; leaves alone what is none of them.
fn thin(folder: &Path) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    let of = |entry: std::fs::DirEntry| {
        let (path, about) = (entry.path(), entry.metadata().ok()?);
        let is_sky = about.is_file() && path.extension().is_some_and(|ending| ending == ENDING);
        is_sky.then(|| (about.modified().unwrap_or(SystemTime::UNIX_EPOCH), path))
    };
    let mut skies: Vec<(SystemTime, PathBuf)> = entries.filter_map(|entry| of(entry.ok()?)).collect();
    skies.sort_unstable_by(|a, b| b.cmp(a));
    for (_, path) in skies.into_iter().skip(MOST) {
        // One that stays is taken away another time.
        let _ = std::fs::remove_file(path);
    }
}
