//! Spaces and comments.

use super::{Fault, Parsed, Parser, Place};

impl Parser<'_, '_> {
    /// Steps over spaces, line comments and block comments, which may stand in each other.
    pub(super) fn blank(&mut self) -> Parsed<()> {
        loop {
            let rest = self.rest();
            self.at += rest.len() - rest.trim_start().len();
            if self.rest().starts_with("//") {
                self.comments = true;
                self.at += self.rest().find('\n').unwrap_or(self.rest().len());
            } else if self.rest().starts_with("/*") {
                self.comments = true;
                self.block_comment()?;
            } else {
                return Ok(());
            }
        }
    }

    fn block_comment(&mut self) -> Parsed<()> {
        let opened = Place { offset: self.at, len: 2 };
        let mut depth = 0_usize;
        loop {
            let rest = self.rest();
            let Some(mark) = rest.find(['/', '*']) else { break };
            self.at += mark;
            if self.take("/*") {
                depth += 1;
            } else if self.take("*/") {
                depth -= 1;
                if depth == 0 {
                    return Ok(());
                }
            } else {
                self.at += 1;
            }
        }
        self.at = self.text.len();
        self.stop(Fault::new("this comment is never closed").remedy("close it with “*/”"), opened)
    }
}
