//! Changes that are not saved yet, kept in a place of their own: what a crash, a kill or a power cut leaves is offered when the
//! window is opened next.

use crate::command::home;
use gauzelight::{
    files::{self, Kept},
    scene::Yard,
};
use serde::{Deserialize, Serialize};
use std::{
    fs::{self, File},
    path::{Path, PathBuf},
    sync::{Arc, Mutex, MutexGuard, PoisonError},
    thread::JoinHandle,
    time::{Duration, Instant, SystemTime},
};

/// From a change to its copy on the disk; changes that follow sooner go with it.
const DELAY: Duration = Duration::from_secs(1);
/// The most that a kept yard may have, bytes.
const MOST_BYTES: u64 = 64 << 20;

/// A yard with changes that were never saved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Unsaved {
    /// The file that it is kept in; one that never was saved has none.
    pub file: Option<PathBuf>,
    /// Its text.
    pub yard: String,
}

/// An [`Unsaved`] that a window which is no more has left.
#[derive(Clone, Debug, PartialEq)]
pub struct Left {
    /// What it is.
    pub unsaved: Unsaved,
    /// When it was written.
    pub at: SystemTime,
    path: PathBuf,
}

impl Left {
    /// Whether it is of the yard in this file.
    pub fn is_of(&self, file: &Path) -> bool {
        let real = |file: &Path| fs::canonicalize(file).unwrap_or_else(|_| whole(file));
        self.unsaved.file.as_deref().is_some_and(|own| real(own) == real(file))
    }

    /// Lets it go.
    pub fn discard(&self) {
        // What is gone already need not be removed.
        let _ = fs::remove_file(&self.path);
        let _ = fs::remove_file(lock_of(&self.path));
    }
}

/// What is to be written, and where to.
struct Copy {
    path: PathBuf,
    due: Mutex<Option<(Option<PathBuf>, Arc<Yard>)>>,
}

impl Copy {
    fn due(&self) -> MutexGuard<'_, Option<(Option<PathBuf>, Arc<Yard>)>> {
        self.due.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Writes what is due, if anything is. Held until it is on the disk, so that who comes second finds it done.
    fn write(&self) -> Result<(), String> {
        let mut due = self.due();
        let Some((file, yard)) = due.as_ref() else { return Ok(()) };
        let unsaved = Unsaved { file: file.clone(), yard: yard.to_text() };
        let text = ron::to_string(&unsaved).map_err(|error| error.to_string())?;
        files::write(&self.path, text.as_bytes(), &Kept::none()).map_err(|error| error.to_string())?;
        *due = None;
        Ok(())
    }
}

/// The copy of what is not saved.
pub struct Recovery {
    folder: Option<PathBuf>,
    copy: Option<Arc<Copy>>,
    /// Held as long as this window is open: the system lets go of it with the window, whatever ends that.
    _lock: Option<File>,
    /// What was copied last or is about to be.
    of: Option<Arc<Yard>>,
    since: Option<Instant>,
    writer: Option<JoinHandle<Result<(), String>>>,
}

impl Recovery {
    /// A place of this window's own among the person's files; tests leave these alone.
    pub fn new() -> Self {
        let recovery = Self::within(home::unsaved().filter(|_| !cfg!(test)));
        if let Some(copy) = &recovery.copy {
            before_the_end(Arc::clone(copy));
        }
        recovery
    }

    /// A place of its own in a folder; without one nothing is kept.
    pub(super) fn within(folder: Option<PathBuf>) -> Self {
        let place = folder.as_deref().and_then(own_place);
        let (path, lock) = place.unzip();
        let copy = path.map(|path| Arc::new(Copy { path, due: Mutex::new(None) }));
        Self { folder, copy, _lock: lock, of: None, since: None, writer: None }
    }

