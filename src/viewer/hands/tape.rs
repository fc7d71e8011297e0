//! The tape measure in the hand: two clicks lay a tape, which then belongs to the yard.

use gauzelight::{light::Night, scene::Tape};
use glam::Vec3;

/// The tape that is being laid.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum TapeHeld {
    /// None.
    #[default]
    No,
    /// The next click is its first end.
    First,
    /// The next click is its other end.
    From(Vec3),
}

impl TapeHeld {
    /// Begins to lay one, or gives up.
    pub fn take_up(&mut self) {
        *self = if *self == Self::No { Self::First } else { Self::No };
    }

    /// Sets an end; the second gives the tape.
    pub fn set(&mut self, at: Vec3) -> Option<Tape> {
        match std::mem::take(self) {
            Self::No => None,
            Self::First => {
                *self = Self::From(at);
                None
            }
            Self::From(from) => Some(Tape::between(from.as_dvec3().to_array(), at.as_dvec3().to_array())),
        }
    }
}

/// The corner of a flat thing that is within `near` metres of a point, else the point: tapes are held at corners.
pub fn corner_near(night: &Night, point: Vec3, near: f32) -> Vec3 {
    let faces = night.places.iter().filter_map(|place| place.face);
    let corners =
        faces.flat_map(|face| [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)].map(|(s, t)| face.point(s, t)));
    let nearest = corners.min_by(|a, b| a.distance(point).total_cmp(&b.distance(point)));
    nearest.filter(|corner| corner.distance(point) < near).unwrap_or(point)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_clicks_lay_a_tape() {
        let mut tape = TapeHeld::default();
        assert_eq!(tape.set(Vec3::X), None, "nobody took a tape up");
        tape.take_up();
        assert_eq!(tape.set(Vec3::ZERO), None);
        let laid = tape.set(Vec3::new(3.0, 4.0, 0.0));
        assert_eq!(laid, Some(Tape::between([0.0; 3], [3.0, 4.0, 0.0])));
        assert_eq!(tape, TapeHeld::No);
    }
}
