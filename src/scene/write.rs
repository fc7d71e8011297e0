//! From values to the text of a yard file: one way to write each document, so that saving twice changes nothing.

mod value;

/// Lines are broken beyond this.
const WIDTH: usize = 110;
const INDENT: usize = 4;

/// A value that can be written to a yard file.
pub(super) trait Write {
    /// What is to stand in the file.
    fn write(&self) -> Written;

    /// Its fields, where it is a noun.
    fn parts(&self) -> Option<Vec<Whole>> {
        None
    }
}

/// What is to stand in a file, not yet broken into lines.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Written {
    /// A number, a word or a text in its quotes.
    Plain(String),
    /// `(name: value, …)`, with the title of a variant before it, if any.
    Fields { title: &'static str, fields: Vec<(&'static str, Written)> },
    /// `(a, b)`.
    Tuple(Vec<Written>),
    /// `[a, b]`.
    List(Vec<Written>),
}

/// A field with what stands in it.
pub(super) struct Whole {
    /// Its name.
    pub name: &'static str,
    /// What stands in it.
    pub value: Written,
    /// The fields within it, where it is a noun.
    pub parts: Option<Vec<Whole>>,
    /// Whether that is what it is when left out.
    pub is_default: bool,
}

impl Written {
    /// The fields of a noun.
    pub fn fields(fields: Vec<(&'static str, Self)>) -> Self {
        Self::Fields { title: "", fields }
    }

    /// A variant with nothing in it, or another bare word.
    pub fn word(word: &str) -> Self {
        Self::Plain(word.to_owned())
    }

    /// With the title of the variant that holds it.
    pub fn titled(self, title: &'static str) -> Self {
        match self {
            Self::Fields { fields, .. } => Self::Fields { title, fields },
            other => other,
        }
    }

    /// The text on one line.
    pub fn into_line(self) -> String {
        let mut text = String::new();
        self.put_flat(&mut text);
        text
    }

    /// The text of a whole file, each of its fields on lines of its own.
    pub fn into_file(self) -> String {
        let mut text = String::new();
        self.put_broken(0, &mut text);
        text.push('\n');
        text
    }

    /// Writes it on this line if it fits, else over several; `used` columns stand on the line already.
    fn put(&self, indent: usize, used: usize, text: &mut String) {
        if !self.must_break() {
            let line_start = text.len();
            self.put_flat(text);
            if used + text[line_start..].chars().count() < WIDTH {
                return;
            }
            text.truncate(line_start);
        }
        self.put_broken(indent, text);
    }

    /// A list of nouns shows each on a line of its own.
    fn must_break(&self) -> bool {
        match self {
            Self::Plain(_) => false,
            Self::Fields { fields, .. } => fields.iter().any(|(_, value)| value.must_break()),
            Self::Tuple(values) => values.iter().any(Self::must_break),
            Self::List(values) => values.iter().any(|value| matches!(value, Self::Fields { .. })),
        }
    }

    fn put_flat(&self, text: &mut String) {
        let (open, close) = self.brackets(text);
        text.push_str(open);
        for (index, (key, value)) in self.entries().into_iter().enumerate() {
            if index > 0 {
                text.push_str(", ");
            }
            put_key(key, text);
            value.put_flat(text);
        }
        text.push_str(close);
    }

    fn put_broken(&self, indent: usize, text: &mut String) {
        let (open, close) = self.brackets(text);
        text.push_str(open);
        let entries = self.entries();
        if entries.is_empty() {
            text.push_str(close);
            return;
        }
        text.push('\n');
        let inner = indent + INDENT;
        for (key, value) in entries {
            text.extend(std::iter::repeat_n(' ', inner));
            put_key(key, text);
            // One column more for the comma.
            value.put(inner, inner + key.len() + 3, text);
            text.push_str(",\n");
        }
        text.extend(std::iter::repeat_n(' ', indent));
        text.push_str(close);
    }

    /// Writes what stands before the brackets, and hands them back.
    fn brackets(&self, text: &mut String) -> (&'static str, &'static str) {
        match self {
            Self::Plain(plain) => {
                text.push_str(plain);
                ("", "")
            }
            Self::Fields { title, .. } => {
                text.push_str(title);
                ("(", ")")
            }
            Self::Tuple(_) => ("(", ")"),
            Self::List(_) => ("[", "]"),
        }
    }

    fn entries(&self) -> Vec<(&'static str, &Self)> {
        match self {
            Self::Plain(_) => Vec::new(),
            Self::Fields { fields, .. } => fields.iter().map(|(key, value)| (*key, value)).collect(),
            Self::Tuple(values) | Self::List(values) => values.iter().map(|value| ("", value)).collect(),
        }
    }
}

fn put_key(key: &str, text: &mut String) {
    if !key.is_empty() {
        text.push_str(key);
        text.push_str(": ");
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::read::Noun;
    use crate::scene::*;
    use std::collections::{BTreeMap, BTreeSet};

    /// The fields that are written anywhere at a path; indices of lists are left out of it, titles of variants are not.
    fn gather(written: &Written, path: &str, found: &mut BTreeMap<String, BTreeSet<&'static str>>) {
        match written {
            Written::Plain(_) => {}
            Written::Tuple(values) | Written::List(values) => {
                values.iter().for_each(|value| gather(value, path, found))
            }
            Written::Fields { title, fields } => {
                let path = if title.is_empty() { path.to_owned() } else { format!("{path}/{title}") };
                for (key, value) in fields {
                    found.entry(path.clone()).or_default().insert(key);
                    gather(value, &format!("{path}/{key}"), found);
                }
            }
        }
    }

    #[test]
    fn the_rich_yard_writes_every_field_of_every_noun() {
        let rich = include_str!("../../tests/abuse/rich.ron");
        let yard = Yard::parse(rich, "rich.ron", &Catalogue::builtin()).unwrap().yard;
        let mut found = BTreeMap::new();
        gather(&yard.write(), "", &mut found);
        let all = [
            ("", &Yard::FIELDS[1..]), // All but the format, which is always at its default here.
            ("/evening", Evening::FIELDS),
            ("/evening/moon", Moon::FIELDS),
            ("/evening/when", When::FIELDS),
            ("/climate", Climate::FIELDS),
            ("/ground", Ground::FIELDS),
            ("/areas", Area::FIELDS),
            ("/houses", House::FIELDS),
            ("/houses/roof/Gable", Gable::FIELDS),
            ("/houses/roof/Hip", Hip::FIELDS),
            ("/houses/roof/Shed", SlopedRoof::FIELDS),
            ("/houses/openings/Window", Window::FIELDS),
            ("/houses/openings/Window/room", Room::FIELDS),
            ("/houses/openings/Window/room/lamp", RoomLamp::FIELDS),
            ("/houses/openings/Door", Door::FIELDS),
            ("/walls", Wall::FIELDS),
            ("/things/Block", Block::FIELDS),
            ("/things/Steps", Steps::FIELDS),
            ("/things/Fence", Fence::FIELDS),
            ("/things/Post", Post::FIELDS),
            ("/things/Pergola", Pergola::FIELDS),
            ("/things/Porch", Porch::FIELDS),
            ("/things/Bench", Bench::FIELDS),
            ("/plants/Hedge", Hedge::FIELDS),
            ("/plants/Tree", Tree::FIELDS),
            ("/lamps", Lamp::FIELDS),
            ("/spots", Spot::FIELDS),
            ("/meters", Meter::FIELDS),
            ("/cloths", Cloth::FIELDS),
            ("/films", RearFilm::FIELDS),
            ("/forms/Figure", Figure::FIELDS),
            ("/forms/Bag", Bag::FIELDS),
            ("/forms/Gourd", Gourd::FIELDS),
            ("/forms/Globe", Globe::FIELDS),
            ("/forms/Turned", Turned::FIELDS),
            ("/mirrors", FoldMirror::FIELDS),
            ("/stations", Station::FIELDS),
            ("/stations/content", Content::FIELDS),
            ("/stations/loads", Load::FIELDS),
            ("/stations/shelter", Shelter::FIELDS),
            ("/stations/shelter/fan", Fan::FIELDS),
            ("/stations/shelter/window", BoxWindow::FIELDS),
            ("/tapes", Tape::FIELDS),
            ("/supplies", Supply::FIELDS),
            ("/supplies/kind/Mains", Mains::FIELDS),
            ("/supplies/kind/TwelveVolt", TwelveVolt::FIELDS),
            ("/supplies/kind/Battery", Battery::FIELDS),
            ("/cables", Cable::FIELDS),
            ("/arrangements", Arrangement::FIELDS),
            ("/surfaces", Surface::FIELDS),
            ("/fabrics", Fabric::FIELDS),
            ("/projectors", ProjectorClass::FIELDS),
            ("/projectors/body", Body::FIELDS),
            ("/lamp_kinds", LampKind::FIELDS),
            ("/owned", Owned::FIELDS),
            ("/goods", Goods::FIELDS),
            ("/limits", Limit::FIELDS),
        ];
        for (path, fields) in all {
            let written = found.get(path).cloned().unwrap_or_default();
            assert_eq!(written, fields.iter().copied().collect(), "at “{path}”");
        }
    }

    #[test]
    fn what_fits_a_line_stands_on_one() {
        let list = |count| Written::List((0..count).map(|index: usize| Written::Plain(index.to_string())).collect());
        let fields = Written::fields(vec![("short", list(3)), ("long", list(60)), ("none", list(0))]);
        let text = fields.titled("X").into_file();
        assert!(text.starts_with("X(\n    short: [0, 1, 2],\n    long: [\n        0,\n"), "{text}");
        assert!(text.ends_with("        59,\n    ],\n    none: [],\n)\n"), "{text}");
    }
}
