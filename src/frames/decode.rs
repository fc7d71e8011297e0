//! Picture files and their bytes, turned to linear light.

use super::frame::check_size;
use super::{Frame, FrameError, Response};
use glam::Vec3;
use image::{DynamicImage, ImageDecoder, ImageReader};
use std::io::Cursor;

impl Frame {
    /// A frame from the bytes of a picture file, of the kinds that [`Picture::load`](super::Picture::load) takes, as a projector
    /// of this response throws it.
    pub fn decode(bytes: &[u8], response: Response) -> Result<Frame, FrameError> {
        Self::of_image(upright(bytes)?, response)
    }

    /// The same of a decoded picture.
    pub(super) fn of_image(picture: DynamicImage, response: Response) -> Result<Frame, FrameError> {
        let (width, height) = (picture.width(), picture.height());
        match picture {
            picture if is_linear(&picture) => {
                // Float files hold linear light already. EXR's alpha is already multiplied in, so it needs no second time.
                let light = picture.into_rgb32f().pixels().map(|texel| Vec3::from(texel.0)).collect();
                let frame = Frame::from_linear(width, height, light)?;
                Ok(if response.colour_light == 1.0 { frame } else { frame.answered(response) })
            }
            DynamicImage::ImageLuma16(_)
            | DynamicImage::ImageLumaA16(_)
            | DynamicImage::ImageRgb16(_)
            | DynamicImage::ImageRgba16(_) => {
                let light = picture.into_rgba16().pixels().map(|texel| linear16(texel.0, response)).collect();
                Frame::from_linear(width, height, light)
            }
            _ => Frame::from_rgba8(width, height, &picture.into_rgba8(), response),
        }
    }
}

/// Whether a picture is linear light rather than codes.
pub(super) fn is_linear(picture: &DynamicImage) -> bool {
    matches!(picture, DynamicImage::ImageRgb32F(_) | DynamicImage::ImageRgba32F(_))
}

/// The picture that a file holds, turned the way it is meant to be looked at, if its size is one that a frame may have.
pub(super) fn upright(bytes: &[u8]) -> Result<DynamicImage, FrameError> {
    let mut decoder = ImageReader::new(Cursor::new(bytes)).with_guessed_format()?.into_decoder()?;
    let (width, height) = decoder.dimensions();
    check_size(width, height)?;
    // Cameras store a turned picture and a note to turn it back.
    let orientation = decoder.orientation()?;
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(orientation);
    Ok(picture)
}

/// Linear light, over black, of sixteen-bit codes.
fn linear16([red, green, blue, alpha]: [u16; 4], response: Response) -> Vec3 {
    let part = |code: u16| f32::from(code) / f32::from(u16::MAX);
    let rgb = Vec3::new(part(red), part(green), part(blue)).map(|signal| response.transfer.to_linear(signal));
    response.colour(rgb) * part(alpha)
}

#[cfg(test)]
mod tests {
    use super::*;
    use image::{ImageBuffer, ImageFormat, Rgb, Rgba};

    fn encoded(picture: DynamicImage, format: ImageFormat) -> Vec<u8> {
        let mut bytes = Cursor::new(Vec::new());
        picture.write_to(&mut bytes, format).unwrap();
        bytes.into_inner()
    }

    #[test]
    fn eight_and_sixteen_bit_codes_give_the_same_light() {
        let small = ImageBuffer::from_pixel(3, 2, Rgba([128u8, 64, 255, 255]));
        let large = ImageBuffer::from_pixel(3, 2, Rgba([128u16 * 257, 64 * 257, 65535, 65535]));
        let small = Frame::decode(&encoded(small.into(), ImageFormat::Png), Response::SRGB).unwrap();
        let large = Frame::decode(&encoded(large.into(), ImageFormat::Png), Response::SRGB).unwrap();
        assert!((small.mean - large.mean).abs() < 1e-5);
        assert!(small.sample(0.5, 0.5, 0.0).abs_diff_eq(Vec3::new(0.215_86, 0.051_27, 1.0), 2e-4));
    }

    #[test]
    fn float_files_are_linear_already_and_cut_off_at_white() {
        let picture = ImageBuffer::from_pixel(2, 2, Rgb([0.18f32, -1.0, 4.0]));
        let frame = Frame::decode(&encoded(picture.into(), ImageFormat::OpenExr), Response::USUAL).unwrap();
        assert!(frame.sample(0.5, 0.5, 0.0).abs_diff_eq(Vec3::new(0.18, 0.0, 1.0), 2e-4));
    }

    #[test]
    fn a_float_file_with_a_hole_is_refused() {
        let picture = ImageBuffer::from_pixel(2, 2, Rgb([f32::NAN, 0.0, 0.0]));
        let fault = Frame::decode(&encoded(picture.into(), ImageFormat::OpenExr), Response::USUAL).unwrap_err();
        assert!(matches!(fault, FrameError::NotFinite { .. }), "{fault}");
    }

    #[test]
    fn bytes_that_are_no_picture_are_refused() {
        assert!(matches!(Frame::decode(b"not a picture", Response::USUAL), Err(FrameError::Undecodable(_))));
    }
}
