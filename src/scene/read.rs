//! From the tree to values: every part is read before any is given up, so that all faults show at once.

mod basic;
mod calendar;
mod electric;
mod fields;
mod value;

use super::tree::Node;
use super::write::Whole;
use super::{Faults, Sort};
pub(super) use fields::{Fields, bare_variant, no_such_variant};

/// A value that can be read from a yard file.
pub(super) trait Read: Sized {
    /// What a person enters for it.
    const SORT: Sort = Sort::Group;

    /// Reads it; where that fails, the reason is among the faults.
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self>;

    /// What may stand for a value that could not be read, so that the rest of its noun is still looked at.
    /// It reaches nobody, because the fault does.
    fn stand_in() -> Option<Self> {
        None
    }
}

/// A noun as [`noun!`](super::noun) declares it.
pub(super) trait Noun: Sized {
    /// The name of its struct, which may stand before its brackets.
    const TITLE: &'static str;
    /// What a person calls it.
    const WORD: &'static str;
    /// The names of its fields.
    const FIELDS: &'static [&'static str];
    /// What each of them means.
    const MEANINGS: &'static [&'static str];
    /// What a person enters for each.
    const SORTS: &'static [Sort];

    /// Reads every field; `None` where one that must be had cannot be. [`Fields::is_sound`] tells whether all were good.
    fn read_fields(fields: &mut Fields<'_, '_>, faults: &mut Faults) -> Option<Self>;

    /// Every field with what stands in it, also where that is its default.
    fn write_whole(&self) -> Vec<Whole>;

    /// Reads a noun whose brackets follow `title`, the name of its struct or of the variant that holds it.
    fn read_titled(node: &Node<'_>, title: &str, faults: &mut Faults) -> Option<Self> {
        let mut fields = Fields::open(node, title, Self::WORD, Self::FIELDS, faults)?;
        let noun = Self::read_fields(&mut fields, faults);
        if fields.is_sound() { noun } else { None }
    }
}

/// Names for a message: `a, b or c`.
pub(super) fn listed(names: &[&str]) -> String {
    match names {
        [] => String::new(),
        [only] => (*only).to_owned(),
        [firsts @ .., last] => format!("{} or {last}", firsts.join(", ")),
    }
}

/// A word with its article: `an area`.
pub(super) fn a(word: &str) -> String {
    let article = if word.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    format!("{article} {word}")
}
