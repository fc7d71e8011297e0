//! A photo that is measured on.

use super::decode::upright;
use super::frame::check_size;
use super::{FrameError, Picture, srgb};
use crate::files;
use glam::{DMat3, DVec2, DVec3, Vec3};
use image::{DynamicImage, RgbImage, RgbaImage};
use rayon::prelude::*;
use std::path::Path;

/// The most samples along one side of a new pixel: a new pixel that covers more of the photo than that takes every
/// second pixel of it, or fewer.
const MOST_SAMPLES: f64 = 64.0;

/// A photo at full size, upright, as eight-bit sRGB codes.
///
/// Places on it are in pixels, `x` to the right and `y` down from the upper left corner of the upright picture, so that
/// the middle of the first pixel is at (0.5, 0.5).
#[derive(Debug, Clone, PartialEq)]
pub struct Photo {
    picture: RgbImage,
}

impl Photo {
    /// A photo from a file of the kinds that [`super::Picture::load`] takes, turned as its camera noted.
    pub fn load(path: impl AsRef<Path>) -> Result<Photo, FrameError> {
        let path = path.as_ref();
        files::read(path, Picture::MOST_BYTES)
            .map_err(FrameError::from)
            .and_then(|bytes| Photo::decode(&bytes))
            .map_err(|fault| FrameError::File { fault: Box::new(fault), path: path.to_owned() })
    }

    /// A photo from the bytes of such a file. What alpha it has is ignored.
    pub fn decode(bytes: &[u8]) -> Result<Photo, FrameError> {
        let picture = match upright(bytes)? {
            // Float files hold linear light, which the crate would take for codes.
            picture @ (DynamicImage::ImageRgb32F(_) | DynamicImage::ImageRgba32F(_)) => {
                let light = picture.into_rgb32f();
                RgbImage::from_fn(light.width(), light.height(), |x, y| {
                    let [red, green, blue, _] = codes(Vec3::from(light.get_pixel(x, y).0));
                    image::Rgb([red, green, blue])
                })
            }
            picture => picture.into_rgb8(),
        };
        Ok(Photo { picture })
    }

    /// A photo from eight-bit sRGB codes, row by row from the top.
    pub fn from_rgb8(width: u32, height: u32, codes: Vec<u8>) -> Result<Photo, FrameError> {
        let wanted = check_size(width, height)? * 3;
        let given = codes.len();
        let picture = Some(codes).filter(|codes| codes.len() == wanted);
        picture
            .and_then(|codes| RgbImage::from_raw(width, height, codes))
            .map(|picture| Photo { picture })
            .ok_or(FrameError::Length { width, height, given, wanted })
    }

    /// Pixels across and down.
    pub fn size(&self) -> (u32, u32) {
        self.picture.dimensions()
    }

    /// Whether a place, in pixels, is on the photo.
    pub fn contains(&self, place: DVec2) -> bool {
        let (width, height) = self.size();
        (0.0..=f64::from(width)).contains(&place.x) && (0.0..=f64::from(height)).contains(&place.y)
    }

    /// The photo as eight-bit sRGB codes.
    pub fn picture(&self) -> &RgbImage {
        &self.picture
    }

    /// A new picture, each pixel of which shows the mean light of what it covers of the photo; `photo_from_new` takes
    /// places on the new picture to places on the photo, in pixels, its third row being positive where there is one.
    ///
    /// Alpha, which is straight, is the share of a pixel that is on the photo. Samples are taken bilinearly, a pixel of
    /// the photo apart at most.
    pub(crate) fn redrawn(&self, width: u32, height: u32, photo_from_new: DMat3) -> RgbaImage {
        let mut new = RgbaImage::new(width, height);
        // Four bytes a pixel; a row has at least one, as a chunk must.
        new.par_chunks_mut(width.max(1) as usize * 4).enumerate().for_each(|(row, line)| {
            for (column, pixel) in line.chunks_exact_mut(4).enumerate() {
                if let Some(shown) = self.mean(DVec2::new(column as f64, row as f64), photo_from_new) {
                    pixel.copy_from_slice(&shown);
                }
            }
        });
        new
    }

    /// What one new pixel shows; nothing where it is off the photo.
    fn mean(&self, corner: DVec2, photo_from_new: DMat3) -> Option<[u8; 4]> {
        let place = |x: f64, y: f64| project(photo_from_new, corner + DVec2::new(x, y));
        let corners = [place(0.0, 0.0)?, place(1.0, 0.0)?, place(0.0, 1.0)?, place(1.0, 1.0)?];
        let (low, high) = corners.iter().fold((corners[0], corners[0]), |(low, high), p| (low.min(*p), high.max(*p)));
        let (across, down) = self.size();
        if high.cmplt(DVec2::ZERO).any() || low.x > f64::from(across) || low.y > f64::from(down) {
            return None;
        }
        let [a, b, c, d] = corners;
        // A rounding error must not ask for twice as many.
        let samples = |one: f64, other: f64| (one.max(other) - 1e-6).ceil().clamp(1.0, MOST_SAMPLES) as u32;
        let (columns, rows) = (samples(a.distance(b), c.distance(d)), samples(a.distance(c), b.distance(d)));
        let (mut sum, mut inside) = (Vec3::ZERO, 0u32);
        for row in 0..rows {
            for column in 0..columns {
                let at =
                    place((f64::from(column) + 0.5) / f64::from(columns), (f64::from(row) + 0.5) / f64::from(rows))?;
                if self.contains(at) {
                    sum += self.sample(at);
                    inside += 1;
                }
            }
        }
        (inside > 0).then(|| {
            let [red, green, blue, _] = codes(sum / inside as f32);
            let alpha = f64::from(inside) / f64::from(rows * columns);
            [red, green, blue, (alpha * 255.0).round() as u8]
        })
    }

