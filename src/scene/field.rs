//! The fields of a noun as somebody edits them: one by one, as text, each with its meaning.

/// What a person enters for a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sort {
    /// A length in any notation.
    Length,
    /// So many lengths.
    Lengths(u8),
    /// A number.
    Number,
    /// So many numbers.
    Numbers(u8),
    /// Words.
    Text,
    /// The name of another thing or of a catalogue entry.
    Name,
    /// Yes or no.
    Switch,
    /// One of these words.
    Choice(&'static [&'static str]),
    /// Anything larger, as it stands in a file.
    Group,
}

impl Sort {
    /// Two of these in brackets.
    pub(super) const fn twice(self) -> Self {
        match self {
            Self::Length => Self::Lengths(2),
            Self::Number => Self::Numbers(2),
            _ => Self::Group,
        }
    }
}

/// One field of a thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Its name in a file.
    pub name: &'static str,
    /// What it means, with its unit.
    pub meaning: &'static str,
    /// What a person enters for it.
    pub sort: Sort,
    /// What stands in it, as somebody would type it: a length or a text without quotes, several of them one by one; a
    /// group as it stands in a file. Empty where nothing is given.
    pub entries: Vec<String>,
    /// Whether that is what it is when left out.
    pub is_default: bool,
}
