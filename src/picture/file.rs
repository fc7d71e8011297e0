//! Stills in files: PNG as developed, EXR as linear cd/m².

use super::{Develop, Still};
use crate::{
    files::{self, Kept, WriteError},
    light::Rgb,
};
use image::{DynamicImage, ImageBuffer, ImageFormat, Rgb32FImage, RgbImage};
use std::{
    io::Cursor,
    path::{Path, PathBuf},
};

/// Why a still cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum PictureError {
    /// An ending that is neither PNG nor EXR.
    #[error("a still is a .png (as seen) or an .exr (linear cd/m²), not {0}")]
    Ending(PathBuf),
    /// The picture could not be made into a file.
    #[error("cannot write the still: {0}")]
    Encode(#[from] image::ImageError),
    /// The file could not be written.
    #[error("cannot write the still: {0}")]
    Write(#[from] WriteError),
}

/// Whether a still can come to be written there: its ending, and a place that takes a file. Asked before the work is done.
pub fn can_write(path: &Path) -> Result<(), PictureError> {
    // Of a folder its ending is not what is wrong.
    if !matches!(ending(path).as_str(), "png" | "exr") && !path.is_dir() {
        return Err(PictureError::Ending(path.to_owned()));
    }
    Ok(files::check(path, &Kept::none())?)
}

/// Writes a still by the ending of its name, but over none of these files.
pub fn write(still: &Still, develop: Develop, path: &Path, kept: &Kept) -> Result<(), PictureError> {
    match ending(path).as_str() {
        "png" => write_codes(still, |luminance| develop.codes(luminance), path, kept),
        "exr" => {
            let values = still.luminance.iter().flat_map(|l| l.to_array()).collect();
            let picture: Rgb32FImage = ImageBuffer::from_raw(still.width, still.height, values).unwrap_or_default();
            Ok(files::write(path, &encoded(picture, ImageFormat::OpenExr)?, kept)?)
        }
        _ => Err(PictureError::Ending(path.to_owned())),
    }
}

/// Writes a still as PNG, each luminance by its 8-bit sRGB codes, but over none of these files.
pub fn write_codes(
    still: &Still,
    codes: impl Fn(Rgb) -> [u8; 3],
    path: &Path,
    kept: &Kept,
) -> Result<(), PictureError> {
    let codes = still.luminance.iter().flat_map(|&luminance| codes(luminance)).collect();
    let picture: RgbImage = ImageBuffer::from_raw(still.width, still.height, codes).unwrap_or_default();
    Ok(files::write(path, &encoded(picture, ImageFormat::Png)?, kept)?)
}

/// The bytes of a picture's file: the whole of it, before the disk is touched.
pub fn encoded(picture: impl Into<DynamicImage>, format: ImageFormat) -> Result<Vec<u8>, image::ImageError> {
    let mut bytes = Cursor::new(Vec::new());
    picture.into().write_to(&mut bytes, format)?;
    Ok(bytes.into_inner())
}

fn ending(path: &Path) -> String {
    path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_ascii_lowercase()
}
