//! The lists as a page of text.

use super::{FAULT_LOG, Moment, Task};
use std::fmt::Write as _;

/// The lists of a station, one under the other, with the head of its fault log.
pub fn page(station: &str, tasks: &[Task]) -> String {
    let mut page = format!("Keeping {station} running\n");
    for moment in Moment::ALL {
        let mut here = tasks.iter().filter(|task| task.when == moment).peekable();
        if here.peek().is_none() {
            continue;
        }
        // Writing to a string cannot fail.
        let _ = writeln!(page, "\n{}", moment.name());
        for task in here {
            let _ = writeln!(page, "  [ ] {}", task.text);
            if let Some(caution) = &task.caution {
                let _ = writeln!(page, "      caution: {caution}");
            }
        }
    }
    let _ = writeln!(page, "\nFault log\n  {}", FAULT_LOG.join(" | "));
    page
}
