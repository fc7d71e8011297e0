//! The pictures of "Owl Night at Tern Lane", drawn by rule and by seeded chance.
//!
//! Each is a lit figure on a ground of true black, because a projector can add light to a surface but cannot
//! take any away. Drawing one twice gives the same picture, so the PNGs that go with the program can be held
//! against the code that made them.

mod canvas;
mod carving;
mod curve;
mod down;
mod field;
mod gourds;
mod guardian;
mod guardian_face;
mod guardian_hands;
mod lantern;
mod noise;
mod owl_face;
mod owl_glide;
mod owl_head;
mod owl_wall;
mod plume;
mod reeds;
mod seed;
mod tone;
mod wing;

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder, ImageResult};
use tiny_skia::Pixmap;

/// What draws a picture, full size and opaque.
pub type Drawing = fn() -> Pixmap;

/// Every drawing: its name and what draws it.
pub const ALL: &[(&str, Drawing)] = &[
    ("owl_face", owl_face::draw),
    ("owl_glide", owl_glide::draw),
    ("owl_wall", owl_wall::draw),
    ("guardian", guardian::draw),
    ("gourds", gourds::draw),
];

/// The PNG of a drawing, drawn anew; nothing if there is none of that name.
pub fn png(name: &str) -> Option<ImageResult<Vec<u8>>> {
    let (_, draw) = ALL.iter().find(|(known, _)| *known == name)?;
    Some(encode(&draw()))
}

/// A drawing as the smallest PNG that any of the encoder's filters gives. Its ground is opaque, so alpha is left out.
fn encode(picture: &Pixmap) -> ImageResult<Vec<u8>> {
    let codes: Vec<u8> = picture.pixels().iter().flat_map(|texel| [texel.red(), texel.green(), texel.blue()]).collect();
    let mut smallest: Option<Vec<u8>> = None;
    for filter in [FilterType::Adaptive, FilterType::NoFilter, FilterType::Sub, FilterType::Up, FilterType::Paeth] {
        let mut bytes = Vec::new();
        PngEncoder::new_with_quality(&mut bytes, CompressionType::Best, filter).write_image(
            &codes,
            picture.width(),
            picture.height(),
            ExtendedColorType::Rgb8,
        )?;
        if smallest.as_ref().is_none_or(|least| bytes.len() < least.len()) {
            smallest = Some(bytes);
        }
    }
    Ok(smallest.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frames::builtin;
    use rayon::prelude::*;

    #[test]
    fn every_drawing_drawn_again_is_the_picture_that_is_carried() {
        ALL.par_iter().for_each(|(name, draw)| {
            let carried = image::load_from_memory(builtin(name).unwrap()).unwrap().into_rgb8();
            let drawn = draw();
            assert_eq!((drawn.width(), drawn.height()), carried.dimensions(), "{name}");
            for (texel, pixel) in drawn.pixels().iter().zip(carried.pixels()) {
                assert_eq!([texel.red(), texel.green(), texel.blue()], pixel.0, "{name}");
            }
        });
    }

    #[test]
    fn a_name_that_is_no_drawing_has_no_png() {
        assert!(png("no such drawing").is_none());
    }
}
