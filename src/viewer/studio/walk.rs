//! Passing by: an eye that moves past, at the pace of a walker or a car.

use super::Studio;
use glam::Vec3;
use std::time::Instant;

/// A walker's pace, m/s (common practice, no source).
pub const WALKER: f32 = 1.4;
/// A car's in a lane of houses, m/s: 40 km/h (common practice, no source).
pub const CAR: f32 = 11.0;
/// How far before the spot a passer comes into the picture, and how far past it goes, m.
const REACH: f32 = 12.0;

/// Somebody who passes by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walk {
    /// m/s.
    pub pace: f32,
    from: Vec3,
    way: Vec3,
    length: f32,
    begun: Instant,
}

impl Studio {
    /// Begins to pass the spot last stood at: along its own path, else across what it looks at.
    pub(super) fn walk_by(&mut self, pace: Option<f32>) {
        let Some(pace) = pace else {
            self.walk = None;
            return self.home();
        };
        let Some(spot) = self.yard().spots.get(self.spot).cloned() else { return };
        self.home();
        let eye = self.eye.at;
        let (from, to) = match &spot.to {
            Some(to) => (eye, to.vec3() + spot.eye.f32() * Vec3::Y),
            None => {
                let across = (self.eye.target - eye).with_y(0.0).cross(Vec3::Y).normalize_or(Vec3::X);
                (eye - REACH * across, eye + REACH * across)
            }
        };
        let length = (to - from).length().max(0.1);
        self.walk = Some(Walk { pace, from, way: (to - from) / length, length, begun: Instant::now() });
    }

    /// Moves the eye on, if somebody passes by.
    pub(super) fn stroll(&mut self) {
        let Some(walk) = self.walk else { return };
        let gone = walk.pace * walk.begun.elapsed().as_secs_f32();
        self.eye.at = walk.from + gone.min(walk.length) * walk.way;
        if gone >= walk.length {
            self.walk = None;
        }
    }
}
