//! Readers of what is printed on cables and housings.

use super::Read;
use super::calendar::quoted;
use crate::scene::tree::Node;
use crate::scene::{Faults, Gauge, IpCode, Sort};

impl Read for Gauge {
    const SORT: Sort = Sort::Text;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        quoted("the size of a conductor in quotes", Self::FORM, Self::parse, node, faults)
    }
}

impl Read for IpCode {
    const SORT: Sort = Sort::Text;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        quoted("an IP code in quotes", Self::FORM, Self::parse, node, faults)
    }
}
