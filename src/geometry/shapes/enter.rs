//! How nouns enter what they are made of.

use crate::geometry::{Built, Mesh, Place, Quad, Solid};
use crate::scene::{Name, Ref};
use glam::Vec3;

impl Built {
    /// Enters a name with its place, once for each noun; the answer is the owner of all that it is made of.
    pub(in crate::geometry::shapes) fn enter(&mut self, name: &Name, middle: Vec3, face: Option<Quad>) -> u32 {
        let owner = self.names.len() as u32;
        self.names.push(name.0.clone());
        self.places.push(Place { owner, middle, face });
        owner
    }

    /// Adds an outdoor solid with a surface of the catalogue; one without triangles is left out.
    pub(in crate::geometry::shapes) fn solid(&mut self, owner: u32, mesh: Mesh, surface: &Ref) {
        if !mesh.triangles.is_empty() {
            self.solids.push(Solid { owner, mesh, surface: surface.0.clone(), reflectance: None, indoors: false });
        }
    }
}
