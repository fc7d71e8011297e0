//! The tape measure: two clicks, and it stays until it is taken away.

use gauzelight::light::Night;
use glam::Vec3;

/// Tapes that lie in the picture.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tapes {
    /// Ends of each.
    pub laid: Vec<[Vec3; 2]>,
    /// Whether the next click is an end, and the first end where that is set already.
    pub laying: Option<Option<Vec3>>,
}

impl Tapes {
    /// Begins to lay one, or gives up.
    pub fn take_up(&mut self) {
        self.laying = if self.laying.is_some() { None } else { Some(None) };
    }

    /// Sets an end.
    pub fn set(&mut self, at: Vec3) {
        match self.laying {
            Some(Some(from)) => {
                self.laid.push([from, at]);
                self.laying = None;
            }
            Some(None) => self.laying = Some(Some(at)),
            None => {}
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
    fn two_clicks_lay_a_tape_and_it_stays() {
        let mut tapes = Tapes::default();
        tapes.set(Vec3::X);
        assert!(tapes.laid.is_empty(), "nobody took a tape up");
        tapes.take_up();
        tapes.set(Vec3::ZERO);
        tapes.set(Vec3::new(3.0, 4.0, 0.0));
        assert_eq!(tapes.laid, [[Vec3::ZERO, Vec3::new(3.0, 4.0, 0.0)]]);
        assert_eq!(tapes.laying, None);
    }
}
