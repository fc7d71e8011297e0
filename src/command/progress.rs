//! How far work has come, on the terminal of somebody who waits for it.

use gauzelight::judge::findings::Work;
use std::{
    io::{IsTerminal, Write as _, stderr},
    sync::mpsc::{RecvTimeoutError, channel},
    thread,
    time::Duration,
};

/// How often it is shown, and how long nothing is.
const EACH: Duration = Duration::from_millis(200);

/// Runs what does some work, and shows meanwhile how far that has come: on one line that is gone at the end, and only where
/// somebody sits before a terminal.
pub fn shown<T>(what: &str, work: &Work, run: impl FnOnce() -> T) -> T {
    if !stderr().is_terminal() {
        return run();
    }
    let (ended, end) = channel::<()>();
    thread::scope(|scope| {
        scope.spawn(move || {
            let mut wide = 0;
            while end.recv_timeout(EACH) == Err(RecvTimeoutError::Timeout) {
                let (done, all) = work.progress();
                let line = format!("{what}: {done} of {all}");
                wide = wide.max(line.len());
                // A terminal that has gone away is no reason to stop.
                let _ = write!(stderr(), "\r{line:<wide$}").and_then(|()| stderr().flush());
            }
            if wide > 0 {
                let _ = write!(stderr(), "\r{:wide$}\r", "").and_then(|()| stderr().flush());
            }
        });
        let done = run();
        drop(ended);
        done
    })
}
