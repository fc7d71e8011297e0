//! A station none of whose light lands on what it is meant for.

use crate::Lit;
use gauzelight::{
    judge::{
        findings::{Case, Matter, remedies},
        read_station,
    },
    light::Night,
    scene::Item,
};

/// A lens beside a mirror that faces away from the net that is aimed at.
const FOLDED: &str = r#"(
    name: "folded",
    ground: (width: 20, depth: 20),
    cloths: [(name: "net", fabric: "white sheer", at: (0, 2, 0), width: 2, height: 2)],
    mirrors: [(name: "glass", at: (3, 1, 2), width: 0.6, height: 0.6, turn_deg: 60)],
    spots: [(name: "path", at: (0, 0, 6), look: "net")],
    stations: [(name: "one", projector: "mini LED", at: (1.5, 1, 3.5), mount: Ground, aim: "net", mirrors: ["glass"], content: (picture: "owl_face"))],
)"#;

#[test]
fn a_picture_that_misses_its_mirror_is_told_and_the_mirror_turned() {
    let lit = Lit::parse(FOLDED);
    let found = lit.findings();
    let nowhere = found.iter().find(|finding| finding.matter == Matter::Nowhere).unwrap();
    assert!(nowhere.says.ends_with("reaches nothing of “net”: its picture misses the mirror “glass”"), "{nowhere:?}");
    assert!(found.iter().all(|finding| finding.matter != Matter::Overspill), "{found:?}");
    let reading = read_station(&lit.night, &lit.yard, &lit.catalogue, 0).unwrap();
    assert_eq!((reading.throw_m, reading.depth_m), (None, None));
    assert!(serde_json::to_value(&reading).unwrap()["throw_m"].is_null());
    let case = lit.case();
    let helps = remedies(&case, nowhere, &lit.shelf, None);
    let turned = helps.iter().find(|one| one.says.starts_with("Turn the mirror “glass”")).unwrap();
    // The turned mirror sends the middle of the picture to the middle of the net.
    let after = turned.edit.apply(&lit.yard, &lit.catalogue, None).unwrap();
    assert!(matches!(after.item("glass"), Some(Item::Mirror(_))));
    let night = Night::build(&after, &lit.catalogue, &lit.shelf).unwrap();
    assert!(Case::of(&after, &lit.catalogue, &night).reading(0).unwrap().throw_m.is_some());
}