    /// The linear light at a place, from the four nearest pixels.
    fn sample(&self, place: DVec2) -> Vec3 {
        let at = place - 0.5;
        let corner = at.floor();
        let part = (at - corner).as_vec2();
        let (column, row) = (corner.x as i64, corner.y as i64);
        let above = self.light(column, row).lerp(self.light(column + 1, row), part.x);
        let below = self.light(column, row + 1).lerp(self.light(column + 1, row + 1), part.x);
        above.lerp(below, part.y)
    }

    /// The linear light of a pixel; past the edge, the edge's.
    fn light(&self, column: i64, row: i64) -> Vec3 {
        let (width, height) = self.size();
        let column = column.clamp(0, i64::from(width) - 1) as u32;
        let row = row.clamp(0, i64::from(height) - 1) as u32;
        Vec3::from(self.picture.get_pixel(column, row).0.map(srgb::decode8))
    }
}

/// The place that a projective map takes a place to; none where the map's third row is not positive.
fn project(map: DMat3, place: DVec2) -> Option<DVec2> {
    let DVec3 { x, y, z } = map * place.extend(1.0);
    (z > 0.0).then(|| DVec2::new(x, y) / z)
}

/// Eight-bit sRGB codes, with full alpha, of linear light.
fn codes(light: Vec3) -> [u8; 4] {
    let code = |part: f32| (srgb::from_linear(part.clamp(0.0, 1.0)) * 255.0).round() as u8;
    [code(light.x), code(light.y), code(light.z), 255]
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::codecs::jpeg::JpegEncoder;
    use image::{ExtendedColorType, ImageEncoder};

    /// Left half black, right half white.
    fn halves() -> Photo {
        let codes = (0..8 * 4).flat_map(|at| [if at % 8 < 4 { 0 } else { 255 }; 3]).collect();
        Photo::from_rgb8(8, 4, codes).unwrap()
    }

    #[test]
    fn unchanged_it_is_itself() {
        let new = halves().redrawn(8, 4, DMat3::IDENTITY);
        for (x, y, pixel) in new.enumerate_pixels() {
            let code = if x < 4 { 0 } else { 255 };
            assert_eq!(pixel.0, [code, code, code, 255], "{x} {y}");
        }
    }

    /// Half the light of white is code 188 of the standard (IEC 61966-2-1), not 128.
    #[test]
    fn what_a_pixel_covers_is_averaged_as_light() {
        let new = halves().redrawn(1, 1, DMat3::from_scale(DVec2::new(8.0, 4.0)));
        assert_eq!(new.get_pixel(0, 0).0, [188, 188, 188, 255]);
    }

    #[test]
    fn off_the_photo_nothing_shows_and_at_its_edge_a_part_does() {
        let moved = DMat3::from_translation(DVec2::new(-10.0, 0.0)) * DMat3::from_scale(DVec2::splat(4.0));
        let new = halves().redrawn(6, 2, moved);
        // New pixels start at -10, -6, -2, 2, 6 and 10 on the photo, which runs from 0 to 8.
        let alpha: Vec<u8> = (0..6).map(|x| new.get_pixel(x, 0).0[3]).collect();
        assert_eq!(alpha, [0, 0, 128, 255, 128, 0]);
        assert_eq!(new.get_pixel(0, 1).0, [0; 4]);
        assert_eq!(new.get_pixel(4, 0).0, [255, 255, 255, 128]);
    }

    #[test]
    fn behind_the_map_nothing_shows() {
        let behind = DMat3::from_diagonal(DVec3::new(1.0, 1.0, -1.0));
        assert!(halves().redrawn(8, 4, behind).pixels().all(|pixel| pixel.0 == [0; 4]));
    }

    /// A camera held upright stores the picture lying down, with the note 6: turn it a quarter to the right (EXIF 2.3,
    /// tag 274).
    #[test]
    fn a_turned_photo_comes_upright() {
        let mut bytes = Vec::new();
        let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 100);
        let mut exif = b"II*\0\x08\0\0\0\x01\0".to_vec();
        exif.extend([0x12, 1, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0, 0, 0, 0, 0]);
        encoder.set_exif_metadata(exif).unwrap();
        let stored: Vec<u8> = (0..32 * 16).flat_map(|at| [if at % 32 < 16 { 20 } else { 230 }; 3]).collect();
        encoder.write_image(&stored, 32, 16, ExtendedColorType::Rgb8).unwrap();
        let photo = Photo::decode(&bytes).unwrap();
        assert_eq!(photo.size(), (16, 32));
        // What was left is above.
        assert!(photo.picture().get_pixel(8, 4).0[0] < 40 && photo.picture().get_pixel(8, 28).0[0] > 210);
    }

    #[test]
    fn a_wrong_number_of_codes_is_refused() {
        assert!(matches!(Photo::from_rgb8(2, 2, vec![0; 3]), Err(FrameError::Length { wanted: 12, .. })));
        assert!(matches!(Photo::from_rgb8(0, 2, vec![]), Err(FrameError::Empty { .. })));
    }
}
