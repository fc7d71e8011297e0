//! A box on a picture.

use glam::Vec2;

/// A box on a picture in its own coordinates: `u` runs right and `v` down, each from 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extent {
    /// Upper left corner.
    pub min: Vec2,
    /// Lower right corner.
    pub max: Vec2,
}

impl Extent {
    /// The middle of the box.
    pub fn centre(&self) -> Vec2 {
        (self.min + self.max) * 0.5
    }

    /// Width and height of the box, as fractions of the picture.
    pub fn size(&self) -> Vec2 {
        self.max - self.min
    }

    /// Whether the point lies in the box; its edges belong to it.
    pub fn contains(&self, point: Vec2) -> bool {
        point.cmpge(self.min).all() && point.cmple(self.max).all()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_knows_its_middle_its_size_and_what_it_holds() {
        let extent = Extent { min: Vec2::new(0.25, 0.0), max: Vec2::new(0.75, 0.5) };
        assert_eq!(extent.centre(), Vec2::new(0.5, 0.25));
        assert_eq!(extent.size(), Vec2::new(0.5, 0.5));
        assert!(extent.contains(extent.min) && extent.contains(extent.max));
        assert!(!extent.contains(Vec2::new(0.5, 0.6)));
    }
}
