//! Why a picture could not become a frame.

use crate::{files::ReadError, units::reason};
use std::path::PathBuf;

/// Why a picture could not become a frame.
#[derive(Debug, thiserror::Error)]
pub enum FrameError {
    /// The file could not be read at all.
    #[error("the picture cannot be read: {}", reason(.0))]
    Unreadable(#[from] std::io::Error),
    /// It is no file, too large a one, or lies where its yard may not look.
    #[error("the picture {0}")]
    Unopened(#[from] ReadError),
    /// The bytes are no picture, or a kind or a damage the decoders do not take.
    #[error("the picture cannot be decoded: {0}")]
    Undecodable(#[from] image::ImageError),
    /// One side is zero.
    #[error("the picture is {width} by {height} texels and so has nothing to show")]
    Empty {
        /// Texels across.
        width: u32,
        /// Texels down.
        height: u32,
    },
    /// More texels than a frame may have.
    #[error(
        "the picture is {width} by {height} texels, more than the {} megapixels a frame may have; make it smaller",
        super::frame::MOST_TEXELS / 1_000_000
    )]
    TooLarge {
        /// Texels across.
        width: u32,
        /// Texels down.
        height: u32,
    },
    /// It would take more memory than a picture may.
    #[error(
        "the picture is {width} by {height} texels, which takes {megabytes} MB to open where {} are the most; make it smaller",
        super::decode::MOST_MEMORY >> 20
    )]
    TooMuch {
        /// Texels across.
        width: u32,
        /// Texels down.
        height: u32,
        /// Memory that it would take, MB.
        megabytes: u64,
    },
    /// The buffer's length does not fit the size it came with.
    #[error("a picture of {width} by {height} texels was given {given} values where {wanted} belong")]
    Length {
        /// Texels across.
        width: u32,
        /// Texels down.
        height: u32,
        /// Values handed over.
        given: usize,
        /// Values the size calls for.
        wanted: usize,
    },
    /// A value is not a number, or is infinite.
    #[error("the picture has a value that is not a finite number at column {column}, row {row}")]
    NotFinite {
        /// Column of the first such texel, from the left, from zero.
        column: u32,
        /// Its row, from the top, from zero.
        row: u32,
    },
    /// Any of the above, met while loading a file.
    #[error("{fault}: {}", path.display())]
    File {
        /// What was wrong.
        #[source]
        fault: Box<FrameError>,
        /// The file it was wrong with.
        path: PathBuf,
    },
}
