//! The owner's own catalogue: what is in it comes back, and what is wrong in it is told where it stands.

use gauzelight::scene::{Catalogue, OwnCatalogue, SaveError, Severity, Yard};
use std::fs;

const GOOD: &str = include_str!("seeds/own/own.ron");

fn good() -> OwnCatalogue {
    OwnCatalogue::parse(GOOD, "own.ron").unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn what_is_saved_comes_back_and_saving_twice_changes_no_byte() {
    let own = good();
    let text = own.to_text();
    let again = OwnCatalogue::parse(&text, "own.ron").unwrap();
    assert_eq!(own, again);
    assert_eq!(text, again.to_text());
    assert!(text.contains("nearest: \"4 ft\""), "{text}");
    ron::from_str::<serde::de::IgnoredAny>(&text).unwrap();
    assert_eq!(OwnCatalogue::default().to_text(), "OwnCatalogue(\n    format: 1,\n)\n");
    assert_eq!(OwnCatalogue::parse("()", "own.ron").unwrap(), OwnCatalogue::default());
}

#[test]
fn a_file_is_saved_as_yards_are() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("own.ron");
    assert!(OwnCatalogue::open(&path).unwrap_err().to_string().contains("cannot be read"));
    assert!(OwnCatalogue::open(folder.path()).unwrap_err().to_string().contains("an own catalogue file"));

    assert_eq!(good().save(&path).unwrap().kept, None);
    assert_eq!(OwnCatalogue::open(&path).unwrap(), good());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "nothing is left beside it");

    fs::write(&path, format!("// mine\n{GOOD}")).unwrap();
    let kept = good().save(&path).unwrap().kept.unwrap();
    assert!(fs::read_to_string(kept).unwrap().starts_with("// mine"));

    let before = fs::read(&path).unwrap();
    let mut broken = good();
    broken.surfaces[0].doubt = f64::NAN;
    let error = broken.save(&path).unwrap_err();
    assert!(matches!(error, SaveError::Unreadable(..)) && error.to_string().contains("own catalogue"), "{error}");
    assert_eq!(fs::read(&path).unwrap(), before);
}

/// What is replaced, what is put there, what must be said, and the line that it must be said of.
const BROKEN: &[(&str, &str, &str, usize)] = &[
    ("format: 1", "format: 2", "this own catalogue is written in format 2, which is newer", 2),
    ("format: 1", "format: 0", "there is no format 0", 2),
    ("OwnCatalogue(", "Catalogue(", "write OwnCatalogue(…)", 1),
    ("surfaces:", "surface:", "did you mean “surfaces”?", 3),
    ("reflectance: (0.5, 0.4, 0.3)", "reflectance: 1.5", "from 0 to 1", 3),
    ("doubt: 0.1", "doubt: 3", "0.2 means ±20 %", 3),
    ("thread: 0.15", "thread: 0.99", "0.99 is out of range", 5),
    ("source: Measured", "source: Mesured", "did you mean “Measured”?", 5),
    ("diffuse: 0.3)),\n        (", "diffuse: 0.6)),\n        (", "more light than came", 5),
    ("name: \"white tulle\"", "name: \"attic net\"", "is the name of fabrics[0] already", 6),
    ("kind: Cloth(", "kind: Felt(", "Net, Cloth or Film", 6),
    ("typical: 90, high", "typical: 190, high", "out of order", 13),
    ("pixels: (854, 480)", "pixels: (854, 0)", "854 by 0 pixels", 14),
    ("throw_ratio: 1.5", "throw_ratio: 150", "from 0.1 to 20", 15),
    ("nearest: \"4 ft\"", "nearest: \"4 yd\"", "“yd” is not a unit", 16),
    ("half_deg: 30", "half_deg: 120", "from 1 to 89 degrees", 19),
    ("name: \"porch bulb\"", "name: \"\"", "this name is empty", 19),
    ("lamp_kinds: [", "stations: [], lamp_kinds: [", "its fields: format, surfaces", 19),
];

#[test]
fn a_broken_own_catalogue_is_told_at_its_place() {
    let mut wrong = String::new();
    for (find, put, says, line) in BROKEN {
        assert_eq!(GOOD.matches(find).count(), 1, "“{find}” must stand in the good file once");
        match OwnCatalogue::parse(&GOOD.replace(find, put), "own.ron") {
            Ok(_) => wrong += &format!("“{put}” was read\n"),
            Err(faults) => {
                let told = faults.iter().any(|fault| {
                    fault.severity == Severity::Error
                        && fault.to_string().contains(says)
                        && faults.line_and_column(fault).is_some_and(|(at, _)| at == *line)
                });
                if !told || faults.len() != 1 {
                    wrong += &format!("“{put}” should say “{says}” of line {line}; said:\n{}\n", faults.plain());
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong}");
    let empty = OwnCatalogue::parse(" ", "own.ron").unwrap_err().to_string();
    assert!(empty.contains("an own catalogue begins with OwnCatalogue("), "{empty}");
}

#[test]
fn all_faults_show_at_once() {
    let text = GOOD.replace("doubt: 0.1", "doubt: 3").replace("throw_ratio: 1.5", "throw_ratio: 150");
    assert_eq!(OwnCatalogue::parse(&text, "own.ron").unwrap_err().len(), 2);
}

#[test]
fn what_one_owns_comes_first_and_in_the_place_of_its_namesake() {
    let builtin = Catalogue::builtin();
    let count = builtin.fabrics.len();
    let both = builtin.clone().with_own(good());
    assert_eq!(both.fabrics.len(), count + 1);
    assert_eq!(both.fabrics[..2], good().fabrics[..]);
    assert_eq!(both.fabric("white tulle"), good().fabrics.get(1));
    assert_eq!(both.projectors[1..], builtin.projectors[..]);
    assert_eq!(both.pictures, builtin.pictures);
    assert!(both.check().is_empty(), "{}", both.check());
    assert_eq!(builtin.clone().with_own(OwnCatalogue::default()), builtin);

    let yard = r#"(name: "x", cloths: [(name: "net", fabric: "attic net", at: (0, 2, 0), width: 1, height: 1)])"#;
    Yard::parse(yard, "x.ron", &both).unwrap();
    assert!(Yard::parse(yard, "x.ron", &builtin).is_err());
}
