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
    /// A day: `2026-12-21`.
    Date,
    /// A clock time: `18:30`.
    Clock,
    /// A first and a last day or clock time.
    Times,
    /// One of these words.
    Choice(&'static [&'static str]),
    /// Names, one by one.
    Names,
    /// The name of a thing, or three lengths.
    Aim,
    /// A noun with fields of its own, which follow one by one, `room.depth`; itself only where none is there.
    Parts(&'static Parts),
    /// Anything larger, as it stands in a file.
    Group,
}

impl Sort {
    /// Two of these in brackets.
    pub(super) const fn twice(self) -> Self {
        match self {
            Self::Length => Self::Lengths(2),
            Self::Number => Self::Numbers(2),
            Self::Clock | Self::Date => Self::Times,
            _ => Self::Group,
        }
    }

    /// A list of these.
    pub(super) const fn listed(self) -> Self {
        match self {
            Self::Name => Self::Names,
            _ => Self::Group,
        }
    }
}

/// The fields of a noun.
#[derive(Debug, PartialEq, Eq)]
pub struct Parts {
    /// What each means.
    pub meanings: &'static [&'static str],
    /// What a person enters for each.
    pub sorts: &'static [Sort],
}

/// One field of a thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Its name in a file, after the name of the noun within which it stands, if any: `room.depth`.
    pub name: String,
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
