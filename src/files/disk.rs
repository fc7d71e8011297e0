//! What a disk is asked for while a file is written; a test puts one in its place that fails.

use std::{
    fs::{self, File, OpenOptions},
    io::{self, ErrorKind, Write as _},
    path::Path,
    sync::mpsc::channel,
    thread,
    time::Duration,
};

/// How long the reader of a pipe is waited for.
const PATIENCE: Duration = Duration::from_secs(3);

/// Each step of writing a file, any of which may fail.
pub trait Disk {
    /// A new, empty file to write to; one that is there already is an error.
    fn create(&self, path: &Path) -> io::Result<File>;

    /// What is there already, such as a pipe, to write to.
    fn open(&self, path: &Path) -> io::Result<File>;

    /// Writes some of these bytes; the answer is how many.
    fn write(&self, file: &mut File, bytes: &[u8]) -> io::Result<usize>;

    /// Waits until a file lies on the disk.
    fn sync(&self, file: &File) -> io::Result<()>;

    /// Puts a file into the place of another.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Gives a file a second name; one that is taken is an error.
    fn link(&self, from: &Path, to: &Path) -> io::Result<()>;

    /// Waits until the names in a folder lie on the disk.
    fn sync_folder(&self, folder: &Path) -> io::Result<()>;
}

/// The disk that the system has.
#[derive(Clone, Copy, Debug, Default)]
pub struct System;

impl Disk for System {
    fn create(&self, path: &Path) -> io::Result<File> {
        OpenOptions::new().write(true).create_new(true).open(path)
    }

    fn open(&self, path: &Path) -> io::Result<File> {
        // A pipe opens once somebody reads from it, which may be never: it is waited for beside.
        let (sender, opened) = channel();
        let path = path.to_owned();
        thread::spawn(move || {
            // Whoever comes later than that finds nothing.
            let _ = sender.send(OpenOptions::new().write(true).open(path));
        });
        opened
            .recv_timeout(PATIENCE)
            .unwrap_or_else(|_| Err(io::Error::new(ErrorKind::TimedOut, "nobody reads from it")))
    }

    fn write(&self, file: &mut File, bytes: &[u8]) -> io::Result<usize> {
        file.write(bytes)
    }

    fn sync(&self, file: &File) -> io::Result<()> {
        settled(file.sync_all())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::hard_link(from, to)
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        // Only Unix opens a folder like a file.
        if cfg!(unix) { settled(File::open(folder)?.sync_all()) } else { Ok(()) }
    }
}

/// Pipes, terminals and some file systems have nothing to wait for and say so by an error.
fn settled(done: io::Result<()>) -> io::Result<()> {
    match done {
        Err(error) if matches!(error.kind(), io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported) => Ok(()),
        done => done,
    }
}
