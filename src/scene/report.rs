//! Faults as text: a line each for tools, and with the lines of the file for people.

mod excerpt;
mod shown;

use super::{Fault, Faults, Place, Severity};
use crate::units::printable;
use miette::{GraphicalReportHandler, GraphicalTheme};
use shown::Shown;
use std::fmt::{self, Write as _};

/// Faults that are shown with the lines of the file; who mends those sees more the next time.
const MOST_SHOWN: usize = 24;

impl Faults {
    /// Line and column of a fault, counted from 1 in characters; `None` where it has no place in the file.
    pub fn line_and_column(&self, fault: &Fault) -> Option<(usize, usize)> {
        fault.place.is_known().then(|| self.line_and_column_of(fault.place))
    }

    /// A line for each fault: `FILE:LINE:COLUMN: error: what is wrong (remedy; did you mean …)`.
    pub fn plain(&self) -> String {
        let mut text = String::new();
        for fault in &self.list {
            text += &printable(self.file_name());
            if let Some((line, column)) = self.line_and_column(fault) {
                // Writing to a string cannot fail.
                let _ = write!(text, ":{line}:{column}");
            }
            text += match fault.severity {
                Severity::Error => ": error: ",
                Severity::Warning => ": warning: ",
            };
            text += &fault.to_string();
            text.push('\n');
        }
        if self.left_out > 0 {
            let _ = writeln!(text, "{}: and {} faults more", printable(self.file_name()), self.left_out);
        }
        text
    }

    /// Every fault with the lines of the file that it stands in, as far as these are short; the first some dozen, and how many more
    /// there are.
    pub fn pretty(&self, colour: bool, width: usize) -> String {
        let theme = if colour { GraphicalTheme::unicode() } else { GraphicalTheme::unicode_nocolor() };
        let handler = GraphicalReportHandler::new_themed(theme).with_width(width.clamp(40, 400)).with_context_lines(1);
        let mut text = String::new();
        for fault in self.list.iter().take(MOST_SHOWN) {
            if handler.render_report(&mut text, &Shown::of(fault, self)).is_err() {
                return self.plain();
            }
        }
        let more = self.list.len().saturating_sub(MOST_SHOWN) + self.left_out;
        if more > 0 {
            let _ = writeln!(text, "and {more} faults more");
        }
        text
    }

    /// The line that a place stands in, counted from 1.
    pub(super) fn line_of(&self, place: Place) -> usize {
        self.line_and_column_of(place).0
    }

    fn line_and_column_of(&self, place: Place) -> (usize, usize) {
        let text = self.source.inner();
        let mut end = place.offset.min(text.len());
        while !text.is_char_boundary(end) {
            end -= 1;
        }
        let before = &text[..end];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        let line = 1 + before.bytes().filter(|byte| *byte == b'\n').count();
        (line, 1 + before[line_start..].chars().count())
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.plain().trim_end())
    }
}

impl std::error::Error for Faults {}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        f.write_str(&self.what)?;
        match (self.remedy.as_str(), &self.nearest) {
            ("", None) => Ok(()),
            ("", Some(nearest)) => write!(f, " (did you mean “{nearest}”?)"),
            (remedy, None) => write!(f, " ({remedy})"),
            (remedy, Some(nearest)) => write!(f, " ({remedy}; did you mean “{nearest}”?)"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn faults() -> Faults {
        let mut faults = Faults::none("yard.ron", "(\n  näme: \"ö\", ein: 3,\n)");
        let place = Place { offset: 17, len: 3 };
        faults.push(Fault::new("no field is called “ein”").remedy("fields: eis").nearest_of("ein", ["eis"]).at(place));
        faults.push(Fault::warning("the night is long"));
        faults
    }

    #[test]
    fn a_line_each_counts_characters() {
        let text = faults().plain();
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(
            lines,
            [
                "yard.ron:2:14: error: no field is called “ein” (fields: eis; did you mean “eis”?)",
                "yard.ron: warning: the night is long",
            ]
        );
    }

    #[test]
    fn people_see_the_line_of_the_file() {
        let text = faults().pretty(false, 100);
        for part in ["yard.ron:2:", "näme: \"ö\", ein: 3", "did you mean “eis”?", "fields: eis", "the night is long"]
        {
            assert!(text.contains(part), "{part} is missing in\n{text}");
        }
    }
}
