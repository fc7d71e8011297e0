//! What the catalogue holds and where it is looked up.

use super::read::Read;
use super::{Catalogue, Fabric, Faults, Goods, LampKind, Limit, ProjectorClass, Surface, Yard, syntax};

/// The pictures drawn into the program, by the names that a yard's content may give.
const PICTURES: [&str; 5] = ["owl_face", "owl_glide", "owl_wall", "guardian", "gourds"];

/// Name and text of each file of the catalogue that the program carries.
const SURFACES: (&str, &str) = ("surfaces.ron", include_str!("../../assets/catalogue/surfaces.ron"));
const FABRICS: (&str, &str) = ("fabrics.ron", include_str!("../../assets/catalogue/fabrics.ron"));
const PROJECTORS: (&str, &str) = ("projectors.ron", include_str!("../../assets/catalogue/projectors.ron"));
const LAMPS: (&str, &str) = ("lamps.ron", include_str!("../../assets/catalogue/lamps.ron"));
const GOODS: (&str, &str) = ("goods.ron", include_str!("../../assets/catalogue/goods.ron"));
const LIMITS: (&str, &str) = ("limits.ron", include_str!("../../assets/limits.ron"));

impl Catalogue {
    /// The catalogue that the program carries.
    pub fn builtin() -> Self {
        Self {
            surfaces: entries(SURFACES).0,
            fabrics: entries(FABRICS).0,
            projectors: entries(PROJECTORS).0,
            lamp_kinds: entries(LAMPS).0,
            goods: entries(GOODS).0,
            limits: entries(LIMITS).0,
            pictures: PICTURES.map(str::to_owned).to_vec(),
        }
    }

    /// The surface of this name.
    pub fn surface(&self, name: &str) -> Option<&Surface> {
        self.surfaces.iter().find(|entry| entry.name.0 == name)
    }

    /// The fabric of this name.
    pub fn fabric(&self, name: &str) -> Option<&Fabric> {
        self.fabrics.iter().find(|entry| entry.name.0 == name)
    }

    /// The projector class of this name.
    pub fn projector(&self, name: &str) -> Option<&ProjectorClass> {
        self.projectors.iter().find(|entry| entry.name.0 == name)
    }

    /// The kind of lamp of this name.
    pub fn lamp_kind(&self, name: &str) -> Option<&LampKind> {
        self.lamp_kinds.iter().find(|entry| entry.name.0 == name)
    }

    /// The goods of this name.
    pub fn goods(&self, name: &str) -> Option<&Goods> {
        self.goods.iter().find(|entry| entry.name.0 == name)
    }

    /// The limit of this name.
    pub fn limit(&self, name: &str) -> Option<&Limit> {
        self.limits.iter().find(|entry| entry.name.0 == name)
    }
}

/// A yard's own entries come before the catalogue's of the same name.
impl Yard {
    /// Every fabric that may be named, the yard's own first, each name once.
    pub fn all_fabrics<'a>(&'a self, catalogue: &'a Catalogue) -> impl Iterator<Item = &'a Fabric> {
        let own = |name: &str| self.fabrics.iter().any(|own| own.name.0 == name);
        self.fabrics.iter().chain(catalogue.fabrics.iter().filter(move |entry| !own(&entry.name.0)))
    }

    /// Every projector class that may be named, the yard's own first, each name once.
    pub fn all_projectors<'a>(&'a self, catalogue: &'a Catalogue) -> impl Iterator<Item = &'a ProjectorClass> {
        let own = |name: &str| self.projectors.iter().any(|own| own.name.0 == name);
        self.projectors.iter().chain(catalogue.projectors.iter().filter(move |entry| !own(&entry.name.0)))
    }

    /// All goods that a list may take, the yard's own first, each name once.
    pub fn all_goods<'a>(&'a self, catalogue: &'a Catalogue) -> impl Iterator<Item = &'a Goods> {
        let own = |name: &str| self.goods.iter().any(|own| own.name.0 == name);
        self.goods.iter().chain(catalogue.goods.iter().filter(move |entry| !own(&entry.name.0)))
    }

