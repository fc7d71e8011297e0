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
    use crate::frames::Frame;

    #[test]
    fn every_built_in_picture_is_a_bright_figure_on_black() {
        for name in builtin_names() {
            let frame = Frame::decode(builtin(name).unwrap()).unwrap();
            assert!(frame.peak >= 0.9, "{name} peaks at {}", frame.peak);
            assert!(frame.mean < 0.35, "{name} is {} on average", frame.mean);
            assert!(frame.figure.is_some());
            for (u, v) in [(0.0, 0.0), (1.0, 0.0)] {
                assert_eq!(frame.sample(u, v, 0.0), glam::Vec3::ZERO, "{name} has a lit upper corner");
            }
        }
        assert!(builtin("no such picture").is_none());
    }
}
