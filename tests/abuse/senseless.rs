//! Yards that read well and make no sense.

use super::GOOD;
use super::broken::{Case, case, try_all};
use gauzelight::scene::{Catalogue, Yard};

const NAMES: &[Case] = &[
    case("name: \"yard\"", "name: \"\"", "this name is empty", 3),
    case("name: \"wall\"", "name: \"  \"", "this name is empty", 28),
    case("name: \"wall\"", "name: \"\u{200b}\u{2060}\u{3164}\"", "nothing of this name can be seen", 28),
    case("name: \"wall\"", "name: \"\u{202e}llaw\"", "a tab or another control character", 28),
    case("name: \"wall\"", "name: \" wall\"", "begins or ends with a space", 28),
    case("name: \"wall\"", "name: \"a\\nb\"", "a line break", 28),
    case("name: \"wall\"", "name: \"123456789 123456789 123456789 123456789 123456789 123456789 1\"", "too long", 28),
    case("name: \"wall\"", "name: \"house\"", "“house” is the name of houses[0] already", 28),
    case("name: \"mirror\"", "name: \"door\"", "“door” is the name of houses[0].openings[1] already", 58),
    case("name: \"my cloth\"", "name: \"my net\"", "“my net” is the name of fabrics[0] already", 81),
    case("ground: (surface: \"lawn\")", "ground: (surface: \"lwan\")", "did you mean “lawn”?", 7),
    case("surface: \"gravel\"", "surface: \"moon dust\"", "no surface is called “moon dust”", 9),
    case(
        "screen: \"insect screen, charcoal\"",
        "screen: \"insect screen, charcol\"",
        "did you mean “insect screen, charcoal”?",
        22,
    ),
    case("kind: \"porch lamp\"", "kind: \"porch lam\"", "no kind of lamp is called “porch lam”", 41),
    case("kind: \"porch lamp\"", "kind: \"porch light\"", "did you mean “porch lamp”?", 41),
    case("kind: \"porch lamp\"", "kind: \"xyz\"", "there are: my lamp; ", 41),
    case("fabric: \"white tulle\"", "fabric: \"tulle\"", "did you mean “white tulle”?", 48),
    case("look: \"house\"", "look: \"hose\"", "did you mean “house”?", 45),
    case("look: \"house\"", "look: \"neighbour\"", "“neighbour” is a lamp", 45),
    case("fabric: \"white tulle\"", "fabric: \"whit tulle\"", "did you mean “white tulle”?", 48),
    case("behind: [\"black tulle\"]", "behind: [\"black tule\"]", "cloths[0].behind[0]: no fabric is called", 48),
    case("window: \"window\"", "window: \"widow\"", "did you mean “window”?", 51),
    case("window: \"window\"", "window: \"door\"", "no window is called “door”", 51),
    case("projector: \"mini LED\"", "projector: \"mini\"", "did you mean “mini LED”?", 63),
    case("aim: \"net\"", "aim: \"nett\"", "did you mean “net”?", 66),
    case("aim: \"net\"", "aim: \"owl\"", "“owl” is a station", 66),
    case("target: \"net\"", "target: \"ghost\"", "no thing of this yard is called “ghost”", 67),
    case("mirrors: []", "mirrors: [\"miror\"]", "did you mean “mirror”?", 68),
    case("mirrors: []", "mirrors: [\"mirror\", \"mirror\"]", "bends this throw already", 68),
    case("\"owl_glide\"", "\"owl_glid\"", "there is no picture “owl_glid”; a test card stands in", 69),
    case("\"owl_glide\"", "\"\"", "no picture is named", 69),
];

const LIMITS: &[Case] = &[
    case("name: \"stands out: clear\"", "name: \"stands out: cler\"", "did you mean “stands out: clear”?", 91),
    case("value: 6", "value: 0.001", "0.001 is out of range", 91),
    case("value: 6", "value: 1e9", "1000000000 is out of range", 91),
    case("value: 6", "value: 16", "is not below “stands out: strong” at 15", 91),
    case("value: 6", "value: 6, unit: \"lx\"", "“lx” is not the unit of this limit", 91),
    case("value: 30, unit: \"°\"", "value: 30, unit: \"m\"", "leave it out; this limit has °", 92),
    case(
        "name: \"rival counts no more\"",
        "name: \"stands out: clear\", value: 5), (name: \"rival counts no more\"",
        "is the name of limits[0] already",
        92,
    ),
];

