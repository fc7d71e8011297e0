//! A station none of whose light lands on what it is meant for.

use crate::Lit;
use gauzelight::judge::{findings::Matter, read_station};

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
    // Turned to face halfway between lens and net it is met.
    let turned = Lit::parse(&FOLDED.replace("turn_deg: 60", "turn_deg: -84.4"));
    assert!(turned.findings().iter().all(|finding| finding.matter != Matter::Nowhere));
    assert!(read_station(&turned.night, &turned.yard, &turned.catalogue, 0).unwrap().throw_m.is_some());
}
