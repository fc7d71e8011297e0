//! The text of a yard as a tree in which every part knows its place.

use super::Place;

/// A value as it stands in the file.
#[derive(Clone, Debug)]
pub(super) struct Node<'t> {
    pub shape: Shape<'t>,
    pub place: Place,
}

/// What a value looks like.
#[derive(Clone, Debug)]
pub(super) enum Shape<'t> {
    /// `1.9`; not yet judged.
    Number(&'t str),
    /// `"lawn"`, its escapes resolved.
    Text(String),
    /// `'x'`.
    Char,
    /// `true`, `None`, `Front`.
    Word(&'t str),
    /// `(…)` or `Name(…)`: fields with names, or a tuple without.
    Group { title: Option<&'t str>, entries: Vec<Entry<'t>> },
    /// `[…]`.
    List(Vec<Node<'t>>),
    /// `{…}`; nothing in a yard is one.
    Map,
    /// Not to be made out; its fault is already reported.
    Broken,
}

/// One field of a group, or one item of a tuple.
#[derive(Clone, Debug)]
pub(super) struct Entry<'t> {
    pub key: Option<Key<'t>>,
    pub value: Node<'t>,
}

/// The name of a field.
#[derive(Clone, Copy, Debug)]
pub(super) struct Key<'t> {
    pub name: &'t str,
    pub place: Place,
}

impl<'t> Node<'t> {
    /// Where to point at: all of a small value, the head of one in brackets.
    pub fn head(&self) -> Place {
        let len = match &self.shape {
            Shape::Group { title, .. } => title.map_or(0, str::len) + 1,
            Shape::List(_) | Shape::Map => 1,
            _ => self.place.len,
        };
        Place { offset: self.place.offset, len: len.min(self.place.len) }
    }

    /// The word it is, or the one before its brackets.
    pub fn title(&self) -> Option<&'t str> {
        match self.shape {
            Shape::Word(word) => Some(word),
            Shape::Group { title, .. } => title,
            _ => None,
        }
    }

    /// What it is, for a message: `the number 5`.
    pub fn describe(&self) -> String {
        match &self.shape {
            Shape::Number(digits) => format!("the number {}", clipped(digits)),
            Shape::Text(text) => format!("the text “{}”", clipped(text)),
            Shape::Char => "a character in single quotes".to_owned(),
            Shape::Word(word) => format!("the word {}", clipped(word)),
            Shape::Group { title: Some(title), .. } => format!("{}(…)", clipped(title)),
            Shape::Group { title: None, entries } => match entries.first() {
                None => "an empty pair of brackets".to_owned(),
                Some(Entry { key: Some(_), .. }) => "a group of fields".to_owned(),
                Some(Entry { key: None, .. }) if entries.len() == 1 => "one value in brackets".to_owned(),
                Some(Entry { key: None, .. }) => format!("a group of {} values", entries.len()),
            },
            Shape::List(items) => format!("a list of {}", items.len()),
            Shape::Map => "a group in curly brackets".to_owned(),
            Shape::Broken => "something unreadable".to_owned(),
        }
    }

    /// The value inside `Some(…)`, or the value itself.
    pub fn inside_some(&self) -> &Self {
        match &self.shape {
            Shape::Group { title: Some("Some"), entries } => match entries.as_slice() {
                [Entry { key: None, value }] => value,
                _ => self,
            },
            _ => self,
        }
    }

    /// The place of the part at a path such as `stations[2].aim`, or of the nearest part around it that is written.
    pub fn find(&self, path: &str) -> Place {
        let mut node = self;
        let mut place = node.head();
        for step in path.split(['.', '[']).filter(|step| !step.is_empty()) {
            let Some(next) = node.inside_some().step(step) else { return place };
            node = next;
            place = node.head();
        }
        place
    }

    fn step(&self, step: &str) -> Option<&Node<'t>> {
        match (&self.shape, step.strip_suffix(']')) {
            (Shape::List(items), Some(index)) => items.get(index.parse::<usize>().ok()?),
            (Shape::Group { entries, .. }, Some(index)) => Some(&entries.get(index.parse::<usize>().ok()?)?.value),
            (Shape::Group { entries, .. }, None) => {
                Some(&entries.iter().find(|entry| entry.key.is_some_and(|key| key.name == step))?.value)
            }
            _ => None,
        }
    }

    /// Hands over every `name: "…"` anywhere inside.
    pub fn each_name<'n>(&'n self, found: &mut impl FnMut(&'n str)) {
        match &self.shape {
            Shape::List(items) => items.iter().for_each(|item| item.each_name(found)),
            Shape::Group { entries, .. } => {
                for entry in entries {
                    match (&entry.value.shape, entry.key) {
                        (Shape::Text(name), Some(Key { name: "name", .. })) => found(name),
                        _ => entry.value.each_name(found),
                    }
                }
            }
            _ => {}
        }
    }
}

/// A text short enough for a message, with nothing in it that would break a line.
pub(super) fn clipped(text: &str) -> String {
    const MOST: usize = 60;
    let mut short: String =
        text.chars().take(MOST).map(|c| if c.is_control() { char::REPLACEMENT_CHARACTER } else { c }).collect();
    if text.chars().nth(MOST).is_some() {
        short.push('…');
    }
    short
}
