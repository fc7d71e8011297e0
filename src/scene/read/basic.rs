//! Readers of plain Rust types.

use super::Read;
use crate::scene::tree::{Entry, Node, Shape, clipped};
use crate::scene::{Fault, Faults, Sort};

/// Reports that what stands here is not what is wanted.
pub(super) fn wanted<T>(what: &str, remedy: &str, node: &Node<'_>, faults: &mut Faults) -> Option<T> {
    if !matches!(node.shape, Shape::Broken) {
        let fault = Fault::new(format!("{} stands where {what} is wanted", node.describe())).remedy(remedy);
        faults.push(fault.at(node.head()));
    }
    None
}

/// Reports that a number is not one that may stand here.
pub(super) fn out_of_range<T>(allowed: &str, node: &Node<'_>, faults: &mut Faults) -> Option<T> {
    let Shape::Number(digits) = node.shape else { return wanted("a number", allowed, node, faults) };
    faults.push(Fault::new(format!("{} is out of range", clipped(digits))).remedy(allowed).at(node.place));
    None
}

/// A number from `least` to `most`.
pub(super) fn number(least: f64, most: f64, allowed: &str, node: &Node<'_>, faults: &mut Faults) -> Option<f64> {
    let value = f64::read(node, faults)?;
    if (least..=most).contains(&value) { Some(value) } else { out_of_range(allowed, node, faults) }
}

impl Read for f64 {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let digits = match node.shape {
            Shape::Number(digits) => digits,
            Shape::Word(word @ ("NaN" | "inf")) => word,
            _ => return wanted("a number", "such as 0.5", node, faults),
        };
        match digits.replace('_', "").parse::<f64>() {
            Ok(value) if value.is_finite() => Some(value),
            Ok(_) => {
                let what = format!("{} is no number that can be computed with", clipped(digits));
                faults.push(Fault::new(what).remedy("write an ordinary number").at(node.place));
                None
            }
            Err(_) => {
                faults.push(
                    Fault::new(format!("{} is not a number", clipped(digits))).remedy("such as 0.5").at(node.place),
                );
                None
            }
        }
    }
}

impl Read for u32 {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let value = f64::read(node, faults)?;
        if value.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&value) {
            return Some(value as Self);
        }
        out_of_range("a whole number from 0 on", node, faults)
    }
}

impl Read for bool {
    const SORT: Sort = Sort::Switch;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Word("true") => Some(true),
            Shape::Word("false") => Some(false),
            _ => wanted("true or false", "", node, faults),
        }
    }
}

impl Read for String {
    const SORT: Sort = Sort::Text;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match &node.shape {
            Shape::Text(text) => Some(text.clone()),
            Shape::Word(word) => wanted("a text in quotes", &format!("write \"{}\"", clipped(word)), node, faults),
            _ => wanted("a text in quotes", "such as \"lawn\"", node, faults),
        }
    }
}

impl<T: Read> Read for Option<T> {
    const SORT: Sort = T::SORT;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Word("None") => Some(None),
            _ => T::read(node.inside_some(), faults).map(Some),
        }
    }
}

/// Keeps the good items, so that they can be looked at further; a bad one has its fault.
impl<T: Read> Read for Vec<T> {
    const SORT: Sort = T::SORT.listed();

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let Shape::List(items) = &node.shape else {
            return wanted("a list", "write square brackets: [ … ]", node, faults);
        };
        let mut read = Vec::with_capacity(items.len());
        for (index, item) in items.iter().enumerate() {
            match faults.in_item(index, |faults| T::read(item, faults)) {
                Some(value) => read.push(value),
                None => faults.leave_out_item(index),
            }
        }
        Some(read)
    }
}

impl<A: Read, B: Read> Read for (A, B) {
    const SORT: Sort = A::SORT.twice();

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let [a, b] = tuple(node, "a pair", "(a, b)", faults)?;
        let a = faults.in_item(0, |faults| A::read(a, faults));
        let b = faults.in_item(1, |faults| B::read(b, faults));
        Some((a?, b?))
    }
}

/// The values of a tuple of `N`.
pub(super) fn tuple<'n, 't, const N: usize>(
    node: &'n Node<'t>,
    what: &str,
    form: &str,
    faults: &mut Faults,
) -> Option<[&'n Node<'t>; N]> {
    let remedy = format!("write {form}");
    let Shape::Group { title: None, entries } = &node.shape else { return wanted(what, &remedy, node, faults) };
    let bare = |entry: &'n Entry<'t>| if entry.key.is_none() { Some(&entry.value) } else { None };
    match entries.iter().map(bare).collect::<Option<Vec<_>>>().map(<[_; N]>::try_from) {
        Some(Ok(values)) => Some(values),
        _ => wanted(what, &remedy, node, faults),
    }
}
