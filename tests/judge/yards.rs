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

/// A net on a dark lawn, lit from the front, and a white wall behind it.
const NET: &str = r#"(
    name: "net",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, -1), width: "8 m", height: "5 m", surface: "plaster, white")],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.3, 0), width: "2.2 m", height: "2 m")],
    spots: [(name: "path", at: (1.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 2.6), mount: Ground, aim: "net", content: (picture: "owl_glide"))],
)"#;

/// A board before a wall, and a raster that is wider than it.
const BOARD: &str = r#"(
    name: "board",
    evening: (sky_lx: 0.05),
    walls: [
        (name: "board", at: (0, 0, 0), width: "1.5 m", height: "3 m", surface: "plaster, white"),
        (name: "house wall", at: (0, 0, -0.15), width: "9 m", height: "5 m", surface: "plaster, white"),
    ],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.3, 0), target: "board", content: (picture: "owl_face"))],
)"#;

/// A wide board on which all of a raster lands.
const BOX: &str = r#"(
    name: "box",
    evening: (sky_lx: 0.2),
    walls: [(name: "board", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.6, 0), target: "board", content: (picture: "owl_face"))],
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

/// A tall figure drawn into a wide picture.
const TALL: &str = r#"(
    name: "tall",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "compact LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "guardian", from: (0.35, 0), to: (0.65, 1)))],
)"#;

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

/// A lamp projector that waits for a button and throws blue meanwhile, and another that does neither.
const LAMP: &str = r#"(
    name: "lamp",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 8), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "used lamp projector", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"))],
    projectors: [(name: "steady", claimed: 3000, lumens: 2400, pixels: (1024, 768), throw_ratio: 1.5, nearest: "1.2 m", shift: (0, 0.5), wakes: ByItself, shows: Nothing)],
)"#;

/// A house with an outlet in it, and a wall before it that a station lights; what feeds that differs.
macro_rules! fed {
    ($projector:literal, $loads:literal, $power:literal) => {
        concat!(
            r#"(
    name: "fed",
    evening: (sky_lx: 0.05),
    houses: [(name: "house", at: (0, 0, -2), width: "6 m", depth: "5 m", height: "3 m")],
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 9), look: (0, 1.3, 0))],
    stations: [(name: "one", projector: ""#,
            $projector,
            r#"", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"), loads: ["#,
            $loads,
            r#"])],
    "#,
            $power,
            "
)"
        )
    };
}

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
        instead: (r#"surface: "gravel""#, r#"surface: "lawn""#),
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
        matter: Matter::Outshone,
        yard: r#"(
    name: "two",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "9 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "far path", at: (0, 0, 20), look: (0, 1.4, 0))],
    stations: [
        (name: "one", projector: "mini LED", at: (-1.6, 0.5, 4), mount: Ground, aim: (-1.6, 1.4, 0), target: "wall", content: (picture: "owl_face")),
        (name: "other", projector: "used lamp projector", at: (1.6, 0.5, 4), mount: Ground, aim: (1.6, 1.4, 0), target: "wall", content: (picture: "owl_face")),
    ],
)"#,
        instead: ("used lamp projector", "mini LED"),
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
        instead: ("mount: Ground", "mount: Shelf"),
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
    Provoked { matter: Matter::Idle, yard: LAMP, instead: ("used lamp projector", "steady") },
    Provoked { matter: Matter::ByHand, yard: LAMP, instead: ("used lamp projector", "steady") },
    Provoked {
        matter: Matter::Guard,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: false))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²")]"#
        ),
        instead: ("gfci: false", "gfci: true"),
    },
    Provoked {
        matter: Matter::SupplyRain,
        yard: fed!(
            "mini LED",
            "",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -1.5), kind: Mains(gfci: true), ip: "IP20")],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "1.5 mm²")]"#
        ),
        instead: ("IP20", "IP55"),
    },
    Provoked {
        matter: Matter::Fuse,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 100, fuse_a: None), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "14 AWG")]"#
        ),
        instead: ("fuse_a: None", "fuse_a: 5"),
    },
    // A fuse that the cable does not bear.
    Provoked {
        matter: Matter::Fuse,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 100, fuse_a: 30), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "18 AWG")]"#
        ),
        instead: ("fuse_a: 30", "fuse_a: 5"),
    },
    // A heater against dew that nobody reckoned with.
    Provoked {
        matter: Matter::Cable,
        yard: fed!(
            "mini LED",
            "(watts: 1500)",
            r#"supplies: [(name: "outlet", at: (0, 0.3, -2.5), kind: Mains(gfci: true))],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "0.75 mm²")]"#
        ),
        instead: ("1500", "150"),
    },
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "brick", at: (0, 0.3, -2.5), kind: TwelveVolt(watts: 24, fuse_a: 4, from: "outlet")), (name: "outlet", at: (0, 0.3, -2.6), kind: Mains(gfci: true))],
    cables: [(name: "lead", from: "brick", to: "one", gauge: "12 AWG")]"#
        ),
        instead: ("watts: 24", "watts: 60"),
    },
    // A battery that does not last the night.
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "battery", at: (0, 0.2, 2.9), kind: Battery(amp_hours: 9, fuse_a: 5), ip: "IP44")],
    cables: [(name: "lead", from: "battery", to: "one", gauge: "14 AWG")]"#
        ),
        instead: ("amp_hours: 9", "amp_hours: 35"),
    },
    // Two on one breaker, of which one could hang elsewhere.
    Provoked {
        matter: Matter::Supply,
        yard: fed!(
            "mini LED",
            "(watts: 1500), (watts: 1300)",
            r#"supplies: [
        (name: "outlet", at: (0, 0.3, -2.5), kind: Mains(breaker_a: 13, gfci: true)),
        (name: "kitchen outlet", at: (1, 0.3, -2.5), kind: Mains(breaker_a: 20, gfci: true)),
    ],
    cables: [(name: "cord", from: "outlet", to: "one", gauge: "4 mm²")]"#
        ),
        instead: ("breaker_a: 13", "breaker_a: 20"),
    },
    Provoked {
        matter: Matter::Volts,
        yard: fed!(
            "12 V pocket",
            "",
            r#"supplies: [(name: "brick", at: (0, 0.3, -2.5), kind: TwelveVolt(watts: 60, fuse_a: 4, from: "outlet")), (name: "outlet", at: (0, 0.3, -2.6), kind: Mains(gfci: true))],
    cables: [(name: "lead", from: "brick", to: "one", via: [(6, 0, -2), (6, 0, 2.5)], gauge: "18 AWG")]"#
        ),
        instead: ("18 AWG", "12 AWG"),
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
    Provoked {
        matter: Matter::Budget,
        yard: r#"(
    name: "dear",
    evening: (sky_lx: 0.05),
    budget: 180,
    walls: [(name: "wall", at: (0, 0, 0), width: "6 m", height: "3 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "12 V pocket", at: (0, 0.5, 2.5), mount: Ground, aim: (0, 1.2, 0), target: "wall", content: (picture: "owl_face"))],
)"#,
        instead: ("budget: 180", r#"budget: 180, owned: [(what: "12 V pocket")]"#),
    },
];