const SIZES: &[Case] = &[
    case("format: 1", "format: 0", "there is no format 0", 2),
    case("sky_lx: 0.3", "sky_lx: -0.3", "-0.3 is out of range", 6),
    case("sky_lx: 0.3", "sky_lx: 130000", "130000 is out of range", 6),
    case("height_deg: 30", "height_deg: 1", "from 2 to 90 degrees", 6),
    case("lx: 0.1", "lx: 3", "from 0 to 1 lx", 6),
    case("x: (2, 5)", "x: (5, 2)", "write the lesser first", 9),
    case("z: (0, 20)", "z: (0, 2000)", "reaches too far", 9),
    case("wall: 0.2", "wall: 3", "leave no room", 18),
    case("pitch_deg: 40", "pitch_deg: 85", "from 1 to 75 degrees", 20),
    case("left: 1, sill: 1", "left: 7, sill: 1", "8.500 m from the left end of a wall 8.000 m wide", 22),
    case("left: 1, sill: 1", "left: -1, sill: 1", "-1 m lies outside the wall", 22),
    case("left: 1, sill: 1", "left: 1, sill: 2.5", "3.500 m up a wall 3.000 m high", 22),
    case("left: 1, sill: 1", "side: Left, left: 5, sill: 1", "of a wall 6.000 m wide", 22),
    case("left: 4, width: 1", "left: 2, width: 1", "overlaps “window” on the same wall", 23),
    case("bars: (1, 2)", "bars: (41, 2)", "41 by 2 panes are too many", 22),
    case("bars: (1, 2)", "bars: (2, 2), bar: 1", "leave no glass", 22),
    case("screen: \"insect screen, charcoal\"", "screen: \"cotton sheet, white\"", "is no net", 22),
    case("to: (5, 0, 9)", "to: (-5, 0, 9)", "both ends of this fence stand at one place", 31),
    case("gap: 0.05", "gap: -0.05", "is no gap", 31),
    case("gap: 0.05", "board: 0.001, gap: 0", "10000 boards", 31),
    case("deck: 0.2", "deck: 3", "reaches the roof", 32),
    case("deck: 0.2", "post: 1.5", "posts this thick", 32),
    case("count: 3", "count: 300", "at most 200 steps", 33),
    case("rafters: 5", "rafters: 300", "at most 200 rafters", 34),
    case("rafters: 5", "post: 1.5", "do not fit under the pergola", 34),
    case("clear: 2", "clear: 6", "has no height in a tree", 37),
    case("clear: 2", "clear: 2, trunk: 2", "as wide as its crown", 37),
    case("to: (-5, 0, 8)", "to: (-8, 1, 8)", "both ends of this hedge", 38),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), bulbs: 9999", "too many", 41),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), to: (0, 2.2, 0.5)", "both ends of this string", 41),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), size: (1, 1)", "its size is not used", 41),
    case(", size: (1, 1.2)", "", "this lit window has no size", 42),
    case(", size: (1, 1.2)", ", size: (1, 1.2), to: (0, 1, 2)", "which is no string", 42),
    case("age: 35", "age: 350", "from 1 to 120 years", 45),
    case("look: \"house\"", "look: (0, 1.6, 10)", "where it looks from", 45),
    case("fabric: \"white tulle\"", "fabric: \"frosted film\"", "is a film, not a hanging fabric", 48),
    case("behind: [\"black tulle\"]", "tilt_deg: 95", "from -90 to 90 degrees", 48),
    case("fabric: \"rear film, grey\"", "fabric: \"voile, white\"", "“voile, white” is no film", 51),
    case(", window: \"window\"", "", "this rear film has no place", 51),
    case(", window: \"window\"", ", at: (0, 1, 2)", "a place but no size", 51),
    case(", window: \"window\"", ", size: (1, 1)", "a size but no place", 51),
    case("window: \"window\"", "window: \"window\", at: (0, 1, 2), size: (1, 1)", "a place of its own", 51),
    case(
        "window: \"window\"),",
        "window: \"window\"), (name: \"b\", fabric: \"frosted film\", window: \"window\"),",
        "holds a film already",
        51,
    ),
    case("at: (-3, 2.5, 5)", "at: (-3, 1.5, 5)", "the lower edge of this cloth is 0.50 m under the ground", 48),
    case("at: (0, 2.2, 0.5)", "at: (0, -2.2, 0.5)", "this lamp is 2.20 m under the ground", 41),
    case("at: (0, 2.2, 0.5)", "at: (0, 2.2, 0.5), to: (1, -1, 0.5)", "this lamp is 1.00 m under the ground", 41),
    case("ribs: 10", "ribs: 100", "at most 60 ribs", 54),
    case("(0.3, 0.4), (0, 0.6)", "(0.3, 0.7), (0, 0.6)", "heights never fall", 55),
    case("(0.3, 0.4), (0, 0.6)", "(-0.3, 0.4), (0, 0.6)", "a radius of -0.3 m", 55),
    case("[(0.2, 0), (0.3, 0.4), (0, 0.6)]", "[(0.2, 0)]", "from 2 to 1000 points", 55),
    case("[(0.2, 0), (0.3, 0.4), (0, 0.6)]", "[(0, 0), (0, 0.6)]", "encloses nothing", 55),
    case("[(0.2, 0), (0.3, 0.4), (0, 0.6)]", "[]", "a profile of 0 points", 55),
];

