//! Windows: what is behind their panes and films, and before them.

use super::Provoked;
use gauzelight::judge::findings::Matter;

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

pub(super) const ROWS: &[Provoked] = &[
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
    // Turned away from what it is meant to light.
    Provoked {
        matter: Matter::Nowhere,
        yard: r#"(
    name: "nowhere",
    evening: (sky_lx: 0.05),
    walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m")],
    spots: [(name: "path", at: (0, 0, 6), look: "front")],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.5, 4), mount: Stand, aim: (0, 1.5, 8), target: "front", content: (picture: "owl_wall"))],
)"#,
        instead: ("aim: (0, 1.5, 8)", "aim: (0, 1.5, 0)"),
    },
];