    /// The surface of this name, the yard's own first.
    pub fn surface<'a>(&'a self, catalogue: &'a Catalogue, name: &str) -> Option<&'a Surface> {
        self.surfaces.iter().find(|entry| entry.name.0 == name).or_else(|| catalogue.surface(name))
    }

    /// The fabric of this name, the yard's own first.
    pub fn fabric<'a>(&'a self, catalogue: &'a Catalogue, name: &str) -> Option<&'a Fabric> {
        self.fabrics.iter().find(|entry| entry.name.0 == name).or_else(|| catalogue.fabric(name))
    }

    /// The projector class of this name, the yard's own first.
    pub fn projector<'a>(&'a self, catalogue: &'a Catalogue, name: &str) -> Option<&'a ProjectorClass> {
        self.projectors.iter().find(|entry| entry.name.0 == name).or_else(|| catalogue.projector(name))
    }

    /// The kind of lamp of this name, the yard's own first.
    pub fn lamp_kind<'a>(&'a self, catalogue: &'a Catalogue, name: &str) -> Option<&'a LampKind> {
        self.lamp_kinds.iter().find(|entry| entry.name.0 == name).or_else(|| catalogue.lamp_kind(name))
    }

    /// The limit of this name, the yard's own first.
    pub fn limit<'a>(&'a self, catalogue: &'a Catalogue, name: &str) -> Option<&'a Limit> {
        self.limits.iter().find(|entry| entry.name.0 == name).or_else(|| catalogue.limit(name))
    }
}

/// The entries of one file, read like any yard. A test proves that the files have no fault, so that none is lost here.
fn entries<T: Read>((file_name, text): (&str, &str)) -> (Vec<T>, Faults) {
    let mut faults = Faults::none(file_name, text);
    let root = syntax::parse(text, &mut faults).root;
    let entries = root.and_then(|root| Vec::read(&root, &mut faults)).unwrap_or_default();
    (entries, faults)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::limits;

    #[test]
    fn an_entry_of_the_yard_stands_for_the_catalogue_s_of_its_name() {
        let catalogue = Catalogue::builtin();
        let mut yard = Yard::named("own");
        let mut own = catalogue.fabrics[1].clone();
        own.note = "measured".to_owned();
        yard.fabrics.push(own.clone());
        assert_eq!(yard.all_fabrics(&catalogue).count(), catalogue.fabrics.len());
        assert_eq!(yard.all_fabrics(&catalogue).find(|entry| entry.name == own.name), Some(&own));
        yard.projectors.push(catalogue.projectors[0].clone());
        assert_eq!(yard.all_projectors(&catalogue).count(), catalogue.projectors.len());
    }

    #[test]
    fn the_catalogue_has_no_fault() {
        let faults = [
            entries::<Surface>(SURFACES).1,
            entries::<Fabric>(FABRICS).1,
            entries::<ProjectorClass>(PROJECTORS).1,
            entries::<LampKind>(LAMPS).1,
            entries::<Goods>(GOODS).1,
            entries::<Limit>(LIMITS).1,
        ];
        for faults in faults {
            assert!(faults.is_empty(), "{faults}");
        }
        let faults = Catalogue::builtin().check();
        assert!(faults.is_empty(), "{faults}");
    }

    #[test]
    fn the_limits_are_those_that_are_asked_for_and_say_where_they_come_from() {
        let catalogue = Catalogue::builtin();
        let mut names: Vec<&str> = catalogue.limits.iter().map(|limit| limit.name.0.as_str()).collect();
        let mut asked = limits::ALL.to_vec();
        names.sort_unstable();
        asked.sort_unstable();
        assert_eq!(names, asked);
        assert!(catalogue.limits.iter().all(|limit| !limit.note.is_empty() && limit.value > 0.0));
        // The catalogue's own values pass the checks of a yard that gives them again.
        let yard = Yard { limits: catalogue.limits.clone(), ..Yard::named("limits") };
        let faults = yard.check(&catalogue, None);
        assert!(faults.is_empty(), "{faults}");
    }
}
