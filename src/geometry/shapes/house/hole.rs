//! The hole that an opening is in a wall.

use super::body::{Body, Inside};
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::scene::{Glazing, Opening, Room, Side, Window};
use glam::{Vec2, Vec3};

/// What is left of a wall between an opening and the wall's own edges at least, m; a threshold under a door.
const RIM: f32 = 0.02;

/// The least opening that is worth cutting, m.
const LEAST: f32 = 0.02;

/// An opening as cut.
pub struct Hole<'a> {
    /// What it was cut for.
    pub opening: &'a Opening,
    /// The wall, in the axes of the body: origin at the foot of its left end, front outwards.
    pub wall: Frame,
    /// Left lower corner of the clear opening on the wall.
    pub lo: Vec2,
    /// Right upper corner.
    pub hi: Vec2,
    /// How deep it is cut from the outer face.
    pub deep: f32,
    /// The room that it looks into.
    pub room: Option<&'a Room>,
    /// Where that room lies, in the axes of the body.
    pub chamber: Option<Bounds>,
}

/// How far behind the outer face the glass stands: 4 cm, less in a thin wall.
pub fn glass_depth(wall: f32) -> f32 {
    0.04f32.min(0.5 * wall)
}

/// Whether a window has a pane or an insect screen.
pub fn has_pane(window: &Window) -> bool {
    window.glazing != Glazing::Unglazed || window.screen.is_some()
}

impl<'a> Hole<'a> {
    /// The hole for an opening, kept within its wall; no depth where nothing of it lies there.
    pub fn new(opening: &'a Opening, body: &Body) -> Self {
        let (side, left, sill, width, height) = match opening {
            Opening::Window(w) => (w.side, &w.left, &w.sill, &w.width, &w.height),
            Opening::Door(d) => (d.side, &d.left, &d.sill, &d.width, &d.height),
        };
        let (wall, length) = body.wall_frame(if body.inside == Inside::Sheet { Side::Front } else { side });
        let lo = Vec2::new(left.f32(), sill.f32());
        let hi = lo + Vec2::new(width.f32(), height.f32());
        let lo = lo.max(Vec2::splat(RIM));
        let hi = hi.min(Vec2::new(length, body.height) - RIM);
        let mut hole = Self { opening, wall, lo, hi, deep: 0.0, room: None, chamber: None };
        if (hi - lo).min_element() < LEAST {
            hole.hi = hi.max(lo + LEAST);
            return hole;
        }
        let (window, room) = match opening {
            Opening::Window(w) => (Some(w), Some(&w.room)),
            Opening::Door(d) => (None, d.open.then_some(&d.room)),
        };
        let glazed = window.is_some_and(has_pane);
        hole.room = match body.inside {
            Inside::Filled => room,
            Inside::Sheet => room.filter(|r| glazed || window.is_some() && r.lamp.is_some()),
            Inside::Court => None,
        };
        hole.deep = match (window, hole.room) {
            // From the glass inwards the reveal belongs to the room.
            (Some(_), Some(_)) if glazed => glass_depth(body.wall),
            (None, None) if body.inside == Inside::Filled => super::door::leaf_depth(body.wall),
            _ => body.wall,
        };
        hole
    }

    /// Whether anything is cut at all.
    pub fn is_cut(&self) -> bool {
        self.deep > 0.0
    }

    /// The box between two depths behind the outer face, as wide and high as the clear opening, in the body's axes.
    pub fn between(&self, from: f32, to: f32) -> Bounds {
        Bounds::between(self.wall.point(self.lo.extend(-from)), self.wall.point(self.hi.extend(-to)))
    }

    /// What is cut out of the wall.
    pub fn cut(&self) -> Bounds {
        // Beyond the outer face, so that rounding cannot leave a skin there.
        self.between(-RIM, self.deep)
    }

    /// Whether a face, by its middle, closes the mouth between the cut and the room.
    pub fn is_mouth(&self, middle: Vec3) -> bool {
        self.room.is_some() && self.between(self.deep - 1e-3, self.deep + 1e-3).contains(middle)
    }
}
