//! What others have to say on a page: plain lines under a title, each in its part of the work.

pub use crate::craft::cautions::Part;

/// Sections of plain lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Notes {
    /// In which part, under which title, what lines; in the order in which they are printed.
    pub sections: Vec<(Part, String, Vec<String>)>,
}

impl Notes {
    /// A section more; none where there is no line.
    pub fn add(&mut self, part: Part, title: &str, lines: Vec<String>) {
        if !lines.is_empty() {
            self.sections.push((part, title.to_owned(), lines));
        }
    }

    /// The sections of one part.
    pub fn of(&self, part: Part) -> impl Iterator<Item = (&str, &[String])> {
        self.sections
            .iter()
            .filter(move |(of, ..)| *of == part)
            .map(|(_, title, lines)| (title.as_str(), lines.as_slice()))
    }
}
