//! For every matter a yard that provokes it, and the same yard with one thing changed that does not.

use gauzelight::judge::findings::Matter;

/// A yard's text, and what is put in the place of what so that the finding is gone.
pub struct Provoked {
    pub matter: Matter,
    pub yard: &'static str,
    pub instead: (&'static str, &'static str),
}

/// A white wall on a dark lawn, lit by one small projector that is aimed at its edge.
const BESIDE: &str = r#"(
    name: "wall",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "4 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (1.7, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#;

pub const ALL: &[Provoked] = &[
    // Five times as far the same lumens are a twenty-fifth of the light, beside a lamp.
    Provoked {
        matter: Matter::Word,
        yard: r#"(
    name: "far",
    evening: (sky_lx: 0.3),
    walls: [(name: "wall", at: (0, 0, 0), width: "9 m", height: "6 m", surface: "plaster, white")],
    lamps: [(name: "porch", kind: "porch lamp", at: (1.5, 2, 0.5))],
    spots: [(name: "path", at: (0, 0, 8), look: (0, 1.5, 0))],
    stations: [(name: "one", projector: "mini LED", at: (0, 0.5, 4), mount: Ground, aim: (0, 1.5, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: (r#"at: (1.5, 2, 0.5))"#, r#"at: (1.5, 2, 0.5), on: false)"#),
    },
    Provoked { matter: Matter::Overspill, yard: BESIDE, instead: ("(1.7, 1.2, 0)", "(0, 1.2, 0)") },
];
