//! Findings and their remedies: every matter has a yard that provokes it and one that does not, and what is proposed helps.

#![allow(clippy::unwrap_used, reason = "a test that cannot be set up has failed")]

mod around;
mod compare;
mod day;
mod escape;
mod evening;
mod hidden;
mod in_the_way;
mod levels;
mod nowhere;
mod numbers;
mod pictures;
mod power;
mod practice_cloth;
mod remedies;
mod several;
mod short;
mod yards;

use gauzelight::{
    frames::Shelf,
    judge::findings::{Case, Finding, judge},
    light::Night,
    scene::{Catalogue, Yard},
};
use std::path::Path;

/// A yard that is lit.
struct Lit {
    yard: Yard,
    catalogue: Catalogue,
    shelf: Shelf,
    night: Night,
}

impl Lit {
    fn of(yard: Yard) -> Self {
        let catalogue = Catalogue::builtin();
        let mut shelf = Shelf::beside(Path::new(""));
        shelf.fetch_for(&yard);
        let night = Night::build(&yard, &catalogue, &shelf).unwrap();
        Self { yard, catalogue, shelf, night }
    }

    fn parse(text: &str) -> Self {
        let read = Yard::parse(text, "yard", &Catalogue::builtin());
        Self::of(read.unwrap_or_else(|faults| panic!("{}", faults.plain())).yard)
    }

    fn case(&self) -> Case<'_> {
        Case::of(&self.yard, &self.catalogue, &self.night)
    }

    fn findings(&self) -> Vec<Finding> {
        judge(&self.case())
    }
}
