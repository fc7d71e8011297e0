//! Rear films.

use super::frame::Frame;
use crate::geometry::{Built, Outline, Quad, Veil, VeilKind};
use crate::scene::{RearFilm, Yard};
use glam::{Vec2, Vec3};

/// How far a film hangs behind the glass of its window, m.
const BEHIND_GLASS: f32 = 0.03;

/// Builds a rear film, free or in a window; its front is the side that is looked at. One that has neither a window
/// of this yard nor a place of its own enters its name only.
pub fn build(index: usize, film: &RearFilm, yard: &Yard, built: &mut Built) {
    let Some(quad) = in_window(film, yard, built).or_else(|| free(film)) else {
        built.enter(&film.name, film.at.as_ref().map_or(Vec3::ZERO, |at| at.vec3()), None);
        return;
    };
    let owner = built.enter(&film.name, quad.middle(), Some(quad));
    built.veils.push(Veil { owner, outline: Outline::Flat(quad), kind: VeilKind::Film(index) });
}

fn in_window(film: &RearFilm, yard: &Yard, built: &Built) -> Option<Quad> {
    let name = &film.window.as_ref()?.0;
    let openings = yard.houses.iter().map(|h| &h.openings).chain(yard.walls.iter().map(|w| &w.openings));
    openings.flatten().find(|o| matches!(o, crate::scene::Opening::Window(w) if w.name.0 == *name))?;
    let clear = built.place(name)?.face?;
    Some(Quad { corner: clear.corner - BEHIND_GLASS * clear.normal(), ..clear })
}

fn free(film: &RearFilm) -> Option<Quad> {
    let (width, height) = film.size.as_ref()?;
    let frame = Frame::turned(film.at.as_ref()?.vec3(), film.turn_deg);
    let half = 0.5 * width.f32();
    Some(frame.upright(Vec2::new(-half, -height.f32()), Vec2::new(half, 0.0), 0.0))
}
