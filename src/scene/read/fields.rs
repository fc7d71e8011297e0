//! The fields of one noun as they stand in the file.

use super::{Read, a, listed};
use crate::scene::tree::{Entry, Node, Shape};
use crate::scene::{Fault, Faults};

/// The fields of a group, taken one by one by its reader.
pub(in crate::scene) struct Fields<'n, 't> {
    node: &'n Node<'t>,
    word: &'static str,
    /// Beside each known name, what is written for it.
    written: Vec<(&'static str, Option<&'n Node<'t>>)>,
    /// Fields that are missing because what was meant for them is reported already.
    explained: Explained,
    sound: bool,
}

/// Which missing fields need no second report.
enum Explained {
    /// These, each written with a slip of the pen.
    Some(Vec<String>),
    /// All: values stand there without names.
    All,
}

impl<'n, 't> Fields<'n, 't> {
    /// Opens the brackets of a noun; reports what in them has no name, an unknown one, or one that was had before.
    pub fn open(
        node: &'n Node<'t>,
        title: &str,
        word: &'static str,
        names: &'static [&'static str],
        faults: &mut Faults,
    ) -> Option<Self> {
        let node = node.inside_some();
        let written = names.iter().map(|name| (*name, None)).collect();
        let mut fields = Self { node, word, written, explained: Explained::Some(Vec::new()), sound: true };
        match &node.shape {
            Shape::Group { title: Some(other), .. } if *other != title => {
                let what = format!("{} stands where {} is wanted", node.describe(), a(word));
                faults.push(Fault::new(what).remedy(format!("write {title}(…) or only ( … )")).at(node.head()));
                None
            }
            Shape::Group { entries, .. } if is_doubly_bracketed(entries) => {
                let what = format!("the fields of {} stand in two pairs of brackets", a(word));
                faults.push(Fault::new(what).remedy("write one pair").at(entries[0].value.head()));
                None
            }
            Shape::Group { entries, .. } => {
                fields.sort_in(entries, faults);
                Some(fields)
            }
            Shape::Word(only) if *only == title => Some(fields),
            Shape::Broken => None,
            Shape::Map => {
                let what = format!("the fields of {} stand in curly brackets", a(word));
                faults.push(Fault::new(what).remedy("write round ones: ( … )").at(node.head()));
                None
            }
            _ => {
                let what = format!("{} stands where {} is wanted", node.describe(), a(word));
                faults.push(Fault::new(what).remedy("a group of fields: (name: value, …)").at(node.head()));
                None
            }
        }
    }

    /// Reads a field that must be written.
    pub fn required<T: Read>(&mut self, name: &'static str, faults: &mut Faults) -> Option<T> {
        let Some(node) = self.find(name) else {
            if !self.is_explained(name) {
                let what = format!("this {} has no {name}", self.word);
                faults.push(Fault::new(what).remedy(format!("add the field {name}")).at(self.node.head()));
            }
            self.sound = false;
            return T::stand_in();
        };
        self.read(name, node, faults).or_else(T::stand_in)
    }

    /// Reads a field that may be left out.
    pub fn optional<T: Read>(
        &mut self,
        name: &'static str,
        default: impl FnOnce() -> T,
        faults: &mut Faults,
    ) -> Option<T> {
        let Some(node) = self.find(name) else { return Some(default()) };
        Some(self.read(name, node, faults).unwrap_or_else(default))
    }

    /// Whether nothing was wrong with any field so far.
    pub fn is_sound(&self) -> bool {
        self.sound
    }

    fn find(&self, name: &str) -> Option<&'n Node<'t>> {
        self.written.iter().find(|(known, _)| *known == name).and_then(|(_, node)| *node)
    }

    fn is_explained(&self, name: &str) -> bool {
        match &self.explained {
            Explained::All => true,
            Explained::Some(names) => names.iter().any(|explained| explained == name),
        }
    }

    fn read<T: Read>(&mut self, name: &str, node: &Node<'_>, faults: &mut Faults) -> Option<T> {
        let value = faults.in_field(name, |faults| T::read(node, faults));
        self.sound &= value.is_some();
        value
    }

    /// Puts what is written beside the names that are known.
    fn sort_in(&mut self, entries: &'n [Entry<'t>], faults: &mut Faults) {
        for entry in entries {
            if faults.is_full() {
                self.sound = false;
                return;
            }
            let Some(key) = entry.key else {
                // One report is enough: who leaves out one name leaves out all.
                if !matches!(self.explained, Explained::All) {
                    let what = format!("{} has no field name before it", entry.value.describe());
                    self.reject(Fault::new(what).remedy("write name: value").at(entry.value.head()), faults);
                    self.explained = Explained::All;
                }
                continue;
            };
            match self.written.iter_mut().find(|(known, _)| *known == key.name) {
                Some((_, place @ None)) => *place = Some(&entry.value),
                Some((_, Some(first))) => {
                    let what = format!("the field {} is written twice", key.name);
                    let remedy = format!("it stands in line {} already", faults.line_of(first.place));
                    self.reject(Fault::new(what).remedy(remedy).at(key.place), faults);
                }
                None => {
                    let names: Vec<&str> = self.written.iter().map(|(known, _)| *known).collect();
                    let what = format!("{} has no field “{}”", a(self.word), crate::scene::tree::clipped(key.name));
                    let fault = Fault::new(what).remedy(format!("its fields: {}", names.join(", ")));
                    let fault = fault.nearest_of(key.name, names).at(key.place);
                    if let Explained::Some(explained) = &mut self.explained {
                        explained.extend(fault.nearest.clone());
                    }
                    self.reject(fault, faults);
                }
            }
        }
    }

    fn reject(&mut self, fault: Fault, faults: &mut Faults) {
        self.sound = false;
        faults.push(fault);
    }
}

/// `Window((name: …))`: the brackets of the variant are those of its noun.
fn is_doubly_bracketed(entries: &[Entry<'_>]) -> bool {
    matches!(entries, [Entry { key: None, value: Node { shape: Shape::Group { .. }, .. } }])
}

/// A variant with nothing in it must have no brackets.
pub(in crate::scene) fn bare_variant(node: &Node<'_>, faults: &mut Faults) -> Option<()> {
    if matches!(node.shape, Shape::Word(_)) {
        return Some(());
    }
    let what = format!("{} takes nothing in brackets", node.title().unwrap_or_default());
    faults.push(Fault::new(what).remedy("write the word alone").at(node.head()));
    None
}

/// Reports that what stands here is none of the variants of an enum.
pub(in crate::scene) fn no_such_variant<T>(
    node: &Node<'_>,
    word: &str,
    variants: &[&str],
    faults: &mut Faults,
) -> Option<T> {
    let remedy = listed(variants);
    let fault = match (&node.shape, node.title()) {
        (Shape::Broken, _) => return None,
        (_, Some(name)) => Fault::new(format!("{} is no {word}", node.describe()))
            .remedy(remedy)
            .nearest_of(name, variants.iter().copied()),
        (Shape::Text(name), _) if variants.contains(&name.as_str()) => {
            Fault::new(format!("{} stands in quotes", a(word))).remedy(format!("write {name} without"))
        }
        _ => Fault::new(format!("{} stands where {} is wanted", node.describe(), a(word))).remedy(remedy),
    };
    faults.push(fault.at(node.head()));
    None
}
