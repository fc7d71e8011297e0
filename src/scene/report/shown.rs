//! One fault with what stands around it, as the drawer of reports wants it.

use super::excerpt::Excerpt;
use crate::scene::{Fault, Faults, Severity};
use crate::units::printable;
use miette::{Diagnostic, LabeledSpan, SourceCode};
use std::fmt;

/// A fault beside the part of the file that it stands in, if it has a place there.
#[derive(Debug)]
pub(super) struct Shown<'a> {
    fault: &'a Fault,
    file_name: String,
    excerpt: Option<Excerpt>,
}

impl<'a> Shown<'a> {
    pub fn of(fault: &'a Fault, faults: &Faults) -> Self {
        let file_name = printable(faults.file_name());
        let excerpt = faults.line_and_column(fault).map(|at| {
            let text = faults.source.inner();
            Excerpt::of(text, fault.place, at, &file_name)
        });
        Self { fault, file_name, excerpt }
    }
}

impl fmt::Display for Shown<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.excerpt.is_some() {
            return f.write_str(&self.fault.what);
        }
        write!(f, "{}: {}", self.file_name, self.fault.what)
    }
}

impl std::error::Error for Shown<'_> {}

impl Diagnostic for Shown<'_> {
    fn severity(&self) -> Option<miette::Severity> {
        Some(match self.fault.severity {
            Severity::Error => miette::Severity::Error,
            Severity::Warning => miette::Severity::Warning,
        })
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        if self.fault.remedy.is_empty() { None } else { Some(Box::new(&self.fault.remedy)) }
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.excerpt.as_ref().map(|excerpt| excerpt as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let span = self.excerpt.as_ref()?.span();
        let label = match &self.fault.nearest {
            Some(nearest) => format!("did you mean “{nearest}”?"),
            None if self.fault.path.is_empty() => "here".to_owned(),
            None => self.fault.path.clone(),
        };
        Some(Box::new(std::iter::once(LabeledSpan::new_with_span(Some(label), span))))
    }
}
