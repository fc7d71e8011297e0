//! What covers a window to escape by, whatever it is and however little each of many covers.

use super::Lit;
use gauzelight::judge::findings::{Finding, Matter};

/// A wall with such a window, 1.2 m wide and 1 m high from 1 m on, and something near it.
fn found(what: &str) -> Option<Finding> {
    let text = format!(
        r#"(name: "bedroom", evening: (sky_lx: 0.3),
        walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
            Window(name: "window", left: "2.4 m", sill: "1 m", width: "1.2 m", height: "1 m", escape: true),
        ])],
        spots: [(name: "path", at: (0, 0, 7), look: "window")],
        {what})"#
    );
    Lit::parse(&text).findings().into_iter().find(|finding| finding.matter == Matter::Escape)
}

/// Posts that reach a hand's breadth into the window from below.
fn posts(count: usize) -> Option<Finding> {
    let post = |i: usize| {
        let x = -0.55 + 0.2 * i as f64;
        format!(r#"Post(name: "post {i}", at: ({x:.2}, 0, 0.5), height: 1.12, width: 0.08)"#)
    };
    found(&format!("things: [{}]", (0..count).map(post).collect::<Vec<_>>().join(", ")))
}

#[test]
fn many_small_covers_are_as_bad_as_a_large_one() {
    assert!(found("").is_none() && posts(1).is_none());
    let six = posts(6).unwrap();
    assert!(six.number > 0.02 && six.number < 0.1, "{six:?}");
    assert!(six.others.len() == 6 && six.says.contains(" and 4 more cover "), "{six:?}");
}

#[test]
fn a_hedge_a_form_and_a_mirror_stand_in_the_way() {
    for (name, what) in [
        ("hedge", r#"plants: [Hedge(name: "hedge", from: (-2, 0, 0.5), to: (2, 0, 0.5), height: 1.6, depth: 0.4)]"#),
        ("form", r#"forms: [Figure(name: "form", at: (0, 0, 0.5), height: 1.9)]"#),
        ("mirror", r#"mirrors: [(name: "mirror", at: (0, 1.5, 0.4), width: 0.6, height: 0.6)]"#),
    ] {
        let finding = found(what).unwrap_or_else(|| panic!("{name} covers nothing"));
        assert!(finding.others == [name] && finding.number > 0.1, "{finding:?}");
        assert!(finding.says.starts_with(&format!("“{name}” covers ")), "{}", finding.says);
    }
}

/// A box 0.35 m deep whose lens is 1 m behind the window stands in its way where it looks away from it.
#[test]
fn a_box_reaches_back_from_its_lens() {
    let facing = |z: f64| {
        found(&format!(
            r#"stations: [(name: "one", projector: "mini LED", mount: Shelf, at: (0, 1.5, -1), aim: (0, 1.5, {z}), content: (picture: "owl_face"), shelter: (width: 0.4, height: 0.3, depth: 0.35))]"#
        ))
    };
    assert!(facing(3.0).is_none());
    let away = facing(-4.0).unwrap();
    assert!(away.others == ["one"] && away.number > 0.05 && away.number < 0.2, "{away:?}");
}