const LIGHT: &[Case] = &[
    case("aim: \"net\"", "aim: (0, 1.2, 6)", "where it looks from", 66),
    case("aim: \"net\"", "aim: (0.03, 1.2, 6.03)", "where it looks from", 66),
    case("at: (0, 1.2, 6)", "at: (0, -1.2, 6)", "this lens is 1.20 m under the ground", 64),
    case("mirrors: []", "mirrors: [\"mirror\", \"net\", \"urn\"]", "3 fold mirrors", 68),
    case("from: (0, 0)", "from: (1, 0)", "has no extent", 69),
    case("to: (1, 1)", "to: (1, 1.5)", "leaves the raster", 69),
    case("throw_ratio: 1.4", "throw_ratio: 0.01", "from 0.1 to 20", 70),
    case("throw_ratio: 1.4", "keystone: (vertical_deg: 41)", "stand squarer on instead", 70),
    case("throw_ratio: 1.4", "keystone: (horizontal_deg: -60)", "-60 is out of range", 70),
    case(
        "throw_ratio: 1.4",
        "throw_ratio: 0.2, keystone: (horizontal_deg: 30)",
        "never meets a surface so far off",
        70,
    ),
    case("throw_ratio: 1.4", "gamma: 9", "from 1 to 4, mostly 2.2; or Srgb", 70),
    case("low: 60, typical: 90, high: 120", "low: 0, typical: 90, high: 120", "from 0.1 to 100000 lm", 72),
    case("hours: 100", "hours: -1", "from 0 to 200000 hours", 73),
    case("hours: 100", "focus: 0", "greater than 0 and at most 500 m", 73),
    case("wet: 0.7", "wet: 1.7", "water darkens", 77),
    case("doubt: 0.2", "doubt: 20", "0.2 means", 77),
    case("thread: 0.2", "thread: 0.96", "from 0 to 0.95", 80),
    case("reflect: 0.5, diffuse: 0.2", "reflect: 0.8, diffuse: 0.3", "reflect + diffuse add up to 1.100", 80),
    case("through: 0.2, diffuse: 0.4", "through: 0.5, diffuse: 0.4", "more light than came", 81),
    case(
        "through: 0.2, diffuse: 0.4",
        "through: (low: 0.1, typical: 0.2, high: 0.4), diffuse: 0.4",
        "at their high values",
        81,
    ),
    case("gain: 1.2", "gain: 4", "at the low values peak gain and spread need", 82),
    case("half_gain_deg: 35", "half_gain_deg: 0", "from 1 to 90 degrees", 82),
    case("pixels: (800, 480)", "pixels: (800, 0)", "800 by 0 pixels", 85),
    case("pixels: (800, 480)", "pixels: (80000, 48000)", "at most 64 million", 85),
    case("throw_ratio_tele: 1.6", "throw_ratio_tele: 1.2", "the narrowest throw is wider", 85),
    case("throw_ratio_tele: 1.6", "checker_contrast: 900", "at most on_off_contrast", 85),
    case("throw_ratio_tele: 1.6", "left_after_1000_h: 1.1", "from 0.01 to 1", 85),
    case("throw_ratio_tele: 1.6", "gamma: 0.45", "from 1 to 4, mostly 2.2; or Srgb", 85),
    case("throw_ratio_tele: 1.6", "gamma: (low: 2, typical: 2.2, high: 22)", "22 is out of range", 85),
    case("throw_ratio_tele: 1.6", "colour_light: 1.5", "as a share of white, from 0.05 to 1", 85),
    case("throw_ratio_tele: 1.6", "colour_light: 0", "as a share of white, from 0.05 to 1", 85),
    case("lumens: 100, spread", "lumens: 0, spread", "from 0.01", 88),
    case("half_deg: 30", "half_deg: 120", "from 1 to 89 degrees", 88),
    case(
        "spread: Beam(half_deg: 30)",
        "spread: Table(cd_per_klm: [(0, 100), (0.5, 20), (90, 0)])",
        "a degree apart",
        88,
    ),
    case("spread: Beam(half_deg: 30)", "spread: Table(cd_per_klm: [(0, 0), (90, 0)])", "one of them above 0 cd", 88),
    case("spread: Beam(half_deg: 30)", "spread: Table(cd_per_klm: [(0, 100)])", "two pairs", 88),
    case("spread: Beam(half_deg: 30)", "spread: Table(cd_per_klm: [(0, 100), (190, 0)])", "from 0 to 180 degrees", 88),
    case("spread: Beam(half_deg: 30)", "spread: Table(cd_per_klm: [(0, -1), (90, 2)])", "from 0 to 1000000 cd", 88),
    case("half_deg: 30)", "half_deg: 30), light: 0", "no colour of light", 88),
];

