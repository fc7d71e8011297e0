//! What is wrong in a yard file: collected, never thrown, so that a person sees every fault at once.

use super::Place;
use super::tree::Node;
use crate::units::clipped;
use miette::NamedSource;
use std::sync::Arc;

/// More faults than this tell a person nothing new; the rest are counted.
const MOST: usize = 200;

/// Characters of what a fault says that are kept, and of its remedy, which may list what there is.
const LONGEST: usize = 400;
const LONGEST_REMEDY: usize = 1600;

/// Whether a yard can be used in spite of a fault.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// It cannot.
    #[default]
    Error,
    /// It can, but not as its owner meant.
    Warning,
}

/// One thing that is wrong, with its remedy.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fault {
    /// What is wrong, with the value that stands there.
    pub what: String,
    /// What is allowed or would help; empty if `what` says it.
    pub remedy: String,
    /// The known name most like the one that is wrong.
    pub nearest: Option<String>,
    /// Where it stands in the file.
    pub place: Place,
    /// Whether the yard can be used all the same.
    pub severity: Severity,
    /// Where it stands in the document: `stations[2].aim`.
    pub path: String,
}

impl Fault {
    /// A fault that makes the yard unusable, with no place yet.
    pub fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), ..Self::default() }
    }

    /// A fault that the yard can be used in spite of.
    pub fn warning(what: impl Into<String>) -> Self {
        Self { severity: Severity::Warning, ..Self::new(what) }
    }

    /// With what is allowed or would help.
    pub fn remedy(self, remedy: impl Into<String>) -> Self {
        Self { remedy: remedy.into(), ..self }
    }

    /// With the known name most like `wrong`, if any is like it at all.
    pub fn nearest_of<'a>(self, wrong: &str, known: impl IntoIterator<Item = &'a str>) -> Self {
        Self { nearest: nearest(wrong, known), ..self }
    }

    /// With its place in the file.
    pub fn at(self, place: Place) -> Self {
        Self { place, ..self }
    }
}

/// The known name most like a wrong one: a slip of the pen, or else the one that shares most of its words.
fn nearest<'a>(wrong: &str, known: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let known: Vec<&str> = known.into_iter().collect();
    let near = slip_of(wrong, &known).or_else(|| sharing_words(wrong, &known))?;
    Some(near.to_owned())
}

/// The known name that the wrong one is a slip of the pen from. A name begun right but not ended so is near too: `sky` for
/// `sky_lx`.
fn slip_of<'a>(wrong: &str, known: &[&'a str]) -> Option<&'a str> {
    let wrong = wrong.to_lowercase();
    let allowed = (wrong.chars().count() / 3).max(1);
    let distance = |name: &&str| {
        let name = name.to_lowercase();
        let begun = wrong.chars().count() >= 3 && (name.starts_with(&wrong) || wrong.starts_with(&name));
        let distance = strsim::osa_distance(&wrong, &name);
        if begun { distance.min(1) } else { distance }
    };
    let (near, name) = known.iter().map(|name| (distance(name), *name)).min_by_key(|(distance, _)| *distance)?;
    (near <= allowed).then_some(name)
}

/// The known name that most words of the wrong one are words of; of several the one with fewest other words, and of those
/// the first: `porch lamp` for `porch light`. Shorter words than three letters stand in names by chance.
fn sharing_words<'a>(wrong: &str, known: &[&'a str]) -> Option<&'a str> {
    let words = |text: &str| -> Vec<String> {
        let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| word.chars().count() >= 3);
        words.map(str::to_lowercase).collect()
    };
    let wanted = words(wrong);
    let counted = known.iter().map(|name| {
        let words = words(name);
        let shared = words.iter().filter(|word| wanted.contains(word)).count();
        (std::cmp::Reverse(shared), words.len(), *name)
    });
    let best = counted.min_by_key(|(shared, all, _)| (*shared, *all))?;
    (best.0.0 > 0).then_some(best.2)
}

/// Every fault of one file, in the order of their places.
#[derive(Clone, Debug)]
pub struct Faults {
    pub(super) source: Arc<NamedSource<String>>,
    pub(super) list: Vec<Fault>,
    pub(super) left_out: usize,
    trail: String,
    /// Items of lists that could not be read and were left out: the path of the list, and the index.
    left_out_items: Vec<(String, usize)>,
}

impl Faults {
    /// No fault yet, in a file of this name and text.
    pub(super) fn none(file_name: &str, text: &str) -> Self {
        let source = Arc::new(NamedSource::new(file_name, text.to_owned()));
        Self { source, list: Vec::new(), left_out: 0, trail: String::new(), left_out_items: Vec::new() }
    }

    /// The name of the file.
    pub fn file_name(&self) -> &str {
        self.source.name()
    }

