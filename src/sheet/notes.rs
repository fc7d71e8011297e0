//! What others have to say on a page: plain lines under a title, each in its part of the work.

/// A part of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// By daylight, with the ladder.
    Day,
    /// The first time in the dark.
    FirstNight,
    /// Each evening.
    EachEvening,
    /// When it comes down.
    TakeDown,
}

impl Part {
    /// All of them in their order.
    pub const ALL: [Self; 4] = [Self::Day, Self::FirstNight, Self::EachEvening, Self::TakeDown];

    /// What it is called on paper.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Day => "Day",
            Self::FirstNight => "First night",
            Self::EachEvening => "Each evening",
            Self::TakeDown => "Take-down",
        }
    }
}

/// Sections of plain lines.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Notes {
    /// In which part, under which title, what lines; in the order in which they are printed.
    pub sections: Vec<(Part, String, Vec<String>)>,
}

impl Notes {
    /// The sections of one part.
    pub fn of(&self, part: Part) -> impl Iterator<Item = (&str, &[String])> {
        self.sections
            .iter()
            .filter(move |(of, ..)| *of == part)
            .map(|(_, title, lines)| (title.as_str(), lines.as_slice()))
    }
}
