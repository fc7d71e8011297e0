//! Carved surfaces under lamps.

use glam::{Vec2, Vec3};

use super::field::Field;

/// A lamp before a carving, in texels; z is its height above the picture.
pub(super) struct Lamp {
    pub at: Vec3,
    pub colour: Vec3,
    /// The distance at which its light has fallen to a half; a far lamp's is beyond the picture.
    pub reach: f32,
}

/// A surface of heights that can be lit.
pub(super) struct Carving {
    heights: Field,
    /// How much lower each place is than its surroundings, near and wide.
    hollows: [Field; 2],
}

impl Carving {
    pub fn new(heights: Field) -> Self {
        let hollow = |radius: f32| {
            let mut around = heights.clone().blurred(radius);
            around.merge(&heights, |mean, height| mean - height);
            around
        };
        let hollows = [hollow(5.0), hollow(26.0)];
        Self { heights, hollows }
    }

    /// The light that a matt surface sends back from a place, and the sheen on top of it.
    pub fn light(&self, at: Vec2, lamps: &[Lamp]) -> (Vec3, Vec3) {
        let normal = self.heights.normal(at);
        let surface = at.extend(self.heights.at(at));
        let (mut matt, mut sheen) = (Vec3::ZERO, Vec3::ZERO);
        for lamp in lamps {
            let way = lamp.at - surface;
            let distance = way.length();
            let way = way / distance;
            let fall = 1.0 / (1.0 + (distance / lamp.reach).powi(2));
            matt += lamp.colour * (fall * normal.dot(way).max(0.0));
            let half = (way + Vec3::Z).normalize();
            sheen += lamp.colour * (fall * normal.dot(half).max(0.0).powi(34));
        }
        let open = self.openness(at);
        (matt * open, sheen * open)
    }

    /// How much of the sky a place sees: less in a cut or under a ledge, a little more on an edge.
    fn openness(&self, at: Vec2) -> f32 {
        let [near, wide] = &self.hollows;
        (1.0 - 0.08 * near.at(at) - 0.016 * wide.at(at)).clamp(0.25, 1.2)
    }
}
