//! What goes wrong with the picture itself, and beside it.

use super::{HUNG, Provoked};
use gauzelight::judge::findings::Matter;

/// A white wall on a dark lawn, lit by one small projector that is aimed at its edge.
const BESIDE: &str = r#"(
    name: "wall",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "4 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (1.7, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#;

/// A net on a dark lawn, lit from the front, and a white wall behind it.
const NET: &str = r#"(
    name: "net",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, -1), width: "8 m", height: "5 m", surface: "plaster, white")],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.3, 0), width: "2.2 m", height: "2 m")],
    spots: [(name: "path", at: (1.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.6), mount: Ground, aim: "net", content: (picture: "owl_glide"))],
)"#;

/// A board before a wall, and a raster that is wider than it; its projector is so worn that its black is a hundredth of its white, which an
/// eye sees beside a bright figure.
const BOARD: &str = r#"(
    name: "board",
    evening: (sky_lx: 0.05),
    projectors: [(name: "worn", claimed: 9000, lumens: (low: 250, typical: 300, high: 350), pixels: (1280, 720), throw_ratio: 1.3, nearest: "1 m", aperture: "45 mm", on_off_contrast: 100, checker_contrast: 50, watts: 65)],
    walls: [
        (name: "board", at: (0, 0, 0), width: "1.5 m", height: "3 m", surface: "plaster, white"),
        (name: "house wall", at: (0, 0, -0.15), width: "9 m", height: "5 m", surface: "plaster, white"),
    ],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "worn", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.3, 0), target: "board", content: (picture: "owl_face"))],
)"#;

/// A wide board on which all of such a raster lands.
const BOX: &str = r#"(
    name: "box",
    evening: (sky_lx: 0.2),
    projectors: [(name: "worn", claimed: 9000, lumens: (low: 250, typical: 300, high: 350), pixels: (1280, 720), throw_ratio: 1.3, nearest: "1 m", aperture: "45 mm", on_off_contrast: 100, checker_contrast: 50, watts: 65)],
    walls: [(name: "board", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "worn", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.6, 0), target: "board", content: (picture: "owl_face"))],
)"#;

/// A film that is seen from aside.
const ASIDE: &str = r#"(
    name: "aside",
    evening: (sky_lx: 0.05),
    films: [(name: "film", fabric: "frosted film", at: (0, 2, 0), size: (1.4, 1.2))],
    spots: [(name: "path", at: (1.5, 0, 2), look: (0, 1.4, 0))],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.4, -1.2), aim: (0, 1.4, 0), target: "film", content: (picture: "owl_face", mirrored: true))],
)"#;

/// A wall lit by a projector that is focused too near.
const NEAR: &str = r#"(
    name: "near",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"), focus: "1.2 m")],
)"#;

/// Somebody who stands close to a coarse picture.
const CLOSE: &str = r#"(
    name: "close",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (1.5, 0, 2), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "mini LED", at: (0, 0.5, 4), mount: Ground, aim: (0, 1.6, 0), target: "wall", content: (picture: "owl_face"))],
)"#;

/// A net that is lit from behind, straight towards who looks at it.
const BEHIND: &str = r#"(
    name: "behind",
    evening: (sky_lx: 0.05),
    cloths: [(name: "net", fabric: "white tulle", behind: ["grey tulle"], at: (0, 2.4, 0), width: "2.6 m", height: "2 m")],
    spots: [(name: "path", at: (0, 0, 6), look: (0, 1.4, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 1.5, -2.5), aim: (0, 1.4, 0), target: "net", content: (picture: "owl_face", mirrored: true))],
)"#;

/// A tall figure drawn into a wide picture, by a projector that faces its wall squarely either way: another lands as a trapezoid on its side.
const TALL: &str = r#"(
    name: "tall",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 1.4, 3), shift: (0, 0), aim: (0, 1.4, 0), target: "wall", content: (picture: "guardian", from: (0.35, 0), to: (0.65, 1)))],
)"#;

/// A wide picture by a projector on its side.
const SIDEWAYS: &str = r#"(
    name: "sideways",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, pose: Upright, aim: (0, 1.6, 0), target: "wall", content: (picture: "owl_face"))],
)"#;

/// A picture that is not there.
const MISSING: &str = r#"(
    name: "missing",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.6, 0), target: "wall", content: (picture: "no_such_picture.png"))],
)"#;

/// A wall with a post, a hedge or a net between it and who looks at it.
macro_rules! before {
    ($what:literal) => {
        concat!(
            r#"(
    name: "before",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.3, 0, 8), look: (0, 1.4, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
    "#,
            $what,
            "
)"
        )
    };
}

