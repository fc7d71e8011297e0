//! Squaring up a photo: from a few known places on a wall to measuring anywhere on it.
//!
//! A camera without lens distortion takes a flat wall to its photo by a projective map of three by three numbers, eight
//! of which count; so four places that are known on both settle it, and every further one tells how well it fits.
//! A wide lens bends straight lines, which no such map can undo: it shows as marks that do not agree.
//!
//! Places on the photo are in pixels, to the right and down from the upper left corner of the upright picture (the
//! middle of its first pixel is at 0.5, 0.5). Places on the wall are in metres, along the wall from its left end and
//! up from its foot.

mod fault;
mod fit;
mod mark;
mod solve;
mod squared;

pub use fault::{SquareUpFault, Where};
pub use fit::{Fit, Miss, Suspect};
pub use mark::Mark;
pub use squared::{Squared, Stretch};

use glam::{DMat3, DVec2, DVec3};

/// A photo's wall, settled: the map from the wall to the photo and back.
#[derive(Clone, Debug, PartialEq)]
pub struct SquareUp {
    /// Its third row is how far a place on the wall is from the camera, that of the middle of the marks being 1.
    photo_from_wall: DMat3,
    wall_from_photo: DMat3,
    fit: Fit,
}

impl SquareUp {
    /// Settles the map from marks: four, or more for a better map and a check of it. With more than four, the map is
    /// the one whose misses on the photo, squared, add up to the least (the clicks are taken to be what is unsure).
    ///
    /// # Errors
    ///
    /// Where the marks cannot settle a map, or no camera could have seen them so.
    pub fn new(marks: &[Mark]) -> Result<Self, SquareUpFault> {
        mark::check(marks)?;
        let photo_from_wall = solve::photo_from_wall(marks).ok_or(SquareUpFault::Crossed { swapped: None })?;
        let wall_from_photo = photo_from_wall.inverse();
        if !wall_from_photo.is_finite() {
            return Err(SquareUpFault::Crossed { swapped: None });
        }
        let mut square_up = Self { photo_from_wall, wall_from_photo, fit: Fit::default() };
        square_up.fit = Fit::new(&square_up, marks).ok_or(SquareUpFault::Crossed { swapped: None })?;
        Ok(square_up)
    }

    /// Where on the photo, in pixels, a place on the wall, in metres, is; none beside or behind the camera. It need not
    /// lie inside the picture.
    pub fn photo_from_wall(&self, wall: DVec2) -> Option<DVec2> {
        project(self.photo_from_wall, wall)
    }

    /// Where on the wall, in metres, a place on the photo, in pixels, is; none on the wall's horizon and beyond it.
    pub fn wall_from_photo(&self, photo: DVec2) -> Option<DVec2> {
        project(self.wall_from_photo, photo)
    }

    /// How well the marks agree.
    pub fn fit(&self) -> &Fit {
        &self.fit
    }

    /// How finely the photo shows a place on the wall: pixels per metre, the geometric mean over all directions; none
    /// beside or behind the camera. A squared-up picture finer than this is no sharper.
    ///
    /// The square root of the area that the map gives a square metre, |det H| / w³ with w the third row at the place.
    pub fn pixels_per_metre(&self, wall: DVec2) -> Option<f64> {
        let w = (self.photo_from_wall * wall.extend(1.0)).z;
        (w > 0.0).then(|| (self.photo_from_wall.determinant().abs() / w.powi(3)).sqrt())
    }
}

/// The place that a projective map takes a place to; none where the map's third row is not positive.
fn project(map: DMat3, place: DVec2) -> Option<DVec2> {
    let DVec3 { x, y, z } = map * place.extend(1.0);
    let found = DVec2::new(x, y) / z;
    (z > 0.0 && found.is_finite()).then_some(found)
}
