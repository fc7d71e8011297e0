//! The reader of the notation (RON): text to a tree, with places, going on after a slip wherever its meaning is plain.

mod blank;
mod number;
mod quoted;

use super::tree::{Entry, Key, Node, Shape, clipped};
use super::{Fault, Faults, Place};

/// Brackets inside brackets beyond this are refused; a yard needs eight.
const DEEPEST: usize = 64;

/// The file cannot be read on from here; the fault is already reported.
struct Stop;
type Parsed<T> = Result<T, Stop>;

/// A text as read.
pub(super) struct Parse<'t> {
    /// The tree, if the text could be read to its end.
    pub root: Option<Node<'t>>,
    /// Whether a comment stands anywhere in what was read.
    pub comments: bool,
}

/// Reads a whole text.
pub(super) fn parse<'t>(text: &'t str, faults: &mut Faults) -> Parse<'t> {
    let mut parser = Parser { text, at: 0, depth: 0, comments: false, faults };
    let root = parser.document().ok();
    Parse { root, comments: parser.comments }
}

struct Parser<'t, 'f> {
    text: &'t str,
    at: usize,
    depth: usize,
    comments: bool,
    faults: &'f mut Faults,
}

impl<'t> Parser<'t, '_> {
    fn document(&mut self) -> Parsed<Node<'t>> {
        self.take("\u{feff}");
        self.attributes()?;
        let root = self.value()?;
        self.blank()?;
        match self.peek() {
            None => Ok(root),
            Some(':') => {
                let fault = Fault::new("the file begins with a field")
                    .remedy("put everything into one pair of round brackets: ( … )");
                self.stop(fault, root.place)
            }
            Some(_) => {
                let fault = Fault::new("something stands after the closing bracket")
                    .remedy("one pair of round brackets holds the whole file");
                self.stop(fault, self.here())
            }
        }
    }

    /// Skips `#![enable(…)]`: what it could enable is enabled here.
    fn attributes(&mut self) -> Parsed<()> {
        loop {
            self.blank()?;
            if !self.rest().starts_with("#!") {
                return Ok(());
            }
            match self.rest().find(']') {
                Some(end) => self.at += end + 1,
                None => {
                    return self
                        .stop(Fault::new("this “#!” line is never closed").remedy("close it with “]”"), self.here());
                }
            }
        }
    }

    fn value(&mut self) -> Parsed<Node<'t>> {
        self.blank()?;
        let start = self.at;
        let Some(next) = self.peek() else {
            return self.stop(Fault::new("the file ends where a value is wanted"), self.here());
        };
        let shape = match next {
            '(' => self.group(None)?,
            '[' => self.list()?,
            '{' => self.map()?,
            '"' => Shape::Text(self.text_in_quotes()?),
            '\'' => self.character()?,
            'r' if self.starts_raw_text() => Shape::Text(self.raw_text()?),
            '-' | '+' | '.' | '0'..='9' => self.number(),
            _ if is_word_start(next) => self.word_or_group()?,
            _ => self.unreadable(next)?,
        };
        Ok(Node { shape, place: self.since(start) })
    }

    fn word_or_group(&mut self) -> Parsed<Shape<'t>> {
        let word = self.word();
        let after_word = self.at;
        self.blank()?;
        if self.peek() == Some('(') {
            return self.group(Some(word));
        }
        self.at = after_word;
        Ok(Shape::Word(word))
    }

    fn group(&mut self, title: Option<&'t str>) -> Parsed<Shape<'t>> {
        let opened = self.open()?;
        let mut entries = Vec::new();
        while !self.closes(')', opened)? {
            let key = self.key()?;
            let value = self.value()?;
            let entry = match (key, &value.shape) {
                (None, Shape::Text(_)) => self.quoted_key(value)?,
                (key, _) => Entry { key, value },
            };
            self.separator(&entry.value)?;
            entries.push(entry);
        }
        Ok(Shape::Group { title, entries })
    }

    fn list(&mut self) -> Parsed<Shape<'t>> {
        let opened = self.open()?;
        let mut items = Vec::new();
        while !self.closes(']', opened)? {
            let item = self.value()?;
            self.separator(&item)?;
            items.push(item);
        }
        Ok(Shape::List(items))
    }

    /// Reads over a map, so that what follows it is still looked at; no part of a yard is one.
    fn map(&mut self) -> Parsed<Shape<'t>> {
        let opened = self.open()?;
        while !self.closes('}', opened)? {
            let key = self.value()?;
            self.blank()?;
            let last = if self.take(":") { self.value()? } else { key };
            self.separator(&last)?;
        }
        Ok(Shape::Map)
    }

    /// `name:` at the head of an entry, if it has one.
    fn key(&mut self) -> Parsed<Option<Key<'t>>> {
        self.blank()?;
        let start = self.at;
        if !self.peek().is_some_and(is_word_start) || self.starts_raw_text() {
            return Ok(None);
        }
        let name = self.word();
        let place = self.since(start);
        self.blank()?;
        if self.take(":") {
            return Ok(Some(Key { name, place }));
        }
        if self.peek() == Some('=') {
            self.slip(Fault::new("“=” stands after a field's name").remedy("write “:”"), self.here());
            self.take("=");
            return Ok(Some(Key { name, place }));
        }
        self.at = start;
        Ok(None)
    }

    /// A text that turns out to be a field's name in quotes is taken as the name.
    fn quoted_key(&mut self, text: Node<'t>) -> Parsed<Entry<'t>> {
        self.blank()?;
        if !self.take(":") {
            return Ok(Entry { key: None, value: text });
        }
        self.slip(Fault::new("a field's name stands in quotes").remedy("write it without"), text.place);
        let inner = self.text.get(text.place.offset + 1..text.place.offset + text.place.len - 1).unwrap_or_default();
        Ok(Entry { key: Some(Key { name: inner, place: text.place }), value: self.value()? })
    }

    /// Steps into a bracket and hands back its place.
    fn open(&mut self) -> Parsed<Place> {
        let place = self.here();
        self.depth += 1;
        if self.depth > DEEPEST {
            let fault = Fault::new(format!("brackets stand more than {DEEPEST} deep in each other"))
                .remedy("a yard needs eight");
            return self.stop(fault, place);
        }
        self.at += 1;
        Ok(place)
    }

    /// Steps over the bracket that ends what was opened, if it stands here.
    fn closes(&mut self, bracket: char, opened: Place) -> Parsed<bool> {
        self.blank()?;
        let opening = &self.text[opened.offset..opened.offset + opened.len];
        match self.peek() {
            Some(c) if c == bracket => {
                self.at += 1;
                self.depth -= 1;
                Ok(true)
            }
            Some(c @ (')' | ']' | '}')) => {
                let line = self.faults.line_of(opened);
                let fault = Fault::new(format!("“{c}” stands where the “{opening}” of line {line} is still open"))
                    .remedy(format!("close it with “{bracket}” first"));
                self.stop(fault, self.here())
            }
            None => self.stop(
                Fault::new(format!("this “{opening}” is never closed")).remedy(format!("close it with “{bracket}”")),
                opened,
            ),
            Some(_) => Ok(false),
        }
    }

    /// Steps over the comma after a value; where it is forgotten, says so and goes on.
    fn separator(&mut self, after: &Node<'t>) -> Parsed<()> {
        let end = self.at;
        self.blank()?;
        match self.peek() {
            None | Some(')' | ']' | '}') => Ok(()),
            Some(',') => {
                self.at += 1;
                Ok(())
            }
            Some(';') => {
                self.slip(Fault::new("“;” stands between two values").remedy("write “,”"), self.here());
                self.at += 1;
                Ok(())
            }
            Some(_) if matches!(after.shape, Shape::Text(_)) && self.spans_lines(after.place) => {
                let fault = Fault::new("this text goes on over the end of its line, and no comma follows it")
                    .remedy("its closing quotation mark seems to be missing");
                self.stop(fault, Place { offset: after.place.offset, len: 1 })
            }
            Some(_) => {
                if !matches!(after.shape, Shape::Broken) {
                    let fault =
                        Fault::new("a comma is missing after this value").remedy("values and fields are parted by “,”");
                    self.slip(fault, Place { offset: end.saturating_sub(1), len: 1 });
                }
                Ok(())
            }
        }
    }

    /// Reports what begins no value and skips to where the next one may begin.
    fn unreadable(&mut self, next: char) -> Parsed<Shape<'t>> {
        let place = self.here();
        let fault = match next {
            ',' => Fault::new("a value is missing before this comma"),
            ')' | ']' | '}' => Fault::new(format!("a value is missing before this “{next}”")),
            '“' | '”' | '„' | '«' => {
                Fault::new(format!("“{next}” does not begin a text")).remedy("write straight quotation marks: \"…\"")
            }
            '/' => Fault::new("a single “/” stands here").remedy("a comment begins with “//”"),
            _ => Fault::new(format!("the character “{}” stands where a value is wanted", clipped(&next.to_string()))),
        };
        self.slip(fault, place);
        // Only what parts values is left for the one who asked; anything else is stepped over, so that reading goes on.
        let junk = self.rest().find([',', ')', ']', '}', '\n']).unwrap_or(self.rest().len());
        self.at += junk;
        Ok(Shape::Broken)
    }

    fn word(&mut self) -> &'t str {
        let rest = self.rest();
        let end = rest.find(|c: char| !is_word_part(c)).unwrap_or(rest.len());
        self.at += end;
        &rest[..end]
    }

    fn rest(&self) -> &'t str {
        &self.text[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn take(&mut self, what: &str) -> bool {
        let there = self.rest().starts_with(what);
        if there {
            self.at += what.len();
        }
        there
    }

    fn here(&self) -> Place {
        Place { offset: self.at, len: self.peek().map_or(0, char::len_utf8) }
    }

    fn since(&self, start: usize) -> Place {
        Place { offset: start, len: self.at - start }
    }

    fn spans_lines(&self, place: Place) -> bool {
        self.text[place.offset..place.offset + place.len].contains('\n')
    }

    /// Reports a fault that reading goes on after.
    fn slip(&mut self, fault: Fault, place: Place) {
        self.faults.push(fault.at(place));
    }

    /// Reports a fault that reading cannot go on after.
    fn stop<T>(&mut self, fault: Fault, place: Place) -> Parsed<T> {
        self.slip(fault, place);
        Err(Stop)
    }
}

fn is_word_start(c: char) -> bool {
    c.is_alphabetic() || c == '_'
}

fn is_word_part(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}
