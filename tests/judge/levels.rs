//! How grave a finding is, by its number.

use super::Lit;
use gauzelight::judge::findings::{Finding, Level, Matter};

fn found(text: &str, matter: Matter) -> Option<Finding> {
    Lit::parse(text).findings().into_iter().find(|finding| finding.matter == matter)
}

/// A figure holds so often against the gust as its weight goes with the overturning: below once it goes over.
#[test]
fn what_goes_over_is_to_be_mended_and_what_barely_holds_is_to_be_looked_at() {
    let figure = |kg: f64| {
        let text = format!(
            r#"(name: "figure", evening: (sky_lx: 0.05), forms: [Figure(name: "form", at: (0, 0, 0), height: 1.9, ballast_kg: {kg})], spots: [(name: "path", at: (0, 0, 6), look: "form")])"#
        );
        found(&text, Matter::Topples)
    };
    let bare = figure(0.0).unwrap();
    assert!(bare.level == Level::Fix && bare.number < 1.0 && bare.says.contains("goes over in a gust"), "{bare:?}");
    // Steps of two kilograms, up to where nothing is said: in between it holds once, and should more often.
    let steps: Vec<Finding> = (0..100).map_while(|step| figure(2.0 * f64::from(step))).collect();
    for one in &steps {
        let holds = one.number >= 1.0;
        assert_eq!((one.level == Level::Check, one.says.contains("holds only")), (holds, holds), "{one:?}");
    }
    assert!(steps.len() < 100 && steps.last().unwrap().number >= 1.0);
}

/// A lens in the open, near the edge of a porch and well under it; off the mains and off 12 V.
#[test]
fn mains_in_full_rain_is_to_be_mended() {
    let out = |projector: &str, more: &str| {
        let text = format!(
            r#"(name: "out", evening: (sky_lx: 0.05), walls: [(name: "wall", at: (0, 0, 0), width: 6, height: 3, surface: "plaster, white")],
            spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))], {more}
            stations: [(name: "one", projector: "{projector}", at: (0, 0.5, 2.5), mount: Shelf, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))])"#
        );
        found(&text, Matter::Rain)
    };
    let porch = |depth: f64| {
        format!(r#"things: [Porch(name: "porch", at: (0, 0, 0.1), width: 5, depth: {depth}, height: 2.6)],"#)
    };
    let open = out("compact LED", "").unwrap();
    assert!(open.level == Level::Fix && open.number > 0.95, "{open:?}");
    assert_eq!(out("12 V pocket", "").unwrap().level, Level::Check);
    let edge = out("compact LED", &porch(2.8)).unwrap();
    assert!(edge.level == Level::Check && edge.number < 0.5, "{edge:?}");
    assert!(out("compact LED", &porch(5.0)).is_none());
}

/// A lens at 3.6 m in a house: a shelf in its attic, reached from a floor at 2.4 m, and one that hangs over a floor at 0.5 m.
#[test]
fn a_ladder_is_as_high_as_it_stands_over_the_floor_of_its_room() {
    let found = |floor: &str| {
        let text = format!(
            r#"(name: "attic", evening: (sky_lx: 0.05),
            houses: [(name: "house", at: (0, 0, 0), width: 8, depth: 6, height: 5, openings: [
                Window(name: "window", left: 3, sill: 3, width: 1.2, height: 1.2, room: (depth: 4, {floor})),
            ])],
            films: [(name: "film", fabric: "rear film, grey", window: "window")],
            spots: [(name: "path", at: (0, 0, 9), look: "window")],
            stations: [(name: "one", projector: "mini LED", at: (0, 3.6, -2.5), mount: Shelf, aim: "film", content: (picture: "owl_face", mirrored: true))])"#
        );
        found(&text, Matter::Ladder).map(|finding| finding.number)
    };
    assert_eq!((found(""), found(r#"floor: "2.4 m""#)), (None, None));
    let low = found(r#"floor: "0.5 m""#).unwrap();
    assert!((low - 3.1).abs() < 1e-6, "{low}");
}
