//! People: who looks, walks by, drives or lives next door.

use super::Provoked;
use gauzelight::judge::findings::Matter;

/// A lens that looks along the ground at a wall, past somebody at the edge of its beam.
const INTO_EYES: &str = r#"(
    name: "into eyes",
    evening: (sky_lx: 0.05),
    setting: CountryLane,
    visitors: ("17:00", "23:30"),
    walls: [(name: "wall", at: (0, 0, 8), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (2.1, 0, 6), look: (0, 1.2, 8))],
    meters: [(name: "next door", at: (0, 1.1, 6), turn_deg: 180, kind: NeighbourWindow)],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 0), mount: Ground, aim: (0, 1.2, 8), target: "wall", content: (picture: "owl_face"))],
)"#;

pub(super) const ROWS: &[Provoked] = &[
    Provoked { matter: Matter::Dazzle, yard: INTO_EYES, instead: ("at: (2.1, 0, 6)", "at: (-4.5, 0, 6)") },
    Provoked {
        matter: Matter::LensSeen,
        yard: r#"(
    name: "beside the beam",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 8), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (-4.5, 0, 6), look: (0, 1.2, 8))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 0), mount: Ground, aim: (0, 1.2, 8), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("at: (-4.5, 0, 6)", "at: (0, 0, -3)"),
    },
    // From in front of a car, and from behind it.
    Provoked {
        matter: Matter::Driver,
        yard: r#"(
    name: "road",
    evening: (sky_lx: 0.05),
    setting: CountryLane,
    forms: [Figure(name: "form", at: (-4, 0, 8), height: "1.9 m")],
    spots: [(name: "lane", at: (-20, 0, 10), eye: "1.2 m", look: "form", to: (20, 0, 10), drives: true)],
    stations: [(name: "one", projector: "compact LED", at: (4, 0.6, 8.5), mount: Ground, aim: "form", content: (picture: "guardian"))],
)"#,
        instead: ("at: (4, 0.6, 8.5)", "at: (-12, 0.6, 8.5)"),
    },
    Provoked {
        matter: Matter::Neighbour,
        yard: INTO_EYES,
        instead: ("at: (0, 1.1, 6), turn_deg: 180", "at: (-4.5, 1.6, 6), turn_deg: 180"),
    },
    // A film in a window that is a way out, and the same window where another is.
    Provoked {
        matter: Matter::Escape,
        yard: r#"(
    name: "bedroom",
    evening: (sky_lx: 0.3),
    walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
        Window(name: "window", left: "2.4 m", sill: "1 m", width: "1.2 m", height: "1 m", escape: true, room: (depth: 3, reflectance: 0.3)),
    ])],
    spots: [(name: "path", at: (0, 0, 7), look: "window")],
    films: [(name: "film", fabric: "rear film, grey", window: "window")],
    stations: [(name: "one", projector: "mini LED", mount: Shelf, aim: "film", at: (0, 1.5, -2.2), content: (picture: "owl_face", mirrored: true))],
)"#,
        instead: ("escape: true", "escape: false"),
    },
    // A sheet hung half a metre before such a window, and two metres before it.
    Provoked {
        matter: Matter::Escape,
        yard: r#"(
    name: "sheet before it",
    evening: (sky_lx: 0.3),
    walls: [(name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
        Window(name: "window", left: "2.4 m", sill: "1 m", width: "1.2 m", height: "1 m", escape: true),
    ])],
    spots: [(name: "path", at: (0, 0, 7), look: "window")],
    cloths: [(name: "sheet", fabric: "cotton sheet, white", at: (0, 2.3, 0.5), width: 1.5, height: 1.8)],
)"#,
        instead: ("at: (0, 2.3, 0.5)", "at: (0, 2.3, 2)"),
    },
    // Over a low wall.
    Provoked {
        matter: Matter::Skyward,
        yard: r#"(
    name: "low wall",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "4 m", height: "1.2 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 6), look: (0, 0.6, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("aim: (0, 1.2, 0)", "aim: (0, 0.6, 0)"),
    },
    Provoked {
        matter: Matter::Crossed,
        yard: r#"(
    name: "across a path",
    evening: (sky_lx: 0.05),
    areas: [(name: "garden path", surface: "gravel", x: ("-3 m", "3 m"), z: ("3 m", "4 m"))],
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "gate", at: (2, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 1.2, 5), aim: (0, 1.3, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: (r#"surface: "gravel""#, r#"surface: "gravel", used_by: Nobody"#),
    },
    Provoked {
        matter: Matter::NearLens,
        yard: r#"(
    name: "close by",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "bench", at: (0.5, 0, 2.4), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 1.2, 3), aim: (0, 1.3, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("at: (0.5, 0, 2.4)", "at: (0.5, 0, 6)"),
    },
    // A lens that looks south, as high as the sun stands at a midwinter noon.
    Provoked {
        matter: Matter::Sunlit,
        yard: r#"(
    name: "south",
    evening: (when: (date: "2026-12-21", clock: "18:00", latitude_deg: 52.5, longitude_deg: 13.4, zone: "Europe/Berlin", faces_deg: 180)),
    cloths: [(name: "net", fabric: "white tulle", at: (0, 3.2, 6), width: "3 m", height: "2.6 m")],
    spots: [(name: "path", at: (0, 0, 12), look: "net")],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.4, 0), mount: Ground, aim: (0, 1.9, 6), target: "net", content: (picture: "owl_glide"))],
)"#,
        instead: ("aim: (0, 1.9, 6)", "aim: (0, 1.9, -6)"),
    },
    Provoked {
        matter: Matter::Motion,
        yard: r#"(
    name: "flood",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    lamps: [(name: "flood", kind: "motion floodlight", at: (0, 2.8, 3), turn_deg: 180, tilt_deg: 25, on: false, motion: true)],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("motion: true", "motion: false"),
    },
];
