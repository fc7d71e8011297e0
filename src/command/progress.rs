//! How far work has come, on the terminal of somebody who waits for it.

use gauzelight::judge::findings::Work;
use std::{
    io::{IsTerminal, Write as _, stderr},
    sync::mpsc::{RecvTimeoutError, channel},
    thread,
    time::{Duration, Instant},
};

/// How often it is shown, and how long nothing is.
const EACH: Duration = Duration::from_millis(200);

/// What takes no longer needs no word.
const SOON: Duration = Duration::from_secs(1);

/// Runs what does some work, and shows meanwhile how far that has come.
pub fn shown<T>(what: &str, work: &Work, run: impl FnOnce() -> T) -> T {
    let far = |_| {
        let (done, all) = work.progress();
        Some(format!("{what}: {done} of {all}"))
    };
    beside(far, run)
}

/// Runs what may take long, and shows meanwhile how long it has taken.
pub fn timed<T>(what: &str, run: impl FnOnce() -> T) -> T {
    beside(|since| (since >= SOON).then(|| format!("{what}: {} s", since.as_secs())), run)
}

/// Runs with a line beside it, which tells what is to be told after a time, and is gone at the end; only where somebody sits before a
/// terminal.
fn beside<T>(tell: impl Fn(Duration) -> Option<String> + Send, run: impl FnOnce() -> T) -> T {
    if !stderr().is_terminal() {
        return run();
    }
    let begun = Instant::now();
    let (ended, end) = channel::<()>();
    thread::scope(|scope| {
        scope.spawn(move || {
            let mut wide = 0;
            while end.recv_timeout(EACH) == Err(RecvTimeoutError::Timeout) {
                let Some(line) = tell(begun.elapsed()) else { continue };
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
