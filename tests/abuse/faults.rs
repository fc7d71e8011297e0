//! A disk that fails at its n-th step, for every n: the old files stay, the error says where and what to do, and nothing is left.

use gauzelight::{
    files::{self, Disk, Kept, System, WriteError},
    scene::{SaveError, Yard},
};
use std::{
    cell::Cell,
    collections::BTreeMap,
    fs::{self, File},
    io,
    path::Path,
};

/// The system's disk, but for one step, which fails; of a write half is done before.
struct Faulty {
    /// Steps until that one.
    left: Cell<usize>,
    /// What failed.
    failed: Cell<Option<&'static str>>,
}

impl Faulty {
    fn at(step: usize) -> Self {
        Self { left: Cell::new(step), failed: Cell::new(None) }
    }

    fn step(&self, name: &'static str) -> io::Result<()> {
        let left = self.left.get();
        self.left.set(left.saturating_sub(1));
        if left == 1 {
            self.failed.set(Some(name));
            return Err(io::ErrorKind::StorageFull.into());
        }
        Ok(())
    }
}

impl Disk for Faulty {
    fn create(&self, path: &Path) -> io::Result<File> {
        self.step("create")?;
        System.create(path)
    }

    fn open(&self, path: &Path) -> io::Result<File> {
        self.step("open")?;
        System.open(path)
    }

    fn write(&self, file: &mut File, bytes: &[u8]) -> io::Result<usize> {
        if let Err(error) = self.step("write") {
            System.write(file, &bytes[..bytes.len() / 2])?;
            return Err(error);
        }
        System.write(file, bytes)
    }

    fn sync(&self, file: &File) -> io::Result<()> {
        self.step("sync")?;
        System.sync(file)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("rename")?;
        System.rename(from, to)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step("link")?;
        System.link(from, to)
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        self.step("sync of the folder")?;
        System.sync_folder(folder)
    }
}

/// Every file of a folder with what stands in it.
fn standing(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries = fs::read_dir(folder).unwrap().map(Result::unwrap);
    entries.map(|one| (one.file_name().to_string_lossy().into_owned(), fs::read(one.path()).unwrap())).collect()
}

/// Writes on disks that fail at the first step, the second and so on, until one fails at none. What failed, in order.
fn at_every_step(
    old: Option<&str>,
    new: &[u8],
    write: impl Fn(&dyn Disk, &Path) -> Result<(), (String, bool)>,
) -> Vec<&'static str> {
    let mut failed = Vec::new();
    for step in 1.. {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("yard.ron");
        if let Some(old) = old {
            fs::write(&path, old).unwrap();
        }
        let before = standing(folder.path());
        let disk = Faulty::at(step);
        let done = write(&disk, &path);
        let Some(name) = disk.failed.get() else {
            assert!(done.is_ok(), "{done:?}");
            assert_eq!(fs::read(&path).unwrap(), new);
            break;
        };
        let (said, is_placed) = done.expect_err(name);
        assert!(said.contains(&*folder.path().display().to_string()) && said.contains("; "), "{name}: {said}");
        let after = standing(folder.path());
        if is_placed {
            assert_eq!(after["yard.ron"], new, "{name}");
        } else {
            assert_eq!(after.keys().collect::<Vec<_>>(), before.keys().collect::<Vec<_>>(), "{name} left something");
            assert!(after == before, "{name} changed the old file");
        }
        failed.push(name);
    }
    failed
}

fn written(done: Result<(), WriteError>) -> Result<(), (String, bool)> {
    done.map_err(|error| (error.to_string(), matches!(error, WriteError::Unsettled(..))))
}

#[test]
fn a_file_is_old_or_new_whatever_step_fails() {
    // More than two pieces.
    let new = vec![7; 150_000];
    let over = at_every_step(Some("old"), &new, |disk, path| written(files::write_on(disk, path, &new, &Kept::none())));
    assert_eq!(over, ["create", "write", "write", "write", "sync", "rename", "sync of the folder"]);
    let first = at_every_step(None, &new, |disk, path| written(files::write_new_on(disk, path, &new)));
    assert_eq!(first, ["create", "write", "write", "write", "sync", "link", "sync of the folder"]);
}

#[test]
fn a_yard_is_old_or_new_whatever_step_fails() {
    let yard = Yard::named("new");
    let save = |disk: &dyn Disk, path: &Path| match yard.save_on(disk, path) {
        Ok(_) => Ok(()),
        Err(error) => {
            let is_placed = matches!(error, SaveError::NotWritten(WriteError::Unsettled(..), _));
            Err((error.to_string(), is_placed))
        }
    };
    let new = yard.to_text().into_bytes();
    let one = ["create", "write", "sync", "rename", "sync of the folder"];
    assert_eq!(at_every_step(None, &new, save), one);
    assert_eq!(at_every_step(Some("Yard(name: \"old\")"), &new, save), one);
    // One with comments is copied first.
    let copy = ["create", "write", "sync", "link", "sync of the folder"];
    assert_eq!(at_every_step(Some("// mine\nYard(name: \"old\")"), &new, save), [copy, one].concat());
}

#[test]
fn a_full_device_is_an_error() {
    let full = Path::new("/dev/full");
    if full.exists() {
        let said = files::write(full, b"anything", &Kept::none()).unwrap_err().to_string();
        assert!(said.contains("/dev/full; make room there") && !said.contains("os error"), "{said}");
        assert!(Yard::named("any").save(full).is_err());
    }
}
