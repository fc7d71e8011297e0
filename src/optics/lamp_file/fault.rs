//! What is wrong in a photometric file.

use std::fmt;

/// What is wrong in a photometric file, where, and what would help.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LampFileFault {
    /// Line, from 1.
    pub line: usize,
    /// Which number of that line, from 1; `None` where it is not one number.
    pub number: Option<usize>,
    /// What is wrong, with what stands there.
    pub what: String,
    /// What is allowed or would help.
    pub remedy: String,
}

impl fmt::Display for LampFileFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}", self.line)?;
        if let Some(number) = self.number {
            write!(f, ", number {number}")?;
        }
        write!(f, ": {}; {}", self.what, self.remedy)
    }
}

impl std::error::Error for LampFileFault {}
