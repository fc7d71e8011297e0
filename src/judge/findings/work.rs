//! Work that somebody waits for: how far it has come, and whether it is still wanted.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering::Relaxed};

/// How far a piece of work has come, and whether it is still wanted; shared between who works and who waits.
#[derive(Debug, Default)]
pub struct Work {
    done: AtomicUsize,
    all: AtomicUsize,
    stopped: AtomicBool,
}

/// Work was called off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the work was called off")]
pub struct Stopped;

impl Work {
    /// Calls it off: it ends at its next step.
    pub fn stop(&self) {
        self.stopped.store(true, Relaxed);
    }

    /// How many of its parts are done, and of how many; there may come to be more.
    pub fn progress(&self) -> (usize, usize) {
        (self.done.load(Relaxed), self.all.load(Relaxed))
    }

    /// Asked between its steps: [`Stopped`] where it was called off.
    pub(super) fn goes_on(&self) -> Result<(), Stopped> {
        if self.stopped.load(Relaxed) { Err(Stopped) } else { Ok(()) }
    }

    /// So many more parts are to be done.
    pub(super) fn expect(&self, parts: usize) {
        self.all.fetch_add(parts, Relaxed);
    }

    /// So many parts are done.
    pub(super) fn finish(&self, parts: usize) {
        self.done.fetch_add(parts, Relaxed);
    }
}
