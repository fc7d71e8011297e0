//! What is meant to be lit: things, and of a thing with flat sides the one side that the picture is thrown onto.

use super::{Touch, leave};
use crate::{
    geometry::Sight,
    light::{Beam, Night},
};
use glam::Vec3;

/// Normals that stand apart more than this, by their cosine, are those of two sides.
pub(super) const ONE_SIDE: f32 = 0.9;

/// What a station is meant to light.
pub(super) struct Meant<'a> {
    targets: &'a [u32],
    sides: Vec<Side>,
}

/// The side of a thing that is meant.
struct Side {
    owner: u32,
    point: Vec3,
    normal: Vec3,
}

impl<'a> Meant<'a> {
    /// Of targets with a flat face the side that the middle of the picture lands on; where that lands elsewhere, front or back,
    /// whichever the lens is before.
    pub fn of(night: &Night, beam: &Beam, targets: &'a [u32]) -> Self {
        let middle = leave(night, beam, beam.bent([0.5, 0.5])).and_then(|(from, along)| {
            let touches = night.touches(Sight::endless(from, along));
            touches.into_iter().find(|touch| targets.contains(&touch.owner))
        });
        let side = |owner: u32| {
            let face = night.places[owner as usize].face?;
            let normal = face.normal();
            let front = (beam.lens.at - face.middle()).dot(normal) > 0.0;
            Some(match middle.filter(|touch| touch.owner == owner) {
                Some(touch) => Side { owner, point: touch.point, normal: touch.normal },
                None => Side { owner, point: face.middle(), normal: if front { normal } else { -normal } },
            })
        };
        Self { targets, sides: targets.iter().filter_map(|owner| side(*owner)).collect() }
    }

    /// Where nothing is meant to be lit.
    pub fn nothing() -> Self {
        Self { targets: &[], sides: Vec::new() }
    }

    /// Whether there is no target.
    pub fn is_nothing(&self) -> bool {
        self.targets.is_empty()
    }

    /// Whether light that lands there lands where it is meant to. What looks outwards beside the side that is meant, a wall's end or top,
    /// is its edge; what looks inwards, a reveal or a room, belongs to it.
    pub fn takes(&self, touch: &Touch) -> bool {
        let on_side = |side: &Side| {
            let outwards = (touch.point - side.point).dot(touch.normal) > 0.0;
            touch.normal.dot(side.normal) > ONE_SIDE || !outwards
        };
        let side = self.sides.iter().find(|side| side.owner == touch.owner);
        self.targets.contains(&touch.owner) && (touch.veil.is_some() || side.is_none_or(on_side))
    }
}
