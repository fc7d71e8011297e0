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

/// A window with something behind it that is lit from inside, seen from a path; `{…}` stands for what differs.
macro_rules! window {
    ($window:literal, $film:literal, $station:literal) => {
        concat!(
            r#"(
    name: "window",
    evening: (sky_lx: 0.3),
    ground: (surface: "lawn, winter", width: "12 m", depth: "20 m"),
    walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
        Window(name: "window", left: "2.4 m", sill: "1 m", width: "1.2 m", height: "1 m", "#,
            $window,
            r#"),
    ])],
    spots: [(name: "path", at: (0, 0, 7), look: "window")],
    films: [(name: "film", "#,
            $film,
            r#")],
    stations: [(name: "one", projector: "mini LED", mount: Shelf, aim: "film", "#,
            $station,
            r#")],
)"#
        )
    };
}

/// A cloth before dark boards, seen from a path that a lamp stands beside.
const HUNG: &str = r#"(
    name: "hung",
    evening: (sky_lx: 0.3),
    ground: (surface: "lawn, winter", width: "12 m", depth: "20 m"),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "3 m", surface: "painted boards, dark")],
    lamps: [(name: "lamp", kind: "porch lamp", at: (2.5, 2.3, 4.5))],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.4, 0))],
    cloths: [(name: "cloth", fabric: "white sheer", at: (0, 2.3, 1), width: 1.5, height: 1.8)],
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
    // The eye, the film and the lens in one line, behind a sheet that lets a third straight through.
    Provoked {
        matter: Matter::LensThrough,
        yard: window!(
            "room: (depth: 3, reflectance: 0.3)",
            r#"fabric: "thin plastic sheet", window: "window""#,
            r#"at: (0, 1.5, -2.2), content: (picture: "owl_face", mirrored: true)"#
        ),
        instead: ("(0, 1.5, -2.2)", "(0, 2.7, -2.2)"),
    },
    Provoked {
        matter: Matter::RoomThrough,
        yard: window!(
            "room: (depth: 3, reflectance: 0.9, lamp: (lumens: 4000, on: true))",
            r#"fabric: "thin plastic sheet", window: "window""#,
            r#"at: (0, 1.5, -2.2), lumens: 5, content: (picture: "owl_face", mirrored: true)"#
        ),
        instead: ("on: true", "on: false"),
    },
    Provoked {
        matter: Matter::Leak,
        yard: window!(
            "room: (depth: 3, reflectance: 0.3)",
            r#"fabric: "rear film, grey", at: (0, 1.75, -0.3), size: (0.5, 0.5)"#,
            r#"at: (0, 1.5, -2.2), content: (picture: "owl_face", mirrored: true)"#
        ),
        instead: ("at: (0, 1.75, -0.3), size: (0.5, 0.5)", r#"window: "window""#),
    },
    Provoked {
        matter: Matter::Bars,
        yard: window!(
            r#"bars: (2, 2), bar: "6 cm", room: (depth: 3, reflectance: 0.3)"#,
            r#"fabric: "rear film, grey", window: "window""#,
            r#"at: (0, 1.5, -2.2), content: (picture: "owl_face", mirrored: true)"#
        ),
        instead: ("bars: (2, 2)", "bars: (1, 1)"),
    },
    Provoked {
        matter: Matter::Screen,
        yard: window!(
            r#"screen: "insect screen, charcoal", room: (depth: 3, reflectance: 0.3)"#,
            r#"fabric: "rear film, grey", window: "window""#,
            r#"at: (0, 1.5, -2.2), content: (picture: "owl_face", mirrored: true)"#
        ),
        instead: (r#"screen: "insect screen, charcoal", "#, ""),
    },
    Provoked {
        matter: Matter::WrongWay,
        yard: window!(
            "room: (depth: 3, reflectance: 0.3)",
            r#"fabric: "rear film, grey", window: "window""#,
            r#"at: (0, 1.5, -2.2), content: (picture: "owl_face")"#
        ),
        instead: (r#"(picture: "owl_face")"#, r#"(picture: "owl_face", mirrored: true)"#),
    },
    // Eye and lens before the same pane, with the wall lit around it.
    Provoked {
        matter: Matter::Glass,
        yard: r#"(
    name: "glass",
    evening: (sky_lx: 0.05),
    ground: (surface: "lawn, winter", width: "12 m", depth: "20 m"),
    walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
        Window(name: "window", left: "2.2 m", sill: "0.9 m", width: "1.6 m", height: "1.2 m", glazing: Single),
    ])],
    spots: [(name: "path", at: (0, 0, 6), look: "front")],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.5, 4), mount: Stand, aim: (0, 1.5, 0), target: "front", content: (picture: "owl_wall"))],
)"#,
        instead: ("glazing: Single", "glazing: Unglazed"),
    },
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
];