/// A projector on the ground that looks up at a board.
const LOW: &str = r#"(
    name: "low",
    evening: (sky_lx: 0.05),
    walls: [(name: "board", at: (0, 0, 0), width: "6 m", height: "6 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.3, 3), mount: Ground, aim: (0, 2.6, 0), target: "board", keystone: (vertical_deg: 0), content: (picture: "owl_face"))],
)"#;

/// The same, corrected.
const BENT: &str = r#"(
    name: "bent",
    evening: (sky_lx: 0.05),
    walls: [(name: "board", at: (0, 0, 0), width: "6 m", height: "6 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.3, 3), mount: Ground, aim: (0, 2.6, 0), target: "board", keystone: (vertical_deg: 37), content: (picture: "owl_face"))],
)"#;

pub(super) const ROWS: &[Provoked] = &[
    // No file of that name beside the yard.
    Provoked { matter: Matter::NoPicture, yard: MISSING, instead: ("no_such_picture.png", "owl_face") },
    Provoked {
        matter: Matter::Hidden,
        yard: before!(r#"things: [Post(name: "post", at: (0.15, 0, 5), height: 3, width: 0.5)]"#),
        instead: ("at: (0.15, 0, 5)", "at: (2.15, 0, 5)"),
    },
    Provoked {
        matter: Matter::Hidden,
        yard: before!(
            r#"plants: [Hedge(name: "hedge", from: (-2, 0, 5), to: (2, 0, 5), height: 3, depth: 0.8, gap: 0.3)]"#
        ),
        instead: ("height: 3", "height: 0.5"),
    },
    Provoked {
        matter: Matter::Hidden,
        yard: before!(r#"cloths: [(name: "net", fabric: "white tulle", at: (0, 2.6, 5), width: 3, height: 2.5)]"#),
        instead: ("at: (0, 2.6, 5)", "at: (4, 2.6, 5)"),
    },
    Provoked {
        matter: Matter::Hidden,
        yard: before!(r#"mirrors: [(name: "mirror", at: (0.2, 1.4, 6), width: 0.8, height: 1.6, turn_deg: 180)]"#),
        instead: ("at: (0.2, 1.4, 6)", "at: (2.8, 1.4, 6)"),
    },
    Provoked { matter: Matter::Sideways, yard: SIDEWAYS, instead: ("pose: Upright, ", "") },
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
    Provoked { matter: Matter::Trapezoid, yard: LOW, instead: ("(0, 2.6, 0)", "(0, 0.6, 0)") },
    Provoked { matter: Matter::Keystone, yard: BENT, instead: ("vertical_deg: 37", "vertical_deg: 5") },
    Provoked { matter: Matter::Overspill, yard: BESIDE, instead: ("(1.7, 1.2, 0)", "(0, 1.2, 0)") },
    Provoked { matter: Matter::ShowsByDay, yard: HUNG, instead: ("white sheer", "black tulle") },
    Provoked { matter: Matter::ShowsByLamplight, yard: HUNG, instead: ("white sheer", "black tulle") },
    // Between a lumen and six hundred anything may come of it.
    Provoked {
        matter: Matter::Unmeasured,
        yard: r#"(
    name: "unmeasured",
    evening: (sky_lx: 0.3),
    walls: [(name: "wall", at: (0, 0, 0), width: "4 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", lumens: (low: 1, typical: 200, high: 600), content: (picture: "owl_face"))],
)"#,
        instead: ("(low: 1, typical: 200, high: 600)", "200"),
    },
    Provoked { matter: Matter::Ghost, yard: NET, instead: ("white tulle", "cotton sheet, white") },
    Provoked { matter: Matter::LensBehind, yard: BEHIND, instead: ("(0, 1.5, -2.5)", "(0, 0.1, -2.5)") },
    // By day no grey box shows.
    Provoked { matter: Matter::Spill, yard: BOARD, instead: ("sky_lx: 0.05", "sky_lx: 40") },
    Provoked { matter: Matter::GreyBox, yard: BOX, instead: ("sky_lx: 0.2", "sky_lx: 40") },
    Provoked { matter: Matter::Uneven, yard: ASIDE, instead: ("frosted film", "rear film, white") },
    Provoked { matter: Matter::Blur, yard: NEAR, instead: ("1.2 m", "3.1 m") },
    Provoked { matter: Matter::Pixels, yard: CLOSE, instead: ("(1.5, 0, 2)", "(1.5, 0, 12)") },
    Provoked { matter: Matter::Nets, yard: BEHIND, instead: (r#"["grey tulle"]"#, "[]") },
    Provoked {
        matter: Matter::Upright,
        yard: TALL,
        instead: ("from: (0.35, 0), to: (0.65, 1)", "from: (0, 0), to: (1, 1)"),
    },
    Provoked {
        matter: Matter::Outshone,
        yard: r#"(
    name: "two",
    evening: (sky_lx: 0.05),
    walls: [
        (name: "wall", at: (-2.5, 0, 0), width: "4 m", height: "4 m", surface: "plaster, white"),
        (name: "other wall", at: (2.5, 0, 0), width: "4 m", height: "4 m", surface: "plaster, white"),
    ],
    spots: [(name: "far path", at: (0, 0, 20), look: (0, 1.4, 0))],
    stations: [
        (name: "one", projector: "mini LED", at: (-1.6, 0.5, 4), mount: Ground, aim: (-1.6, 1.4, 0), target: "wall", content: (picture: "owl_face")),
        (name: "other", projector: "used lamp projector", at: (1.6, 0.5, 4), mount: Ground, aim: (1.6, 1.4, 0), target: "other wall", content: (picture: "owl_face")),
    ],
)"#,
        instead: ("used lamp projector", "mini LED"),
    },
];
