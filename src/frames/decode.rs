//! Picture files and their bytes, turned to linear light.

use super::frame::{LONGEST_SIDE, check_size};
use super::level::Plane;
use super::{Frame, FrameError, Response};
use glam::Vec3;
use image::{DynamicImage, ImageDecoder, ImageReader, Limits};
use std::io::Cursor;

/// Memory that a picture may take on its way from a file to light, bytes: a camera's 50 megapixels, on a small old computer.
pub(super) const MOST_MEMORY: u64 = 512 << 20;

impl Frame {
    /// A frame from the bytes of a picture file, of the kinds that [`Picture::load`](super::Picture::load) takes, as a projector
    /// of this response throws it.
    pub fn decode(bytes: &[u8], response: Response) -> Result<Frame, FrameError> {
        Self::of_image(upright(bytes)?, response)
    }

    /// The same of a decoded picture.
    pub(super) fn of_image(picture: DynamicImage, response: Response) -> Result<Frame, FrameError> {
        let (width, height) = (picture.width(), picture.height());
        check_size(width, height)?;
        let table = response.transfer.table();
        let eight = |[red, green, blue, alpha]: [u8; 4]| {
            let linear = |code: u8| table[usize::from(code)];
            response.colour(Vec3::new(linear(red), linear(green), linear(blue))) * (f32::from(alpha) / 255.0)
        };
        let sixteen = |codes: [u16; 4]| linear16(codes, response);
        Ok(match &picture {
            picture if is_linear(picture) => return Self::of_light(picture.to_rgb32f(), response),
            DynamicImage::ImageLuma8(p) => Self::of_texels(width, height, |x, y| {
                let [grey] = p.get_pixel(x, y).0;
                eight([grey, grey, grey, u8::MAX])
            }),
            DynamicImage::ImageLumaA8(p) => Self::of_texels(width, height, |x, y| {
                let [grey, alpha] = p.get_pixel(x, y).0;
                eight([grey, grey, grey, alpha])
            }),
            DynamicImage::ImageRgb8(p) => Self::of_texels(width, height, |x, y| {
                let [red, green, blue] = p.get_pixel(x, y).0;
                eight([red, green, blue, u8::MAX])
            }),
            DynamicImage::ImageRgba8(p) => Self::of_texels(width, height, |x, y| eight(p.get_pixel(x, y).0)),
            DynamicImage::ImageLuma16(p) => Self::of_texels(width, height, |x, y| {
                let [grey] = p.get_pixel(x, y).0;
                sixteen([grey, grey, grey, u16::MAX])
            }),
            DynamicImage::ImageLumaA16(p) => Self::of_texels(width, height, |x, y| {
                let [grey, alpha] = p.get_pixel(x, y).0;
                sixteen([grey, grey, grey, alpha])
            }),
            DynamicImage::ImageRgb16(p) => Self::of_texels(width, height, |x, y| {
                let [red, green, blue] = p.get_pixel(x, y).0;
                sixteen([red, green, blue, u16::MAX])
            }),
            DynamicImage::ImageRgba16(p) => Self::of_texels(width, height, |x, y| sixteen(p.get_pixel(x, y).0)),
            // A kind that the crate may learn one day.
            other => return Self::from_rgba8(width, height, &other.to_rgba8(), response),
        })
    }

    /// Float files hold linear light already. EXR's alpha is already multiplied in, so it needs no second time.
    fn of_light(light: image::Rgb32FImage, response: Response) -> Result<Frame, FrameError> {
        let (width, height) = light.dimensions();
        let light = light.pixels().map(|texel| Vec3::from(texel.0)).collect();
        let frame = Frame::from_linear(width, height, light)?;
        Ok(if response.colour_light == 1.0 { frame } else { frame.answered(response) })
    }

    /// A frame by its light; of a picture that is halved in any case the whole is never held as light.
    fn of_texels(width: u32, height: u32, texel: impl Fn(u32, u32) -> Vec3 + Sync) -> Frame {
        let is_large = width.max(height) > LONGEST_SIDE;
        Self::assemble(if is_large { Plane::halved_of(width, height, texel) } else { Plane::of(width, height, texel) })
    }
}

/// Whether a picture is linear light rather than codes.
pub(super) fn is_linear(picture: &DynamicImage) -> bool {
    matches!(picture, DynamicImage::ImageRgb32F(_) | DynamicImage::ImageRgba32F(_))
}

/// The picture that a file holds, turned the way it is meant to be looked at, if its size is one that a frame may have. Its size is
/// known before anything of it is decoded.
pub(super) fn upright(bytes: &[u8]) -> Result<DynamicImage, FrameError> {
    let mut reader = ImageReader::new(Cursor::new(bytes)).with_guessed_format()?;
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut decoder = reader.into_decoder()?;
    let (width, height) = decoder.dimensions();
    let memory = check_size(width, height)? as u64 * bytes_a_texel(decoder.color_type());
    if memory > MOST_MEMORY {
        return Err(FrameError::TooMuch { width, height, megabytes: memory >> 20 });
    }
    // Cameras store a turned picture and a note to turn it back.
    let orientation = decoder.orientation()?;
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(orientation);
    Ok(picture)
}

/// Memory that each texel takes at most while it is decoded, turned and made light, bytes: its picture twice over, and light of which
/// a quarter is kept for codes and all of it for floats.
fn bytes_a_texel(kind: image::ColorType) -> u64 {
    let own = u64::from(kind.bytes_per_pixel());
    let is_float = matches!(kind, image::ColorType::Rgb32F | image::ColorType::Rgba32F);
    2 * own + if is_float { 12 } else { 4 }
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
