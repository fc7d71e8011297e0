//! One station that lights several things.

use crate::lab::{DARK, Lab, close, square_lx, station};
use gauzelight::{
    edit::Edit,
    scene::{Catalogue, Yard},
};

/// Two white screens, left and right of the middle of the picture, and a third that is beside it; a picture 2 m wide.
fn screens(target: &str) -> String {
    let screen = |name: &str, x: f64, width: f64| {
        format!(r#"(name: "{name}", fabric: "screen", at: ({x}, 10.25, 0), width: {width}, height: 0.5),"#)
    };
    format!(
        r#"{DARK} cloths: [{}{}{}], spots: [(name: "before", at: (0, 8.4, 8), look: "left")],{}"#,
        screen("left", -0.6, 0.4),
        screen("right", 0.5, 0.2),
        screen("beside", 3.0, 0.5),
        station("16:9", "white", &format!("at: (0, 10, 3), aim: (0, 10, 0), target: {target}"))
    )
}

#[test]
fn each_of_two_targets_has_its_own_figures() {
    let reading = Lab::new(&screens(r#"["left", "right"]"#)).reading();
    assert_eq!((reading.target.as_str(), reading.onto().as_str()), ("left", "left and right"));
    assert!(reading.lights("right") && !reading.lights("beside"));
    let area = 2.0 * 1.125;
    let shares = [0.4 * 0.5 / area, 0.2 * 0.5 / area];
    for ((one, share), width) in reading.targets.iter().zip(shares).zip([0.4, 0.2]) {
        close(one.share, share, 1e-2);
        close(one.figure_share, share, 1e-2);
        close(one.mean_on_target_lx.typical, square_lx(16.0 / 9.0, 3.0), 1e-4);
        close(one.lit.width_m, width, 0.02);
        close(one.lit.height_m, 0.5, 0.02);
        assert!(one.spots[0].sight.is_some() && one.spots[0].mean.typical > 0.0, "{:?}", one.spots);
    }
    close(reading.misses, 1.0 - shares[0] - shares[1], 1e-3);
    // Both in one.
    close(reading.lit.width_m, 0.5 + 0.1 + 0.6 + 0.2, 0.01);
    close(reading.mean_on_target_lx.typical, square_lx(16.0 / 9.0, 3.0), 1e-4);
    // One of them alone: the other's part of the light misses it.
    let left = Lab::new(&screens("\"left\"")).reading();
    close(left.misses, 1.0 - shares[0], 1e-3);
    assert_eq!(left.targets.len(), 1);
    assert_eq!(left.targets[0].spots, left.spots);
}

#[test]
fn one_target_and_several_are_read_and_written() {
    let catalogue = Catalogue::builtin();
    for (given, written) in [
        (r#""left""#, r#"target: "left""#),
        (r#"["left"]"#, r#"target: "left""#),
        (r#"["left", "right"]"#, r#"target: ["left", "right"]"#),
    ] {
        let lab = Lab::new(&screens(given));
        let text = lab.yard.to_text();
        assert!(text.contains(written), "{text}");
        let again = Yard::parse(&text, "again.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
        assert_eq!(again, lab.yard);
    }
}

#[test]
fn targets_follow_a_name_and_go_with_their_things() {
    let Lab { yard, catalogue, .. } = Lab::new(&screens(r#"["left", "right"]"#));
    let names = |yard: &Yard| yard.stations[0].target.0.iter().map(|target| target.0.clone()).collect::<Vec<_>>();
    let renamed = Edit::Rename { from: "right".to_owned(), to: "far right".to_owned() };
    let renamed = renamed.apply(&yard, &catalogue, None).expect("it is free");
    assert_eq!(names(&renamed), ["left", "far right"]);
    let removed = Edit::Remove { name: "far right".to_owned(), leaving: None }
        .apply(&renamed, &catalogue, None)
        .expect("it is loose");
    assert_eq!(names(&removed), ["left"]);
}

#[test]
fn what_cannot_be_lit_is_no_target() {
    let catalogue = Catalogue::builtin();
    let extra = r#"mirrors: [(name: "mirror", at: (0, 1, 5), width: 0.5, height: 0.5)], lamps: [(name: "porch", kind: "porch lamp", at: (2, 2, 1))],"#;
    let faults = |target: &str| {
        let screen = r#"cloths: [(name: "left", fabric: "white tulle", at: (0, 2, 0), width: 1, height: 1)]"#;
        let text = format!(
            r#"Yard(name: "yard", {screen}, {extra} stations: [(name: "one", projector: "mini LED", at: (0, 1, 3), aim: "left",
            target: {target}, content: (picture: "owl_face"))])"#
        );
        Yard::parse(&text, "yard.ron", &catalogue).map(|_| String::new()).unwrap_or_else(|faults| faults.plain())
    };
    assert_eq!(faults(r#"["left"]"#), "");
    for (target, said) in [
        (r#""mirror""#, "“mirror” is a fold mirror, which nothing can be thrown onto"),
        (r#"["left", "porch"]"#, "target[1]: “porch” is a lamp, which nothing can be thrown onto"),
        (r#"["left", "left"]"#, "“left” is among its targets already"),
        (r#""ghost""#, "there are: left)"),
    ] {
        assert!(faults(target).contains(said), "{target}: {}", faults(target));
    }
}
