//! The owner's own catalogue: what they have, in a file of its own that every yard may name entries of.

use super::document::{self, Document};
use super::save::{self, SaveError, Saved};
use super::{
    Catalogue, Fabric, Fault, Faults, Goods, LampKind, Name, ProjectorClass, SpreadKind, Surface, Yard, check,
};
use crate::files::System;
use std::path::Path;

noun! {
    /// What somebody owns, beside the catalogue that the program carries. Written as a yard's own entries are.
    OwnCatalogue as "own catalogue", all optional {
        /// Version of this notation.
        format: u32 = 1,
        /// Matt opaque surfaces.
        surfaces: Vec<Surface> = Vec::new(),
        /// Fabrics, insect screens and rear films.
        fabrics: Vec<Fabric> = Vec::new(),
        /// Projector classes: each projector that its owner has.
        projectors: Vec<ProjectorClass> = Vec::new(),
        /// Kinds of lamp.
        lamp_kinds: Vec<LampKind> = Vec::new(),
        /// What else is bought, at prices of one's own.
        goods: Vec<Goods> = Vec::new(),
    }
}

impl Document for OwnCatalogue {
    const FORMAT: u32 = Self::FORMAT;
    const ELSEWHERE: &'static str = "it holds surfaces, fabrics, projectors, kinds of lamp and goods only";
}

impl OwnCatalogue {
    /// The version of the notation that this program writes, and the newest that it reads.
    pub const FORMAT: u32 = 1;

    /// Reads it from text. On failure every fault is there at once, with its place; `file_name` is only for these.
    pub fn parse(text: &str, file_name: &str) -> Result<Self, Faults> {
        document::parse(text, file_name, Self::check_into).map(|opened| opened.noun)
    }

    /// Reads it from its file. A file that is not there is a fault too: whoever has none yet starts from the default.
    pub fn open(path: &Path) -> Result<Self, Faults> {
        Self::parse(&document::read_text::<Self>(path)?, &path.display().to_string())
    }

    /// The text of its file: fields at their default left out, lengths in the notation that they were read in.
    pub fn to_text(&self) -> String {
        save::text(self, self.format)
    }

    /// Saves it as [`Yard::save`] does: first to a new file, then in the old one's place; the folder must be there. A file
    /// that holds comments is copied before it is first written over.
    pub fn save(&self, path: &Path) -> Result<Saved, SaveError> {
        save::save::<Self>(&System, &self.to_text(), path)
    }

    /// What is wrong with its entries: values that no real thing can have, names that two of them have.
    pub fn check(&self) -> Faults {
        let mut faults = Faults::none(Self::WORDS, "");
        self.check_into(&[], &mut faults);
        faults
    }

    /// What a message calls it where it has no file.
    const WORDS: &str = "own catalogue";

    /// Checks the entries as those of a bare yard, by the very same rules.
    fn check_into(&self, unread: &[&str], faults: &mut Faults) {
        let Self { format, surfaces, fabrics, projectors, lamp_kinds, goods } = self.clone();
        let yard = Yard { format, surfaces, fabrics, projectors, lamp_kinds, goods, ..Yard::named(Self::WORDS) };
        check::check(&yard, &Catalogue::builtin(), None, unread, faults);
        faults.in_each("lamp_kinds", &yard.lamp_kinds, |faults, kind| {
            if matches!(kind.spread, SpreadKind::File { .. }) {
                let what = "a lamp file stands beside a yard, and this catalogue beside none";
                faults.push_in("spread", Fault::new(what).remedy("write this kind of lamp into the yard itself"));
            }
        });
    }
}

impl Catalogue {
    /// With what somebody owns: first in every list, and in the place of what has the same name here.
    pub fn with_own(self, own: OwnCatalogue) -> Self {
        Self {
            surfaces: before(own.surfaces, self.surfaces, |entry| &entry.name),
            fabrics: before(own.fabrics, self.fabrics, |entry| &entry.name),
            projectors: before(own.projectors, self.projectors, |entry| &entry.name),
            lamp_kinds: before(own.lamp_kinds, self.lamp_kinds, |entry| &entry.name),
            goods: before(own.goods, self.goods, |entry| &entry.name),
            limits: self.limits,
            pictures: self.pictures,
        }
    }
}

/// Own entries, then those of the rest that have names of their own.
fn before<T>(own: Vec<T>, rest: Vec<T>, name: impl Fn(&T) -> &Name) -> Vec<T> {
    let mut all = own;
    let count = all.len();
    for entry in rest {
        if all[..count].iter().all(|own| name(own) != name(&entry)) {
            all.push(entry);
        }
    }
    all
}
