//! Hidden by day: what stands before a box, and how large it looks.

use super::Lit;
use gauzelight::judge::{HiddenReading, read_hidden};

/// A cube of 0.5 m outside on a post, 10 m before an eye at its own height, seen square on; `{…}` stands between them.
fn seen(between: &str) -> HiddenReading {
    let text = format!(
        r#"(name: "y", walls: [(name: "target", at: (0, 0, -6), width: 4, height: 3)],
        {between}
        spots: [(name: "path", at: (0, 0, 10), eye: 1.5, look: (0, 1.5, 0))],
        stations: [(name: "one", projector: "mini LED", at: (0, 1.5, 0), aim: (0, 1.5, -6), content: (picture: "gourds"),
            shelter: (width: 0.49, height: 0.49, depth: 0.49, thickness: "5 mm"))])"#
    );
    let lit = Lit::parse(&text);
    let list = read_hidden(&lit.night, &lit.yard, &lit.catalogue);
    assert_eq!(list.len(), 1);
    list[0].clone()
}

#[test]
fn a_box_in_the_open_is_seen_whole_and_as_large_as_geometry_has_it() {
    let read = seen("");
    assert!((read.visible - 1.0).abs() < 1e-9 && read.boxed, "{read:?}");
    // Its back is 0.5 m behind its front, which stands 55 mm before the lens: 0.445 m towards the eye. Corner to corner there.
    let across = 2.0 * (0.5 * 0.5 * 2f64.sqrt() / (10.0 - 0.445)).atan();
    assert!(
        (read.across_deg / across.to_degrees() - 1.0).abs() < 1e-3,
        "{} against {}",
        read.across_deg,
        across.to_degrees()
    );
    assert!((read.across_arc_min / read.across_deg - 60.0).abs() < 1e-9);
    assert!(read.says().contains("few fingers"), "{}", read.says());
}

#[test]
fn a_fence_hides_what_is_behind_it() {
    let whole = r#"things: [Block(name: "block", at: (0, 0, 5), width: 3, height: 3, depth: 0.1)],"#;
    let read = seen(whole);
    assert!(read.visible < 1e-9 && read.says().contains("nothing"), "{}", read.says());
    // Up to the height of the eye it hides the lower half.
    let half = seen(&whole.replace("height: 3", "height: 1.5"));
    assert!((half.visible - 0.5).abs() < 0.01, "{}", half.visible);
    // A leafy crown lets some of it through.
    let leaves = r#"plants: [Hedge(name: "hedge", from: (-2, 0, 5), to: (2, 0, 5), height: 3, depth: 0.8, gap: 0.3)],"#;
    let read = seen(leaves);
    assert!((0.2..0.4).contains(&read.visible), "{}", read.visible);
}
