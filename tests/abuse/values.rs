//! Values that their fields cannot take: wrong kinds, wrong ranges, wrong and missing fields.

use super::broken::{Case, case, try_all};

const WRONG_KIND: &[Case] = &[
    case("name: \"yard\"", "name: yard", "the word yard stands where a text in quotes is wanted", 3),
    case("name: \"yard\"", "name: 5", "the number 5 stands where a text in quotes is wanted", 3),
    case("units: Metric", "units: metric", "did you mean “Metric”?", 5),
    case("units: Metric", "units: \"Metric\"", "write Metric without", 5),
    case("units: Metric", "units: Metric()", "takes nothing in brackets", 5),
    case("units: Metric", "units: 1", "the number 1 stands where a choice of units is wanted", 5),
    case("sky_lx: 0.3", "sky_lx: \"0.3\"", "the text “0.3” stands where a number is wanted", 6),
    case("sky_lx: 0.3", "sky_lx: NaN", "no number that can be computed with", 6),
    case("sky_lx: 0.3", "sky_lx: -inf", "no number that can be computed with", 6),
    case("sky_lx: 0.3", "sky_lx: 1e999", "no number that can be computed with", 6),
    case("sky_lx: 0.3", "sky_lx: 0.3.1", "0.3.1 is not a number", 6),
    case("sky_lx: 0.3", "sky_lx: None", "the word None stands where a number is wanted", 6),
    case(
        "areas: [\n        (name: \"drive\", surface: \"gravel\", x: (2, 5), z: (0, 20)),\n    ]",
        "areas: (5)",
        "write square brackets",
        8,
    ),
    case("x: (2, 5)", "x: 2", "a pair is wanted", 9),
    case("x: (2, 5)", "x: [2, 5]", "write (a, b)", 9),
    case("x: (2, 5)", "x: (2, 5, 6)", "a group of 3 values stands where a pair is wanted", 9),
    case("z: (0, 20)", "z: (0, \"20 yd\")", "“yd” is not a unit", 9),
    case(
        "at: (0, 0, 0),\n            width: \"8 m\"",
        "at: (0, 0),\n            width: \"8 m\"",
        "write (x, y, z)",
        14,
    ),
    case(
        "at: (0, 0, 0),\n            width: \"8 m\"",
        "at: [0, 0, 0],\n            width: \"8 m\"",
        "a list of 3 stands where a position is wanted",
        14,
    ),
    case(
        "at: (0, 0, 0),\n            width: \"8 m\"",
        "at: (x: 0, y: 0, z: 0),\n            width: \"8 m\"",
        "write (x, y, z)",
        14,
    ),
    case("width: \"8 m\"", "width: \"8,5 m\"", "write the decimal with a point: 8.5", 15),
    case("width: \"8 m\"", "width: \"eight m\"", "must start with a number", 15),
    case("width: \"8 m\"", "width: true", "a length is wanted", 15),
    case("width: \"8 m\"", "width: NaN", "no number that can be computed with", 15),
    case("Gable(pitch_deg: 40, ridge: Across)", "Gabel(pitch_deg: 40)", "did you mean “Gable”?", 20),
    case("Gable(pitch_deg: 40, ridge: Across)", "(pitch_deg: 40)", "Open, Flat, Gable, Hip or Shed", 20),
    case("Gable(pitch_deg: 40, ridge: Across)", "Gable((pitch_deg: 40))", "two pairs of brackets", 20),
    case("Gable(pitch_deg: 40, ridge: Across)", "Open()", "Open takes nothing in brackets", 20),
    case("Window(name", "Windw(name", "did you mean “Window”?", 22),
    case("bars: (1, 2)", "bars: (1, 2.5)", "a whole number from 1 to 10000", 22),
    case("open: true", "open: yes", "true or false", 23),
    case("open: true", "open: 1", "true or false", 23),
    case("aim: \"net\"", "aim: net", "the name of a thing in quotes, or a position", 66),
    case("aim: \"net\"", "aim: (0, 1)", "write (x, y, z)", 66),
    case("mirrors: []", "mirrors: \"mirror\"", "write square brackets", 68),
    case("lumens: (low: 60, typical: 90, high: 120)", "lumens: (60, 90, 120)", "has no field name before it", 72),
    case("lumens: (low: 60, typical: 90, high: 120)", "lumens: \"90 lm\"", "a number or a band is wanted", 72),
    case("shift: (0, 0)", "gamma: sRGB", "the word sRGB stands where a gamma is wanted", 71),
    case("shift: (0, 0)", "gamma: \"2.2\"", "such as 2.2, (low: 2, typical: 2.2, high: 2.4) or Srgb", 71),
    case("shift: (0, 0)", "gamma: (2, 2.2, 2.4)", "has no field name before it", 71),
    case("reflectance: (0.5, 0.4, 0.3)", "reflectance: (0.5, 0.4)", "one number, or (red, green, blue)", 77),
    case("reflectance: (0.5, 0.4, 0.3)", "reflectance: \"#aabbcc\"", "one number, or (red, green, blue)", 77),
    case("kind: Net(thread: 0.2,", "kind: Lace(thread: 0.2,", "Net, Cloth or Film", 80),
    case("pixels: (800, 480)", "pixels: (800, 479.5)", "479.5 is out of range", 85),
    case("spread: Beam(half_deg: 30)", "spread: Beam(30)", "the number 30 has no field name", 88),
    case("spread: Beam(half_deg: 30)", "spread: Beam", "this spread has no half_deg", 88),
];