    /// What other windows left that are no more, the newest first.
    pub fn left(&self) -> Vec<Left> {
        let entries = self.folder.as_ref().and_then(|folder| fs::read_dir(folder).ok());
        let own = self.copy.as_ref().map(|copy| copy.path.as_path());
        let paths = entries.into_iter().flatten().flatten().map(|entry| entry.path());
        let ends = |path: &Path, ending: &str| path.extension().is_some_and(|found| found == ending);
        let others = paths.filter(|path| own.is_none_or(|own| own != path.with_extension("ron")));
        let (copies, rest): (Vec<_>, Vec<_>) = others.filter(|path| is_left(path)).partition(|path| ends(path, "ron"));
        // A window that left nothing unsaved leaves its lock all the same.
        for lock in rest.iter().filter(|path| ends(path, "lock") && !path.with_extension("ron").exists()) {
            let _ = fs::remove_file(lock);
        }
        let mut list: Vec<Left> = copies.iter().filter_map(|path| read(path)).collect();
        list.sort_by_key(|left| std::cmp::Reverse(left.at));
        list
    }

    /// Follows the yard beside the window; never waits. An error says why nothing can be kept.
    pub fn keep_step(&mut self, yard: &Arc<Yard>, file: Option<&Path>, is_saved: bool) -> Result<(), String> {
        let Some(copy) = &self.copy else { return Ok(()) };
        if self.writer.as_ref().is_some_and(JoinHandle::is_finished) {
            let ended = self.writer.take().map(JoinHandle::join);
            let written = ended.unwrap_or(Ok(Ok(()))).unwrap_or_else(|_| Err("its writer broke".to_owned()));
            written.map_err(|why| format!("Changes cannot be kept against a crash, so save often: {why}"))?;
        }
        if is_saved {
            if self.of.is_some() && self.writer.is_none() {
                self.clear();
            }
            return Ok(());
        }
        if !self.of.as_ref().is_some_and(|of| Arc::ptr_eq(of, yard)) {
            *copy.due() = Some((file.map(whole), Arc::clone(yard)));
            self.of = Some(Arc::clone(yard));
            self.since.get_or_insert_with(Instant::now);
        }
        if self.writer.is_none() && self.since.is_some_and(|since| since.elapsed() > DELAY) {
            let copy = Arc::clone(copy);
            (self.since, self.writer) = (None, Some(std::thread::spawn(move || copy.write())));
        }
        Ok(())
    }

    /// Makes what another window left this one's own, on the disk too, before that copy goes.
    pub fn take_over(&mut self, left: &Left, yard: &Arc<Yard>) -> Result<(), String> {
        if let Some(copy) = &self.copy {
            *copy.due() = Some((left.unsaved.file.clone(), Arc::clone(yard)));
            copy.write()?;
            self.of = Some(Arc::clone(yard));
            left.discard();
        }
        Ok(())
    }

    /// Whether anything is still to be written.
    pub fn is_at_work(&self) -> bool {
        self.since.is_some() || self.writer.is_some()
    }

    /// Nothing is unsaved any more.
    pub fn clear(&mut self) {
        if let Some(writer) = self.writer.take() {
            // Whatever became of it, it is not needed.
            let _ = writer.join();
        }
        if let Some(copy) = &self.copy {
            *copy.due() = None;
            let _ = fs::remove_file(&copy.path);
        }
        (self.of, self.since) = (None, None);
    }

    /// The window closes as somebody wished.
    pub fn end(&mut self) {
        self.clear();
        if let Some(copy) = &self.copy {
            let _ = fs::remove_file(lock_of(&copy.path));
        }
    }
}

/// A name that no copy has, not even one that an earlier process of the same number left, and its lock.
fn own_place(folder: &Path) -> Option<(PathBuf, File)> {
    /// Windows of one process and what earlier ones left are fewer than this.
    const MOST: usize = 100;
    fs::create_dir_all(folder).ok()?;
    (0..MOST).find_map(|n| {
        let path = folder.join(format!("{}-{n}.ron", std::process::id()));
        if path.exists() {
            return None;
        }
        let lock = File::create(lock_of(&path)).ok()?;
        lock.try_lock().ok()?;
        Some((path, lock))
    })
}

fn lock_of(path: &Path) -> PathBuf {
    path.with_extension("lock")
}

