//! The drawn pictures carried inside the program, so that it works from any folder.

/// Every built-in picture: its name and its PNG.
const PICTURES: [(&str, &[u8]); 5] = [
    ("owl_face", include_bytes!("../../assets/frames/owl_face.png")),
    ("owl_glide", include_bytes!("../../assets/frames/owl_glide.png")),
    ("owl_wall", include_bytes!("../../assets/frames/owl_wall.png")),
    ("guardian", include_bytes!("../../assets/frames/guardian.png")),
    ("gourds", include_bytes!("../../assets/frames/gourds.png")),
];

/// The PNG of a built-in picture.
pub fn builtin(name: &str) -> Option<&'static [u8]> {
    PICTURES.iter().find(|(known, _)| *known == name).map(|(_, png)| *png)
}

/// The names of the built-in pictures.
pub fn builtin_names() -> impl Iterator<Item = &'static str> {
    PICTURES.iter().map(|(name, _)| *name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frames::{Frame, Response};

    #[test]
    fn every_built_in_picture_is_a_bright_figure_on_black() {
        for name in builtin_names() {
            let frame = Frame::decode(builtin(name).unwrap(), Response::USUAL).unwrap();
            assert!(frame.peak >= 0.9, "{name} peaks at {}", frame.peak);
            assert!(frame.mean < 0.35, "{name} is {} on average", frame.mean);
            assert!(frame.figure.is_some());
            let full = &frame.levels[0];
            let (right, bottom) = (i64::from(full.width) - 1, i64::from(full.height) - 1);
            let sides = (0..=bottom).flat_map(|row| [(0, row), (right, row)]);
            for (column, row) in (0..=right).flat_map(|column| [(column, 0), (column, bottom)]).chain(sides) {
                assert_eq!(full.texel(column, row), glam::Vec3::ZERO, "{name} is cut off at {column}, {row}");
            }
        }
        assert!(builtin("no such picture").is_none());
    }
}
