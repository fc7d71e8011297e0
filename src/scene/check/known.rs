//! What names may refer to.

use super::name::{Body, Named};
use crate::scene::{Catalogue, Fabric, Fault, Faults, LampKind, Opening, ProjectorClass, Ref, Surface, Yard};
use std::path::Path;

/// More names than this nobody reads to the end.
const MOST_LISTED: usize = 20;

/// A yard with all that it may name.
pub(super) struct Known<'a> {
    pub yard: &'a Yard,
    pub catalogue: &'a Catalogue,
    /// Where pictures are looked for, if anywhere.
    pub folder: Option<&'a Path>,
    /// Every name in the yard.
    pub names: Vec<Named<'a>>,
    /// Names of nouns that could not be read.
    pub unread: &'a [&'a str],
}

impl<'a> Known<'a> {
    /// The surface that a field names; reports it if there is none.
    pub fn surface(&self, field: &str, name: &Ref, faults: &mut Faults) -> Option<&'a Surface> {
        let surface = self.yard.surface(self.catalogue, &name.0);
        if surface.is_none() {
            let own = self.yard.surfaces.iter().chain(&self.catalogue.surfaces).map(|entry| entry.name.0.as_str());
            self.missing("surface", field, name, own, faults);
        }
        surface
    }

    /// The fabric that a field names; reports it if there is none.
    pub fn fabric(&self, field: &str, name: &Ref, faults: &mut Faults) -> Option<&'a Fabric> {
        let fabric = self.yard.fabric(self.catalogue, &name.0);
        if fabric.is_none() {
            let own = self.yard.fabrics.iter().chain(&self.catalogue.fabrics).map(|entry| entry.name.0.as_str());
            self.missing("fabric", field, name, own, faults);
        }
        fabric
    }

    /// The projector class that a field names; reports it if there is none.
    pub fn projector(&self, field: &str, name: &Ref, faults: &mut Faults) -> Option<&'a ProjectorClass> {
        let class = self.yard.projector(self.catalogue, &name.0);
        if class.is_none() {
            let own = self.yard.projectors.iter().chain(&self.catalogue.projectors).map(|entry| entry.name.0.as_str());
            self.missing("projector class", field, name, own, faults);
        }
        class
    }

    /// The kind of lamp that a field names; reports it if there is none.
    pub fn lamp_kind(&self, field: &str, name: &Ref, faults: &mut Faults) -> Option<&'a LampKind> {
        let kind = self.yard.lamp_kind(self.catalogue, &name.0);
        if kind.is_none() {
            let own = self.yard.lamp_kinds.iter().chain(&self.catalogue.lamp_kinds).map(|entry| entry.name.0.as_str());
            self.missing("kind of lamp", field, name, own, faults);
        }
        kind
    }

    /// Reports a field that names nothing which could be aimed at or looked at.
    pub fn thing(&self, field: &str, name: &Ref, faults: &mut Faults) {
        self.with_a_body(field, name, Body::Mirror, "name a thing with a surface, or write a position", faults);
    }

    /// Reports a field that names nothing which could be lit.
    pub fn target(&self, field: &str, name: &Ref, faults: &mut Faults) {
        self.with_a_body(field, name, Body::Lit, "name a thing with a surface that takes light", faults);
    }

    fn with_a_body(&self, field: &str, name: &Ref, least: Body, remedy: &str, faults: &mut Faults) {
        let Some(named) = self.names.iter().find(|named| named.name.0 == name.0) else {
            let own = self.names.iter().filter(|named| named.body >= least).map(|named| named.name.0.as_str());
            return self.missing("thing of this yard", field, name, own, faults);
        };
        if named.body < least {
            let what = format!("“{}” is a {}, which nothing can be thrown onto", name.0, named.word);
            faults.push_in(field, Fault::new(what).remedy(remedy));
        }
    }

    /// Reports a field that names no window.
    pub fn window(&self, field: &str, name: &Ref, faults: &mut Faults) {
        let houses = self.yard.houses.iter().flat_map(|house| &house.openings);
        let openings = houses.chain(self.yard.walls.iter().flat_map(|wall| &wall.openings));
        let windows = openings.filter_map(|opening| match opening {
            Opening::Window(window) => Some(window.name.0.as_str()),
            Opening::Door(_) => None,
        });
        if !windows.clone().any(|window| window == name.0) {
            self.missing("window", field, name, windows, faults);
        }
    }

    /// Reports a field that names no fold mirror.
    pub fn mirror(&self, field: &str, name: &Ref, faults: &mut Faults) {
        let mut mirrors = self.yard.mirrors.iter().map(|mirror| mirror.name.0.as_str());
        if !mirrors.clone().any(|mirror| mirror == name.0) {
            self.missing("fold mirror", field, name, &mut mirrors, faults);
        }
    }

    /// What a cable may begin at.
    pub const FEEDS: &'static str = "supply, station, lamp or cable";
    /// What a cable may end at.
    pub const IS_FED: &'static str = "station, lamp or 12 V supply";
    /// What a supply of low voltage may be plugged into.
    pub const OUTLET: &'static str = "mains supply";

    /// Reports a field that names none of these, which are `word`s.
    pub fn among(&self, word: &str, field: &str, name: &Ref, names: &[&str], faults: &mut Faults) {
        if !names.contains(&name.0.as_str()) {
            self.missing(word, field, name, names.iter().copied(), faults);
        }
    }

    /// Reports a name that nothing in the yard has.
    pub fn named(&self, name: &Ref, faults: &mut Faults) {
        if !self.names.iter().any(|named| named.name.0 == name.0) && !self.unread.contains(&name.0.as_str()) {
            let own = self.names.iter().map(|named| named.name.0.as_str());
            let fault = Fault::new(format!("nothing in this yard is called “{}”", name.0));
            faults.push(fault.remedy("name a thing of this yard, or leave it out").nearest_of(&name.0, own));
        }
    }

    fn missing<'n>(
        &self,
        word: &str,
        field: &str,
        name: &Ref,
        known: impl IntoIterator<Item = &'n str>,
        faults: &mut Faults,
    ) {
        if !self.unread.contains(&name.0.as_str()) {
            let remedy = match word {
                "window" | "fold mirror" | "thing of this yard" | Self::FEEDS | Self::IS_FED | Self::OUTLET => {
                    format!("name a {word}")
                }
                _ => format!("name a {word} of the catalogue or of this yard"),
            };
            let known: Vec<&str> = known.into_iter().collect();
            let fault = Fault::new(format!("no {word} is called “{}”", name.0));
            let mut fault = fault.remedy(remedy).nearest_of(&name.0, known.iter().copied());
            if fault.nearest.is_none() && !known.is_empty() {
                let more = if known.len() > MOST_LISTED { ", and more" } else { "" };
                let listed = known[..known.len().min(MOST_LISTED)].join("; ");
                fault.remedy.push_str(&format!("; there are: {listed}{more}"));
            }
            faults.push_in(field, fault);
        }
    }
}