/// The path from the root: the next window may be opened in another folder.
fn whole(file: &Path) -> PathBuf {
    std::path::absolute(file).unwrap_or_else(|_| file.to_owned())
}

/// Whether the window that wrote a copy is no more.
fn is_left(path: &Path) -> bool {
    File::open(lock_of(path)).map_or(true, |lock| lock.try_lock().is_ok())
}

fn read(path: &Path) -> Option<Left> {
    let text = String::from_utf8(files::read(path, MOST_BYTES).ok()?).ok()?;
    let at = fs::metadata(path).and_then(|data| data.modified()).unwrap_or(SystemTime::UNIX_EPOCH);
    Some(Left { unsaved: ron::from_str(&text).ok()?, at, path: path.to_owned() })
}

/// Writes what is due when the system asks the program to end, and then lets it end.
#[cfg(unix)]
fn before_the_end(copy: Arc<Copy>) {
    use signal_hook::{
        consts::{SIGHUP, SIGINT, SIGTERM},
        iterator::Signals,
        low_level::emulate_default_handler,
    };
    let Ok(mut signals) = Signals::new([SIGTERM, SIGHUP, SIGINT]) else { return };
    std::thread::spawn(move || {
        for signal in signals.forever() {
            // There is nobody left to tell.
            let _ = copy.write();
            let _ = emulate_default_handler(signal);
        }
    });
}

#[cfg(not(unix))]
fn before_the_end(_: Arc<Copy>) {}

/// What a window that is no more would have left in a folder.
#[cfg(test)]
pub(super) fn leave(folder: &Path, name: &str, file: Option<&Path>, yard: &str) {
    let unsaved = Unsaved { file: file.map(whole), yard: yard.to_owned() };
    let text = ron::to_string(&unsaved).unwrap_or_default();
    files::write(&folder.join(format!("{name}.ron")), text.as_bytes(), &Kept::none()).unwrap_or_else(|e| panic!("{e}"));
}

#[cfg(test)]
mod tests {
    use super::*;
    use gauzelight::scene::Catalogue;

    fn yard(name: &str) -> Arc<Yard> {
        let text = format!(r#"(name: "{name}", walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)])"#);
        Arc::new(Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap().yard)
    }

    /// Steps until nothing is to be written any more.
    fn settle(recovery: &mut Recovery, yard: &Arc<Yard>) {
        recovery.keep_step(yard, Some(Path::new("/yards/mine.ron")), false).unwrap();
        while recovery.is_at_work() {
            std::thread::sleep(Duration::from_millis(5));
            recovery.keep_step(yard, Some(Path::new("/yards/mine.ron")), false).unwrap();
        }
    }

    #[test]
    fn what_a_window_leaves_is_found_by_the_next_and_what_it_holds_is_not() {
        let folder = std::env::temp_dir().join(format!("gauzelight-unsaved-{}", std::process::id()));
        let mut open = Recovery::within(Some(folder.clone()));
        let mut lost = Recovery::within(Some(folder.clone()));
        settle(&mut open, &yard("open"));
        settle(&mut lost, &yard("lost"));
        assert_eq!(open.left(), []);
        // As after a kill: its lock is let go, and nothing is tidied up.
        drop(lost);
        let mut next = Recovery::within(Some(folder.clone()));
        let left = next.left();
        assert_eq!(left.len(), 1);
        assert_eq!(left[0].unsaved.file.as_deref(), Some(Path::new("/yards/mine.ron")));
        let found = Yard::parse(&left[0].unsaved.yard, "unsaved", &Catalogue::builtin()).unwrap().yard;
        assert_eq!(found.name.0, "lost");
        next.take_over(&left[0], &yard("lost")).unwrap();
        assert_eq!(open.left(), []);
        // Once saved nothing is kept, and a window that ends leaves nothing.
        next.keep_step(&yard("lost"), None, true).unwrap();
        next.end();
        open.end();
        assert_eq!(fs::read_dir(&folder).unwrap().count(), 0);
        fs::remove_dir_all(folder).unwrap();
    }
}