    /// Each fault.
    pub fn iter(&self) -> std::slice::Iter<'_, Fault> {
        self.list.iter()
    }

    /// How many there are, less those beyond the most that are kept.
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// Whether nothing is wrong.
    pub fn is_empty(&self) -> bool {
        self.list.is_empty()
    }

    /// Whether any fault makes the yard unusable.
    pub fn has_errors(&self) -> bool {
        self.list.iter().any(|fault| fault.severity == Severity::Error)
    }

    /// Whether further faults would only be counted.
    pub(super) fn is_full(&self) -> bool {
        self.list.len() >= MOST
    }

    /// Adds a fault of the part of the document that is being looked at.
    pub(super) fn push(&mut self, mut fault: Fault) {
        if self.is_full() {
            self.left_out += 1;
            return;
        }
        if fault.path.is_empty() {
            fault.path.clone_from(&self.trail);
        }
        // Names and texts of a file stand in them, whatever these hold.
        fault.what = clipped(&fault.what, LONGEST);
        fault.remedy = clipped(&fault.remedy, LONGEST_REMEDY);
        fault.nearest = fault.nearest.map(|name| clipped(&name, LONGEST));
        self.list.push(fault);
    }

    /// Adds a fault of one field of the part that is being looked at.
    pub(super) fn push_in(&mut self, field: &str, fault: Fault) {
        self.in_field(field, |faults| faults.push(fault));
    }

    /// Looks at a field.
    pub(super) fn in_field<R>(&mut self, field: &str, look: impl FnOnce(&mut Self) -> R) -> R {
        let before = self.trail.len();
        if before > 0 {
            self.trail.push('.');
        }
        self.trail.push_str(field);
        let result = look(self);
        self.trail.truncate(before);
        result
    }

    /// Looks at an item of a list or tuple.
    pub(super) fn in_item<R>(&mut self, index: usize, look: impl FnOnce(&mut Self) -> R) -> R {
        let before = self.trail.len();
        self.trail.push_str(&format!("[{index}]"));
        let result = look(self);
        self.trail.truncate(before);
        result
    }

    /// Looks at every item of a field that holds a list.
    pub(super) fn in_each<T>(&mut self, field: &str, items: &[T], mut look: impl FnMut(&mut Self, &T)) {
        self.in_field(field, |faults| {
            for (index, item) in items.iter().enumerate() {
                faults.in_item(index, |faults| look(faults, item));
            }
        });
    }

    /// Notes that an item of the list that is being looked at was left out.
    pub(super) fn leave_out_item(&mut self, index: usize) {
        if !self.is_full() {
            self.left_out_items.push((self.trail.clone(), index));
        }
    }

    /// Gives each fault that has only a path its place in the tree that the document was read from.
    pub(super) fn locate(&mut self, root: &Node<'_>) {
        let left_out = std::mem::take(&mut self.left_out_items);
        for fault in self.list.iter_mut().filter(|fault| !fault.place.is_known()) {
            fault.path = path_in_file(&fault.path, &left_out);
            fault.place = root.find(&fault.path);
        }
    }

    /// Sorts by place, so that faults come in the order that the file is read in.
    pub(super) fn sort(&mut self) {
        self.list.sort_by_key(|fault| (fault.place.offset, fault.severity));
    }
}

/// The path of a part in the file, from its path in a document that some items were left out of.
fn path_in_file(path: &str, left_out: &[(String, usize)]) -> String {
    let mut real = String::new();
    for step in path.split_inclusive(']') {
        let Some((field, Ok(mut index))) = step
            .strip_suffix(']')
            .and_then(|step| step.rsplit_once('['))
            .map(|(field, index)| (field, index.parse::<usize>()))
        else {
            real.push_str(step);
            continue;
        };
        real.push_str(field);
        // The indices of one list stand in rising order, so that each left out before shifts the next.
        for (_, out) in left_out.iter().filter(|(list, _)| *list == real) {
            index += usize::from(*out <= index);
        }
        real.push_str(&format!("[{index}]"));
    }
    real
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_slip_of_the_pen_is_near() {
        let known = ["lawn", "asphalt", "gravel"];
        assert_eq!(nearest("lwan", known).as_deref(), Some("lawn"));
        assert_eq!(nearest("Asfalt", known).as_deref(), Some("asphalt"));
        assert_eq!(nearest("marble", known), None);
        assert_eq!(nearest("sky", ["sky_lx", "moon"]).as_deref(), Some("sky_lx"));
        assert_eq!(nearest("", known), None);
        assert_eq!(nearest("lawn", []), None);
    }

    #[test]
    fn a_whole_word_in_common_is_near_too() {
        let known = ["white tulle", "black tulle", "porch lamp", "street lamp", "film, grey"];
        for (wrong, near) in [
            ("tulle", Some("white tulle")),
            ("Tulle, black", Some("black tulle")),
            ("porch light", Some("porch lamp")),
            ("grey rear film", Some("film, grey")),
            ("tul", None),
            ("sun", None),
        ] {
            assert_eq!(nearest(wrong, known).as_deref(), near, "{wrong}");
        }
    }

    #[test]
    fn the_trail_names_the_part_and_is_left_again() {
        let mut faults = Faults::none("a", "");
        faults.in_each("stations", &[1, 2], |faults, n| {
            if *n == 2 {
                faults.push_in("aim", Fault::new("x"));
            }
        });
        faults.push(Fault::new("y"));
        let paths: Vec<&str> = faults.iter().map(|fault| fault.path.as_str()).collect();
        assert_eq!(paths, ["stations[1].aim", ""]);
    }

    #[test]
    fn a_path_counts_the_items_that_were_left_out() {
        let left_out = [("houses".to_owned(), 0), ("houses".to_owned(), 2), ("houses[1].openings".to_owned(), 1)];
        for (path, real) in [
            ("houses[0].openings[0].left", "houses[1].openings[0].left"),
            ("houses[0].openings[1].left", "houses[1].openings[2].left"),
            ("houses[1]", "houses[3]"),
            ("films[0].window", "films[0].window"),
            ("evening.sky_lx", "evening.sky_lx"),
        ] {
            assert_eq!(path_in_file(path, &left_out), real);
        }
    }

    #[test]
    fn faults_beyond_the_most_are_counted() {
        let mut faults = Faults::none("a", "");
        for _ in 0..MOST + 3 {
            faults.push(Fault::new("x"));
        }
        assert_eq!((faults.len(), faults.left_out), (MOST, 3));
    }
}
