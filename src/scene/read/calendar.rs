//! Readers of days, clocks and time zones.

use super::Read;
use super::basic::wanted;
use crate::scene::tree::{Node, Shape};
use crate::scene::{Clock, Date, Fault, Faults, Sort, Zone};

/// A value that stands in quotes and has a notation of its own.
pub(super) fn quoted<T>(
    what: &str,
    form: &str,
    parse: impl FnOnce(&str) -> Result<T, Fault>,
    node: &Node<'_>,
    faults: &mut Faults,
) -> Option<T> {
    let Shape::Text(text) = &node.shape else { return wanted(what, form, node, faults) };
    parse(text).map_err(|fault| faults.push(fault.at(node.place))).ok()
}

impl Read for Date {
    const SORT: Sort = Sort::Date;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        quoted("a date in quotes", "such as \"2026-12-21\"", Self::parse, node, faults)
    }
}

impl Read for Clock {
    const SORT: Sort = Sort::Clock;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        quoted("a clock time in quotes", "such as \"18:30\"", Self::parse, node, faults)
    }
}

impl Read for Zone {
    const SORT: Sort = Sort::Name;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        quoted("a time zone in quotes", "such as \"Europe/Berlin\" or \"+01:00\"", Self::parse, node, faults)
    }
}
