//! Every noun of the yard as closed triangle meshes, see-through outlines and places.
//!
//! One file a noun; each noun enters its name once and adds what it is made of. The order is fixed and nothing is
//! random: the same yard gives the same triangles, bit for bit.

mod area;
mod cloth;
mod crowd;
mod enter;
mod film;
mod form;
mod frame;
mod ground;
mod house;
mod mesh;
mod mirror;
mod plant;
mod thing;

pub use frame::Frame;

use super::{Built, Quad};
use crate::scene::{Cloth, Yard};

/// Longest edge of an outdoor surface, m: the sky is known at corners only and is blended between them.
const OUTDOORS: f32 = 0.25;

/// Longest edge in a room, m: no sky reaches it, and its light varies gently.
const INDOORS: f32 = 0.5;

/// Opaque triangles after which no more houses, things and forms are built: what is there is then much more than anything takes.
pub const ENOUGH: usize = 24_000_000;

/// Builds nouns one by one, until there is more than enough.
fn each<T, R>(nouns: &[T], built: &mut Built, one: impl Fn(&T, &mut Built) -> R) -> Vec<R> {
    let mut triangles = built.triangles();
    let build = |noun| {
        let first = built.solids.len();
        let done = (triangles <= ENOUGH).then(|| one(noun, built));
        triangles += built.solids[first..].iter().map(|solid| solid.mesh.triangles.len()).sum::<usize>();
        done
    };
    nouns.iter().map_while(build).collect()
}

/// Builds all surfaces of a yard; of one with far too much, [`ENOUGH`] to tell.
///
/// Expects a yard that has passed its checks; where one has not, what cannot be built is left out, and its name stays.
pub fn build(yard: &Yard) -> Built {
    let mut built = Built::default();
    house::build_all(&yard.houses, &mut built);
    each(&yard.walls, &mut built, house::wall::build);
    each(&yard.things, &mut built, thing::build);
    crowd::build_forms(&yard.forms, &mut built);
    let dense = ground::Dense::around(&built);
    for plant in &yard.plants {
        plant::build(plant, &mut built);
    }
    for (index, cloth) in yard.cloths.iter().enumerate() {
        cloth::build(index, cloth, &mut built);
    }
    for (index, film) in yard.films.iter().enumerate() {
        film::build(index, film, yard, &mut built);
    }
    for mirror in &yard.mirrors {
        mirror::build(mirror, &mut built);
    }
    let lines = ground::Lines::new(&yard.ground, &dense);
    for area in &yard.areas {
        area::build(area, &lines, &mut built);
    }
    ground::build(&yard.ground, &lines, &mut built);
    put_away(yard, &mut built);
    built
}

/// Takes out what the yard hides; its name and place stay, for what is aimed at it.
fn put_away(yard: &Yard, built: &mut Built) {
    if yard.hidden.is_empty() {
        return;
    }
    let hidden: Vec<bool> = built.names.iter().map(|name| yard.is_hidden(name)).collect();
    built.solids.retain(|solid| !hidden[solid.owner as usize]);
    built.crowds.iter_mut().for_each(|crowd| crowd.members.retain(|member| !hidden[member.owner as usize]));
    built.crowds.retain(|crowd| !crowd.members.is_empty());
    built.veils.retain(|veil| !hidden[veil.owner as usize]);
    built.chambers.retain(|chamber| !hidden[chamber.owner as usize]);
}

/// Where a hanging cloth hangs.
pub fn cloth_face(cloth: &Cloth) -> Quad {
    cloth::face(cloth)
}
