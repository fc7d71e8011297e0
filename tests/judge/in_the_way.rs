//! What stands before a figure takes the share of it that it covers, by its name; what is thrown sideways is so by its angle.

use super::Lit;
use gauzelight::{
    judge::{
        SpotReading,
        findings::{Finding, Level, Matter},
    },
    scene::Catalogue,
};

/// A wall that is all lit alike, seen straight on from 8 m, and something 3 m before that eye.
fn yard(what: &str) -> String {
    format!(
        r#"(name: "way", evening: (sky_lx: 0.05),
        walls: [(name: "wall", at: (0, 0, 0), width: 6, height: 4, surface: "plaster, white")],
        spots: [(name: "path", at: (0, 0, 8), eye: 1.4, look: (0, 1.4, 0))],
        stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
        {what})"#
    )
}

fn seen(what: &str) -> SpotReading {
    Lit::parse(&yard(what)).case().reading(0).unwrap().spots[0].clone()
}

fn found(text: &str, matter: Matter) -> Option<Finding> {
    Lit::parse(text).findings().into_iter().find(|finding| finding.matter == matter)
}

#[test]
fn a_net_dims_by_what_it_does_not_let_through() {
    assert!((seen("").in_sight - 1.0).abs() < 1e-6 && seen("").hidden_by.is_empty());
    // (1 − γ)² square on; a little less aslant.
    let FabricBand { thread } = tulle();
    let paper = (1.0 - thread).powi(2);
    let net = seen(r#"cloths: [(name: "net", fabric: "white tulle", at: (0, 3.5, 5), width: 4, height: 3.5)]"#);
    assert!((net.in_sight / paper - 1.0).abs() < 0.02, "{} against {paper}", net.in_sight);
    let [by] = net.hidden_by.as_slice() else { panic!("{:?}", net.hidden_by) };
    assert!(by.thing == "net" && (by.share + net.in_sight - 1.0).abs() < 1e-6, "{by:?}");
    assert!((by.opaque - by.share).abs() < 1e-6, "all of it meets the net: {by:?}");
    // Two of them in a row take it twice.
    let two = seen(
        r#"cloths: [(name: "net", fabric: "white tulle", at: (0, 3.5, 5), width: 4, height: 3.5), (name: "next", fabric: "white tulle", at: (0, 3.5, 5.5), width: 4, height: 3.5)]"#,
    );
    assert!((two.in_sight / net.in_sight.powi(2) - 1.0).abs() < 0.01, "{}", two.in_sight);
}

struct FabricBand {
    thread: f64,
}

fn tulle() -> FabricBand {
    let catalogue = Catalogue::builtin();
    match &catalogue.fabric("white tulle").unwrap().kind {
        gauzelight::scene::FabricKind::Net { thread, .. } => FabricBand { thread: thread.typical },
        other => panic!("{other:?}"),
    }
}

/// A board from the middle of the eye's way to the right hides what one from there to the left leaves, and a mirror as much. Of the
/// owl's light 81 % lies on the left: its still over that wall, added up by pixels at a white that clips nothing.
#[test]
fn a_board_hides_all_that_it_covers_and_a_mirror_as_much() {
    let board =
        |x: f64| seen(&format!(r#"things: [Block(name: "board", at: ({x}, 0, 5), width: 4, height: 4, depth: 0.02)]"#));
    let [right, left] = [board(2.0), board(-2.0)];
    assert!((right.in_sight + left.in_sight - 1.0).abs() < 1e-3, "{} and {}", right.in_sight, left.in_sight);
    assert!((right.in_sight / 0.8145 - 1.0).abs() < 0.02, "{}", right.in_sight);
    let mirror = seen(r#"mirrors: [(name: "mirror", at: (2, 2, 5), width: 4, height: 4, turn_deg: 180)]"#);
    assert!((mirror.in_sight - right.in_sight).abs() < 0.02, "{} and {}", mirror.in_sight, right.in_sight);
    for (name, seen) in [("board", right), ("mirror", mirror)] {
        assert!(seen.hidden_by[0].thing == name && seen.hidden_by[0].opaque > 0.999, "{:?}", seen.hidden_by);
    }
}

#[test]
fn who_cannot_see_it_from_anywhere_is_to_be_helped() {
    let wall = r#"things: [Block(name: "board", at: (0, 0, 5), width: 5, height: 4, depth: 0.02)]"#;
    let hidden = found(&yard(wall), Matter::Hidden).unwrap();
    assert!(hidden.level == Level::Fix && hidden.number > 0.999, "{hidden:?}");
    assert!(hidden.says.contains("“board” hides 100 % of “one” from “path”"), "{}", hidden.says);
    let net = r#"cloths: [(name: "net", fabric: "white tulle", at: (0, 3.5, 5), width: 4, height: 3.5)]"#;
    let dimmed = found(&yard(net), Matter::Hidden).unwrap();
    assert!(dimmed.level == Level::Check && dimmed.says.contains("dims"), "{dimmed:?}");
}

#[test]
fn a_picture_is_off_upright_by_its_roll() {
    let off = |more: &str| {
        let text = yard("").replace("mount: Ground, ", &format!("mount: Ground, {more}"));
        found(&text, Matter::Sideways).map(|finding| (finding.number, finding.level))
    };
    assert_eq!(off(""), None);
    // Aimed a little upwards at a wall square on, a roll is as large as it lands, to a degree or so.
    for (roll, level) in [(40.0, Level::Check), (90.0, Level::Fix), (180.0, Level::Fix)] {
        let (number, found) = off(&format!("roll_deg: {roll}, ")).unwrap();
        assert!((number - roll).abs() < 3.0 && found == level, "{roll}: {number}");
    }
    let (number, _) = off("pose: Upright, ").unwrap();
    assert!((number - 90.0).abs() < 3.0, "{number}");
    // A projector under a ceiling that is told so throws upright, and so does one on its side with an upright picture.
    assert_eq!(off("pose: Ceiling, "), None);
    let upright = yard("")
        .replace("mount: Ground, ", "mount: Ground, pose: Upright, ")
        .replace(r#"picture: "owl_face""#, r#"picture: "owl_face", stance: Upright"#);
    assert!(found(&upright, Matter::Sideways).is_none());
}
