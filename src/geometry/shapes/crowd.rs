//! Forms, many alike as one body in many places.

use super::{ENOUGH, each, form, frame::Frame};
use crate::geometry::{Built, Crowd, Member};
use crate::scene::Form;
use glam::Vec3;

/// So many forms alike have a body each; more share one.
const FEW: usize = 4;

/// Builds all forms.
pub fn build_forms(forms: &[Form], built: &mut Built) {
    let mut kinds: Vec<(Form, usize)> = Vec::new();
    let kind_of: Vec<usize> = forms.iter().map(|form| count(form.body(), &mut kinds)).collect();
    let mut held = built.triangles();
    let crowds: Vec<Option<(usize, Vec3)>> = kinds
        .iter()
        .map(|(body, count)| {
            let (crowd, middle) = (*count > FEW && held <= ENOUGH).then(|| crowd_of(body)).flatten()?;
            held += crowd.mesh.triangles.len();
            built.crowds.push(crowd);
            Some((built.crowds.len() - 1, middle))
        })
        .collect();
    let forms: Vec<(&Form, usize)> = forms.iter().zip(kind_of).collect();
    each(&forms, built, |(form, kind), built| {
        let Some((crowd, middle)) = crowds[*kind] else {
            return form::build(form, built);
        };
        let (at, turn) = form.stance();
        let frame = Frame::turned(at.vec3(), turn);
        let owner = built.enter(form.name(), frame.point(middle), None);
        built.crowds[crowd].members.push(Member { owner, frame });
    });
}

/// Counts a body among its kind, and answers which that is.
fn count(body: Form, kinds: &mut Vec<(Form, usize)>) -> usize {
    let known = kinds.iter().position(|(kind, _)| *kind == body);
    let kind = known.unwrap_or_else(|| {
        kinds.push((body, 0));
        kinds.len() - 1
    });
    kinds[kind].1 += 1;
    kind
}

/// A crowd without members of a body, and where an aim at that points; nothing of one that encloses nothing.
fn crowd_of(body: &Form) -> Option<(Crowd, Vec3)> {
    let mut alone = Built::default();
    form::build(body, &mut alone);
    let (solid, place) = (alone.solids.pop()?, alone.places.pop()?);
    Some((Crowd { mesh: solid.mesh, surface: solid.surface, members: Vec::new() }, place.middle))
}
