//! How a table of broken yards is tried.

use super::GOOD;
use gauzelight::scene::{Catalogue, Severity, Yard};

/// One fault put into the good yard, and what must be said of it.
pub struct Case {
    /// What is replaced; it stands in the good yard once.
    pub find: &'static str,
    /// What is put there.
    pub put: &'static str,
    /// A part of what must be said.
    pub says: &'static str,
    /// The line that it must be said of.
    pub line: usize,
}

/// A case in one line.
pub const fn case(find: &'static str, put: &'static str, says: &'static str, line: usize) -> Case {
    Case { find, put, says, line }
}

#[test]
fn the_good_yard_is_good() {
    let loaded = Yard::parse(GOOD, "good.ron", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults}"));
    assert!(loaded.warnings.is_empty(), "{}", loaded.warnings);
}

/// Tries every case; each must give exactly one fault, at its line.
pub fn try_all(cases: &[Case]) {
    let catalogue = Catalogue::builtin();
    let mut wrong = String::new();
    for Case { find, put, says, line } in cases {
        assert_eq!(GOOD.matches(find).count(), 1, "“{find}” must stand in the good yard once");
        let text = GOOD.replace(find, put);
        let faults = match Yard::parse(&text, "yard.ron", &catalogue) {
            Ok(loaded) => loaded.warnings,
            Err(faults) => {
                assert!(faults.iter().any(|fault| fault.severity == Severity::Error));
                faults
            }
        };
        let told = faults.iter().any(|fault| {
            fault.to_string().contains(says) && faults.line_and_column(fault).is_some_and(|(at, _)| at == *line)
        });
        if !told || faults.len() != 1 {
            wrong += &format!("“{find}” → “{put}” should say “{says}” of line {line}; said:\n{}\n", faults.plain());
        }
        assert!(!faults.pretty(true, 80).is_empty());
    }
    assert!(wrong.is_empty(), "{wrong}");
}

/// Tries whole texts; the first fault must be the one that is expected.
pub fn try_texts(cases: &[(&str, &str, usize, usize)]) {
    let catalogue = Catalogue::builtin();
    let mut wrong = String::new();
    for (text, says, line, column) in cases {
        match Yard::parse(text, "yard.ron", &catalogue) {
            Ok(_) => wrong += &format!("{text:?} was read\n"),
            Err(faults) => {
                let told = faults.iter().next().is_some_and(|fault| {
                    let at = faults.line_and_column(fault);
                    fault.to_string().contains(says) && at == Some((*line, *column))
                });
                if !told {
                    wrong += &format!("{text:?} should say “{says}” at {line}:{column}; said:\n{}\n", faults.plain());
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
}
