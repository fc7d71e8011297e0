//! Pictures that are none: missing, black, transparent.

use super::Lit;
use gauzelight::{
    frames::{Frame, Picture, Response, Shelf},
    judge::findings::{Case, Finding, Level, Matter, judge},
    light::Night,
    scene::{Catalogue, Yard},
};
use std::{path::Path, sync::Arc};

const YARD: &str = r#"(
    name: "pictures",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.6, 0), target: "wall", content: (picture: "void.png"))],
)"#;

/// What is found of the picture where four texels of it have this code.
fn found(code: [u8; 4]) -> Option<Finding> {
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(YARD, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    let mut shelf = Shelf::beside(Path::new(""));
    let frame = Frame::from_rgba8(2, 2, &code.repeat(4), Response::SRGB).unwrap();
    shelf.pictures.insert("void.png".to_owned(), Arc::new(Picture::linear(Arc::new(frame))));
    let night = Night::build(&yard, &catalogue, &shelf).unwrap();
    let case = Case::of(&yard, &catalogue, &night);
    assert!(!case.reading(0).unwrap().picture_missing);
    judge(&case).into_iter().find(|finding| finding.matter == Matter::NoPicture)
}

#[test]
fn a_black_and_a_transparent_picture_are_found_and_a_dim_one_is_not() {
    for code in [[0, 0, 0, 255], [255, 255, 255, 0], [12, 12, 12, 255]] {
        let finding = found(code).unwrap_or_else(|| panic!("{code:?}"));
        assert!(finding.level == Level::Fix && finding.number < finding.limit, "{finding:?}");
    }
    // 40 of 255 is 2.1 % of white (IEC 61966-2-1).
    assert!(found([40, 40, 40, 255]).is_none());
}

#[test]
fn a_missing_picture_is_found_and_marked() {
    let lit = Lit::parse(YARD);
    let case = lit.case();
    assert!(case.reading(0).unwrap().picture_missing && lit.night.lacks_picture(0));
    let found = judge(&case).into_iter().find(|finding| finding.matter == Matter::NoPicture).unwrap();
    assert!(found.of == "one" && found.number == 0.0, "{found:?}");
}
