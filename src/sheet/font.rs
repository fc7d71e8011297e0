//! The sheet's font: how wide a text is, and what stands for a character that the font lacks.

use super::Weight;
use std::sync::LazyLock;
use ttf_parser::{Face, GlyphId};

/// The files of the two faces.
pub(super) const REGULAR: &[u8] = include_bytes!("../../assets/fonts/NotoSans-Regular.ttf");
pub(super) const BOLD: &[u8] = include_bytes!("../../assets/fonts/NotoSans-Bold.ttf");

/// What stands for a character that the font lacks.
const LOST: char = '\u{FFFD}';

/// The two faces; `None` only were a file not a font, which a test rules out.
static FACES: LazyLock<[Option<Face<'static>>; 2]> =
    LazyLock::new(|| [REGULAR, BOLD].map(|file| Face::parse(file, 0).ok()));

/// A face.
pub(super) fn face(weight: Weight) -> Option<&'static Face<'static>> {
    FACES[weight as usize].as_ref()
}

/// The glyph of a character; glyph 0 for one that the font lacks.
pub(super) fn glyph(face: &Face, character: char) -> GlyphId {
    face.glyph_index(character).unwrap_or(GlyphId(0))
}

/// The text with every character that the font lacks replaced; those are put on the list. Line breaks become spaces.
pub(super) fn kept(text: &str, lost: &mut Vec<char>) -> String {
    let has = |c: char| {
        [Weight::Regular, Weight::Bold].into_iter().all(|w| face(w).is_some_and(|f| f.glyph_index(c).is_some()))
    };
    text.chars()
        .map(|c| match c {
            c if c.is_whitespace() => ' ',
            c if has(c) => c,
            c => {
                lost.push(c);
                LOST
            }
        })
        .collect()
}

/// Width of a text, points.
pub(super) fn width(text: &str, size: f64, weight: Weight) -> f64 {
    let Some(face) = face(weight) else { return 0.0 };
    let units: u32 = text.chars().map(|c| u32::from(face.glyph_hor_advance(glyph(face, c)).unwrap_or(0))).sum();
    f64::from(units) / f64::from(face.units_per_em()) * size
}

/// A text broken into lines no wider than `room`: between words, and within a word that is wider than a line.
pub(super) fn wrapped(text: &str, size: f64, weight: Weight, room: f64) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let with = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if width(&with, size, weight) <= room {
            line = with;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for character in word.chars() {
            line.push(character);
            if width(&line, size, weight) > room && line.chars().count() > 1 {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(character);
            }
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_faces_are_fonts_and_have_what_the_sheet_says() {
        for weight in [Weight::Regular, Weight::Bold] {
            let face = face(weight).unwrap();
            for character in "AZaz09äßéłřŞΩλЖя°′″½×–—“”’·±²�".chars() {
                assert!(face.glyph_index(character).is_some(), "{character}");
            }
        }
    }

    #[test]
    fn what_the_font_lacks_is_replaced_and_told() {
        let mut lost = Vec::new();
        assert_eq!(kept("owl 猫\tnight", &mut lost), "owl \u{FFFD} night");
        assert_eq!(lost, ['猫']);
    }

    #[test]
    fn no_line_is_wider_than_its_room() {
        let text = "a word and averyveryveryveryveryveryverylongwordindeed and more";
        for line in wrapped(text, 10.0, Weight::Regular, 60.0) {
            assert!(width(&line, 10.0, Weight::Regular) <= 60.0, "{line}");
        }
    }
}
