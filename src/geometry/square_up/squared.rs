//! The squared-up picture of a stretch of wall.

use super::{SquareUp, SquareUpFault};
use crate::frames::Photo;
use glam::{DMat3, DVec2, DVec3};
use image::RgbaImage;

/// The most pixels on one side: as many as every graphics card takes as one picture.
pub(super) const MOST_SIDE: u32 = 8192;

/// A rectangle of wall, m: along from its left end, up from its foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Where it begins along the wall.
    pub left: f64,
    /// Where it ends along the wall.
    pub right: f64,
    /// Its lower edge.
    pub foot: f64,
    /// Its upper edge.
    pub top: f64,
}

impl Stretch {
    fn corners(&self) -> [DVec2; 4] {
        let Self { left, right, foot, top } = *self;
        [(left, foot), (right, foot), (right, top), (left, top)].map(DVec2::from)
    }
}

/// A stretch of wall as if seen straight on from infinitely far away: the same number of pixels to every metre.
#[derive(Clone, Debug, PartialEq)]
pub struct Squared {
    /// sRGB codes with straight alpha; where the photo does not reach, alpha is zero.
    pub picture: RgbaImage,
    /// What the picture shows: what was asked for, with its right and its lower edge moved out to whole pixels.
    pub stretch: Stretch,
    /// Pixels per metre of wall.
    pub pixels_per_metre: f64,
}

impl Squared {
    /// The place on the wall, m, of a place on the picture, px to the right and down from its upper left corner.
    pub fn wall_from_pixel(&self, pixel: DVec2) -> DVec2 {
        DVec2::new(
            self.stretch.left + pixel.x / self.pixels_per_metre,
            self.stretch.top - pixel.y / self.pixels_per_metre,
        )
    }

    /// The place on the picture, px, of a place on the wall, m.
    pub fn pixel_from_wall(&self, wall: DVec2) -> DVec2 {
        DVec2::new(wall.x - self.stretch.left, self.stretch.top - wall.y) * self.pixels_per_metre
    }
}

impl SquareUp {
    /// The squared-up picture of a stretch of wall, at so many pixels per metre.
    ///
    /// Each pixel is the mean light of what it covers of the photo. What stands before the wall or behind it (sills,
    /// eaves, a porch) is squared up as if it were painted on the wall, and so lies askew.
    ///
    /// # Errors
    ///
    /// Where the stretch is none, runs past the camera or is not on the photo, and where the picture would have no
    /// pixel or too many.
    pub fn squared(&self, photo: &Photo, stretch: Stretch, pixels_per_metre: f64) -> Result<Squared, SquareUpFault> {
        let (width, height) = (stretch.right - stretch.left, stretch.top - stretch.foot);
        // Not a number is neither more nor less, and so is refused as well.
        if !(width > 0.0 && height > 0.0 && width.is_finite() && height.is_finite()) {
            return Err(SquareUpFault::Stretch);
        }
        if !(pixels_per_metre > 0.0 && pixels_per_metre.is_finite()) {
            return Err(SquareUpFault::Scale { pixels_per_metre });
        }
        // A rounding error must not add a row.
        let pixels = |metres: f64| (metres * pixels_per_metre - 1e-6).ceil();
        let (columns, rows) = (pixels(width), pixels(height));
        let most = f64::from(MOST_SIDE);
        if columns.max(rows) > most {
            return Err(SquareUpFault::TooLarge { columns, rows, most: most / width.max(height) });
        }
        if width.min(height) * pixels_per_metre < 1.0 {
            return Err(SquareUpFault::TooSmall { least: 1.0 / width.min(height) });
        }
        let shown = Stretch {
            right: stretch.left + columns / pixels_per_metre,
            foot: stretch.top - rows / pixels_per_metre,
            ..stretch
        };
        // The third row changes evenly along the wall, so that it is least at a corner.
        if shown.corners().iter().any(|corner| self.photo_from_wall(*corner).is_none()) {
            return Err(SquareUpFault::PastTheCamera);
        }
        let metre = 1.0 / pixels_per_metre;
        let wall_from_picture = DMat3::from_cols(
            DVec3::new(metre, 0.0, 0.0),
            DVec3::new(0.0, -metre, 0.0),
            DVec3::new(shown.left, shown.top, 1.0),
        );
        let picture = photo.redrawn(columns as u32, rows as u32, self.photo_from_wall * wall_from_picture);
        if picture.pixels().all(|pixel| pixel.0[3] == 0) {
            return Err(SquareUpFault::Unseen);
        }
        Ok(Squared { picture, stretch: shown, pixels_per_metre })
    }
}