#[test]
fn names_that_name_nothing_are_told() {
    try_all(NAMES);
}

#[test]
fn sizes_that_do_not_fit_are_told() {
    try_all(SIZES);
    try_all(LIMITS);
}

#[test]
fn light_that_cannot_be_is_told() {
    try_all(LIGHT);
}

#[test]
fn a_cloth_that_leans_hangs_less_far_down() {
    let text = GOOD.replace("at: (-3, 2.5, 5)", "tilt_deg: 60, at: (-3, 1.5, 5)");
    assert!(Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap().warnings.is_empty());
}

#[test]
fn a_window_with_nothing_in_it_takes_no_light() {
    let film = r#"(name: "film", fabric: "rear film, grey", window: "window"),"#;
    let screen = r#", screen: "insect screen, charcoal""#;
    let aimed = GOOD.replace("aim: \"net\"", "aim: \"window\"").replace("target: \"net\",", "");
    let bare = aimed.replace(film, "").replace(screen, "");
    let warned = |text: &str| Yard::parse(text, "yard.ron", &Catalogue::builtin()).unwrap().warnings.plain();
    let said = warned(&bare);
    assert!(said.starts_with("yard.ron:66:18: warning: stations[0].aim: nothing in this window takes light"), "{said}");
    assert_eq!(said.lines().count(), 1, "{said}");
    // The window's middle: 2.25 m left of the house's, 1.5 m up.
    for sound in [
        aimed.clone(),
        aimed.replace(film, ""),
        bare.replace("height: 1, bars", "height: 1, glazing: Unglazed, bars"),
        bare.replace("at: (-3, 2.5, 5)", "at: (-2.25, 2.5, -0.1)"),
        bare.replace(
            "films: [",
            "films: [(name: \"film\", fabric: \"rear film, grey\", at: (-2.25, 2, -0.2), size: (1, 1)),",
        ),
        bare.replace("mirrors: [],", "target: \"wall\","),
    ] {
        assert_eq!(warned(&sound), "");
    }
    // On the left side of a house that is turned by a right angle, what was left is behind the house as it was.
    let turned = bare
        .replace("name: \"house\",", "name: \"house\", turn_deg: 90,")
        .replace("left: 1, sill: 1", "side: Left, left: 1, sill: 1");
    assert!(!warned(&turned).is_empty());
    assert_eq!(warned(&turned.replace("at: (-3, 2.5, 5)", "at: (-4.25, 2.5, 4)")), "");
}

#[test]
fn a_warning_keeps_nobody_from_the_yard() {
    let text = GOOD.replace("\"owl_glide\"", "\"owl_glid\"");
    let loaded = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap();
    assert!(!loaded.warnings.has_errors());
    assert!(
        loaded
            .warnings
            .plain()
            .starts_with("yard.ron:69:32: warning: stations[0].content.picture: there is no picture")
    );
}

#[test]
fn too_many_things_are_refused() {
    let mut yard = Yard::named("crowd");
    let spots = (0..10_001).map(|index| format!("(name: \"{index}\", at: (0, 0, 1)),")).collect::<String>();
    let text = format!("(name: \"crowd\", spots: [{spots}])");
    let faults = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_err();
    assert!(faults.plain().contains("10001 things"), "{faults}");
    yard.surfaces = vec![Catalogue::builtin().surfaces[0].clone(); 501];
    assert!(yard.check(&Catalogue::builtin(), None).plain().contains("501 catalogue entries"));
}
