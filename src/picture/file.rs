//! Stills in files: PNG as developed, EXR as linear cd/m².

use super::{Develop, Still};
use crate::{light::Rgb, units::reason};
use image::{ImageBuffer, ImageFormat, Rgb32FImage, RgbImage};
use std::path::{Path, PathBuf};

/// Why a still cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum PictureError {
    /// An ending that is neither PNG nor EXR.
    #[error("a still is a .png (as seen) or an .exr (linear cd/m²), not {0}")]
    Ending(PathBuf),
    /// No folder there.
    #[error("there is no folder for the still: {0}")]
    Folder(PathBuf),
    /// The file could not be written.
    #[error("cannot write the still: {}: {}", why(.0), .1.display())]
    Write(image::ImageError, PathBuf),
}

/// What went wrong, without the number that the system counts its reasons by.
fn why(error: &image::ImageError) -> String {
    match error {
        image::ImageError::IoError(error) => reason(error),
        other => other.to_string(),
    }
}

/// Whether a still can come to be written there: its ending, and a folder that exists. Asked before the work is done.
pub fn can_write(path: &Path) -> Result<(), PictureError> {
    let ending = path.extension().and_then(|e| e.to_str()).unwrap_or("").to_ascii_lowercase();
    if !matches!(ending.as_str(), "png" | "exr") {
        return Err(PictureError::Ending(path.to_owned()));
    }
    match path.parent().filter(|folder| !folder.as_os_str().is_empty() && !folder.is_dir()) {
        Some(folder) => Err(PictureError::Folder(folder.to_owned())),
        None => Ok(()),
    }
}

/// Writes a still by the ending of its name.
pub fn write(still: &Still, develop: Develop, path: &Path) -> Result<(), PictureError> {
    let ending = path.extension().and_then(|e| e.to_str()).unwrap_or("").to_ascii_lowercase();
    let failed = |error| PictureError::Write(error, path.to_owned());
    match ending.as_str() {
        "png" => write_codes(still, |luminance| develop.codes(luminance), path),
        "exr" => {
            let values = still.luminance.iter().flat_map(|l| l.to_array()).collect();
            let picture: Rgb32FImage = ImageBuffer::from_raw(still.width, still.height, values).unwrap_or_default();
            picture.save_with_format(path, ImageFormat::OpenExr).map_err(failed)
        }
        _ => Err(PictureError::Ending(path.to_owned())),
    }
}

/// Writes a still as PNG, each luminance by its 8-bit sRGB codes.
pub fn write_codes(still: &Still, codes: impl Fn(Rgb) -> [u8; 3], path: &Path) -> Result<(), PictureError> {
    let codes = still.luminance.iter().flat_map(|&luminance| codes(luminance)).collect();
    let picture: RgbImage = ImageBuffer::from_raw(still.width, still.height, codes).unwrap_or_default();
    picture.save_with_format(path, ImageFormat::Png).map_err(|error| PictureError::Write(error, path.to_owned()))
}
