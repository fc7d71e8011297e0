//! Common practice, no source: what people who hang projectors would say of plain yards.

use gauzelight::{
    frames::Shelf,
    judge::{Sight, Word, read_station, sight::Question},
    light::Night,
    scene::{Catalogue, Yard},
};
use std::path::Path;

/// A yard under a nearly black sky with one station, seen from a spot; pale things throw back 0.61.
fn seen(from: f64, things: &str, station: &str) -> Sight {
    seen_by("", from, things, station)
}

/// The same by a moon.
fn seen_by(moon: &str, from: f64, things: &str, station: &str) -> Sight {
    let text = format!(
        r#"Yard(name: "yardstick", evening: (sky_lx: 0.001, {moon}), ground: (surface: "lawn, winter", width: 130, depth: 130),
        surfaces: [(name: "pale", reflectance: 0.61)],
        spots: [(name: "path", at: (0, 0, {from}), look: (0, 1.6, 0))], {things}
        stations: [(name: "one", projector: "mini LED", {station})])"#
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "yardstick.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let mut shelf = Shelf::beside(Path::new(""));
    shelf.fetch_for(&yard);
    let night = Night::build(&yard, &catalogue, &shelf).expect("it can be lit");
    let reading = read_station(&night, &yard, &catalogue, 0).expect("there is a station");
    reading.spots[0].sight.clone().expect("it is in sight")
}

fn lumens(lm: f64) -> String {
    format!("lumens: (low: {lm}, typical: {lm}, high: {lm})")
}

const PICTURES: [&str; 2] = ["owl_face", "guardian"];

/// Either picture, the upright one by a projector on its side.
fn content(picture: &str, more: &str) -> String {
    let pose = if picture == "guardian" { "pose: Upright, " } else { "" };
    format!(r#"{pose}content: (picture: "{picture}"{more})"#)
}

fn is(sight: &Sight, word: Word) {
    let answers = sight.answers.map(|a| (a.question, a.value.map(|v| v.typical), a.word));
    assert_eq!(sight.word, word, "{}: {answers:?}", sight.reason);
}

/// A picture as large as a person in the next street but one.
#[test]
fn a_large_dim_figure_far_away_is_clear() {
    for picture in PICTURES {
        let wall = r#"walls: [(name: "wall", at: (0, 0, 0), width: 8, height: 4, surface: "pale")],"#;
        // From behind who looks.
        let moon = "moon: (lx: 0.35, bearing_deg: 0, height_deg: 30)";
        let station = format!(
            r#"at: (0, 1.6, 3.9), aim: (0, 1.6, 0), target: "wall", {}, {}"#,
            lumens(if picture == "owl_face" { 110.0 } else { 130.0 }),
            content(picture, "")
        );
        let sight = seen_by(moon, 60.0, wall, &station);
        assert!((1.0..3.5).contains(&sight.mean.typical), "{}", sight.mean.typical);
        is(&sight, Word::Clear);
    }
}

/// As bright as a screen, and as fine as print across a street.
#[test]
fn a_small_bright_figure_far_away_is_too_fine() {
    for picture in PICTURES {
        let wall = r#"walls: [(name: "wall", at: (0, 0, 0), width: 8, height: 4, surface: "pale")],"#;
        let station = format!(
            r#"at: (0, 1.6, 1.4), aim: (0, 1.6, 0), target: "wall", throw_ratio: 2.8, {}, {}"#,
            lumens(900.0),
            content(picture, "")
        );
        let sight = seen(90.0, wall, &station);
        is(&sight, Word::Faint);
        let fine = sight.answer(Question::FineEnough);
        assert_eq!((fine.word, sight.answer(Question::LightEnough).word), (Word::Faint, Word::Strong));
        assert!(sight.reason.contains("strokes"), "{}", sight.reason);
    }
}

const HEDGE: &str = r#"plants: [Hedge(name: "hedge", from: (-4, 0, -2), to: (4, 0, -2), height: 2.5)],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.2, 0), width: 2.2, height: 1.6)],"#;
const PORCH: &str = r#"lamps: [(name: "porch", kind: "porch lamp", at: (2.2, 2, 2.6), lumens: 370)],"#;

#[test]
fn tulle_before_a_hedge_is_clear_until_a_lamp_is_lit() {
    let station = format!(
        r#"at: (0, 0.6, 2.52), aim: (0, 1.5, 0), target: "net", {}, {}"#,
        lumens(100.0),
        content("owl_face", "")
    );
    is(&seen(12.0, HEDGE, &station), Word::Clear);
    is(&seen(12.0, &format!("{HEDGE}{PORCH}"), &station), Word::Faint);
}

#[test]
fn a_pale_wall_is_clear_among_weak_lamps() {
    let wall = r#"walls: [(name: "wall", at: (0, 0, 0), width: 8, height: 4, surface: "pale")],
        lamps: [(name: "porch", kind: "porch lamp", at: (5, 2.2, 3), lumens: 330)],"#;
    let station = format!(
        r#"at: (0, 1.6, 4.9), aim: (0, 1.6, 0), target: "wall", {}, {}"#,
        lumens(100.0),
        content("owl_face", "")
    );
    is(&seen(12.0, wall, &station), Word::Clear);
}

#[test]
fn a_bright_projector_on_a_sheet_is_strong() {
    let sheet =
        r#"cloths: [(name: "sheet", fabric: "cotton sheet, white", at: (0, 2.2, 0), width: 2.2, height: 1.6)],"#;
    let station = format!(
        r#"at: (0, 0.6, 2.52), aim: (0, 1.5, 0), target: "sheet", {}, {}"#,
        lumens(2500.0),
        content("owl_face", "")
    );
    is(&seen(12.0, sheet, &station), Word::Strong);
}
