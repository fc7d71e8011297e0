//! Rain, cold and wind: boxes, ladders, ties and feet.

use super::{HUNG, Provoked};
use gauzelight::judge::findings::Matter;

/// A wall lit by a station in the weather box that `{…}` describes.
macro_rules! boxed {
    ($climate:literal, $box:literal) => {
        concat!(
            r#"(
    name: "boxed",
    evening: (sky_lx: 0.05),
    climate: ("#,
            $climate,
            r#"),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"), box_window: "#,
            $box,
            r#"))],
)"#
        )
    };
}

pub(super) const ROWS: &[Provoked] = &[
    // 65 W and no air.
    Provoked {
        matter: Matter::BoxHot,
        yard: boxed!(
            "warmest_c: 25",
            "0.9, shelter: (width: 0.35, height: 0.2, depth: 0.3, inlet_cm2: 10, outlet_cm2: 10"
        ),
        instead: ("inlet_cm2: 10, outlet_cm2: 10", "inlet_cm2: 120, outlet_cm2: 120, fan: (flow_m3_h: 80)"),
    },
    Provoked {
        matter: Matter::Rain,
        yard: r#"(
    name: "out",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: (
            "walls:",
            r#"things: [Porch(name: "porch", at: (0, 0, 0.5), width: "5 m", depth: "5 m", height: "2.6 m")],
    walls:"#,
        ),
    },
    Provoked {
        matter: Matter::BoxCold,
        yard: boxed!("coldest_c: -12", "0.9, shelter: (fan: (flow_m3_h: 80), inlet_cm2: 150, outlet_cm2: 150"),
        instead: ("coldest_c: -12", "coldest_c: 2"),
    },
    Provoked {
        matter: Matter::BoxWindow,
        yard: boxed!("warmest_c: 15", "1, shelter: (fan: (flow_m3_h: 40)"),
        instead: ("box_window: 1", "box_window: 0.91"),
    },
    Provoked {
        matter: Matter::Ladder,
        yard: r#"(
    name: "up a tree",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 3.2, 4), mount: Tree, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("at: (0, 3.2, 4)", "at: (0, 1.9, 4)"),
    },
    Provoked {
        matter: Matter::SecondTie,
        yard: r#"(
    name: "over the door",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 2.6, 4), mount: Hung, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("mount: Hung", "mount: Hung, second_tie: true"),
    },
    // A sheer is all but closed.
    Provoked { matter: Matter::Ties, yard: HUNG, instead: ("height: 1.8", "height: 1.8, ties: 24") },
    Provoked {
        matter: Matter::Topples,
        yard: r#"(
    name: "by the gate",
    evening: (sky_lx: 0.05),
    forms: [Figure(name: "form", at: (0, 0, 0), height: "1.9 m")],
    spots: [(name: "path", at: (0, 0, 6), look: "form")],
    stations: [(name: "one", projector: "compact LED", at: (1, 0.5, 3), mount: Ground, aim: "form", content: (picture: "guardian"))],
)"#,
        instead: (r#"height: "1.9 m""#, r#"height: "1.9 m", ballast_kg: 60"#),
    },
];