const OUT_OF_RANGE: &[Case] = &[
    case("bearing_deg: 10", "bearing_deg: 361", "361 is out of range", 6),
    case("width: \"8 m\"", "width: 0", "0 m is out of range", 15),
    case("width: \"8 m\"", "width: \"-8 m\"", "-8 m is out of range", 15),
    case("width: \"8 m\"", "width: \"2000 m\"", "at most 500 m", 15),
    case("depth: 6,", "depth: 501,", "at most 500 m", 16),
    case("at: (9, 0, 2)", "at: (9, 0, 20000)", "from -500 to 500 m", 28),
    case("bars: (1, 2)", "bars: (0, 2)", "a whole number from 1 to 10000", 22),
    case("count: 3", "count: -3", "a whole number from 1 to 10000", 33),
    case("fullness: 1.2", "fullness: 0.9", "from 1 (flat) to 4", 48),
    case("reflectance: 0.88", "reflectance: 1.2", "from 0 to 1", 58),
    case("throw_ratio: 1.4", "throw_ratio: 0", "greater than 0", 70),
    case("throw_ratio: 1.4", "throw_ratio: -1.4", "greater than 0", 70),
    case("shift: (0, 0)", "shift: (0, 5)", "each from -4 to 4", 71),
    case("typical: 90, high: 120", "typical: 90, high: 80", "out of order", 72),
    case("low: 60, typical: 90", "low: -60, typical: 90", "-60 is out of range", 72),
    case("reflectance: (0.5, 0.4, 0.3)", "reflectance: (0.5, 0.4, 1.3)", "each channel from 0 to 1", 77),
    case("claimed: 5000", "claimed: 0", "greater than 0", 85),
    case("pixels: (800, 480)", "pixels: (800, -480)", "-480 is out of range", 85),
];

const FIELDS: &[Case] = &[
    case("sky_lx: 0.3", "sky: 0.3", "did you mean “sky_lx”?", 6),
    case("sky_lx: 0.3", "weather: 0.3", "its fields: sky_lx, moon, when, ground, soaked", 6),
    case("depth: 6,", "depht: 6,", "did you mean “depth”?", 16),
    case("depth: 6,", "depth: 6, depth: 7,", "the field depth is written twice", 16),
    case("name: \"wall\", ", "", "this wall has no name", 28),
    case("projector: \"mini LED\",\n", "\n", "this station has no projector", 61),
    case("content: (picture: \"owl_glide\", from: (0, 0), to: (1, 1)),", "", "this station has no content", 61),
    case("picture: \"owl_glide\", ", "", "this content has no picture", 69),
    case(", typical: 90", "", "this band has no typical", 72),
    case("gain: 1.2, ", "", "this kind of fabric has no gain", 82),
    case("(name: \"mirror\", at", "Mirror(name: \"mirror\", at", "write FoldMirror(…)", 58),
    case("age: 35", "35", "the number 35 has no field name before it", 45),
];

#[test]
fn a_value_of_the_wrong_kind_is_told() {
    try_all(WRONG_KIND);
}

#[test]
fn a_value_out_of_range_is_told() {
    try_all(OUT_OF_RANGE);
}

#[test]
fn a_wrong_a_missing_and_a_doubled_field_are_told() {
    try_all(FIELDS);
}
