//! Texts that are not the notation, or only nearly.

use super::broken::{Case, case, try_all, try_texts};
use gauzelight::scene::{Catalogue, Yard};

/// Text, what must be said first, line and column.
const TEXTS: &[(&str, &str, usize, usize)] = &[
    ("(", "this “(” is never closed", 1, 1),
    ("Yard(\n  name: \"x\",\n", "this “(” is never closed", 1, 5),
    ("(name: \"x)\n", "this text is never closed", 1, 8),
    ("(name: r#\"x\")\n", "this raw text is never closed", 1, 8),
    ("(name: 'x, note: \"y\")", "single quotation mark is never closed", 1, 8),
    ("(name: 'x')", "a character in single quotes stands where a text in quotes is wanted", 1, 8),
    ("(name: '\\'')", "a character in single quotes", 1, 8),
    ("(name: \"x\", houses: [)", "“)” stands where the “[” of line 1 is still open", 1, 22),
    ("(name: \"x\"]", "“]” stands where the “(” of line 1 is still open", 1, 11),
    ("(name: \"x\"))", "something stands after the closing bracket", 1, 12),
    ("(name: \"x\")\n(name: \"y\")", "something stands after the closing bracket", 2, 1),
    ("name: \"x\"", "the file begins with a field", 1, 1),
    ("/* never closed", "this comment is never closed", 1, 1),
    ("(name: /* /* */ \"x\")", "this comment is never closed", 1, 8),
    ("// nothing but a comment", "the file ends where a value is wanted", 1, 25),
    ("#![enable(implicit_some)", "is never closed", 1, 1),
    ("(name: )", "a value is missing before this “)”", 1, 8),
    ("(name: ,)", "a value is missing before this comma", 1, 8),
    ("(name: \"x\", @)", "the character “@”", 1, 13),
    ("(name: “x”)", "does not begin a text", 1, 8),
    ("(name: \"x\" / \"y\")", "a comma is missing", 1, 10),
    ("(name: \"\\q\")", "begins no escape", 1, 9),
    ("(name: \"\\u{110000}\")", "begins no escape", 1, 9),
    ("(name: \"\\xZZ\")", "begins no escape", 1, 9),
    ("(name: \"x\" note: \"y\")", "a comma is missing after this value", 1, 10),
    ("(name: \"x\"; note: \"y\")", "“;” stands between two values", 1, 11),
    ("(name = \"x\")", "“=” stands after a field's name", 1, 7),
    ("(\"name\": \"x\")", "a field's name stands in quotes", 1, 2),
    ("{\"name\": \"x\"}", "the fields of a yard stand in curly brackets", 1, 1),
    ("[1, 2, 3]", "a list of 3 stands where a yard is wanted", 1, 1),
    ("\"yard\"", "the text “yard” stands where a yard is wanted", 1, 1),
    ("42", "the number 42 stands where a yard is wanted", 1, 1),
    ("House(name: \"x\")", "House(…) stands where a yard is wanted", 1, 1),
    ("(\"x\")", "the text “x” has no field name before it", 1, 2),
    ("((name: \"x\"))", "two pairs of brackets", 1, 2),
    ("()", "this yard has no name", 1, 1),
    ("Yard", "this yard has no name", 1, 1),
    ("Some(5)", "the number 5 stands where a yard is wanted", 1, 6),
    ("\u{0}", "stands where a value is wanted", 1, 1),
    ("<html></html>", "the character “<”", 1, 1),
    ("(name: \"a,\n note: \"b\")", "its closing quotation mark seems to be missing", 1, 8),
    ("(format: 2, name: \"x\", newfangled: 5)", "format 2, which is newer than this program", 1, 10),
    ("(name: \"x\", ground: (width: 6'))", "stands without quotes", 1, 29),
    ("(name: \"x\", ground: (width: 1.9 m))", "write \"1.9 m\"", 1, 29),
    ("(name: \"x\", ground: (width: 190cm))", "the length 190cm stands without quotes", 1, 29),
    ("(name: \"x\", ground: (width: 6ft 3in))", "write \"6ft 3in\"", 1, 29),
];

/// Slips in the midst of a good yard: all else is read on.
const SLIPS: &[Case] = &[
    case("\"small\",", "\"small\"", "a comma is missing after this value", 4),
    case("units: Metric,", "units: Metric;", "“;” stands between two values", 5),
    case("depth: 6,", "depth = 6,", "“=” stands after", 16),
    case("width: \"8 m\"", "width: 8 m", "write \"8 m\"", 15),
    case("hours: 100,", "\"hours\": 100,", "stands in quotes", 73),
    case("hours: 100,", "hours: @,", "the character “@”", 73),
    case("note: \"small\"", "note: „small“", "does not begin a text", 4),
];

#[test]
fn a_text_that_is_no_yard_says_so_at_its_place() {
    try_texts(TEXTS);
}

#[test]
fn a_slip_is_told_and_read_over() {
    try_all(SLIPS);
}

#[test]
fn what_the_notation_allows_is_read() {
    let texts = [
        "(name:\"x\")",
        "Yard (name: \"x\",)",
        "\u{feff}(name: \"x\")",
        "#![enable(implicit_some)]\n#![enable(unwrap_newtypes)]\n(name: \"x\")",
        "/* a /* b */ c */ (name: \"x\") // end",
        "(name: r##\"a \"# b\"##, note: r\"\\\")",
        "(name: \"x\", evening: Evening(sky_lx: +1.5e-1, moon: None), ground: Some((width: 1_0)))",
        "(name: \"x\", houses: [House(name: \"h\", at: (0, -0.5, .5), width: 1., depth: 2, height: 3, roof: Gable)])",
        "(name: \"x\", houses: [(name: \"h\", at: (0, 0, 0), width: r#\"6' 3 1/2\"\"#, depth: \"6′\", height: \"½ in\")])",
    ];
    for text in texts {
        Yard::parse(text, "yard.ron", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{text}\n{faults}"));
    }
}

#[test]
fn brackets_without_end_do_not_overflow() {
    for open in ["(", "[", "{", "Some(", "(a:(", "[(", "{1:"] {
        let faults = Yard::parse(&open.repeat(10_000), "yard.ron", &Catalogue::builtin()).unwrap_err();
        let text = faults.plain();
        assert!(text.contains("brackets stand more than 64 deep"), "{open}: {text}");
    }
    let comments = "/*".repeat(100_000);
    assert!(Yard::parse(&comments, "yard.ron", &Catalogue::builtin()).is_err());
}

#[test]
fn a_flood_of_faults_is_counted_and_soon_over() {
    let text = format!("(name: \"x\", {})", "nothing: 1, ".repeat(100_000));
    let faults = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_err();
    assert!(faults.len() <= 200);
    let text = format!("(name: \"x\", houses: [{}])", "@, ".repeat(100_000));
    let faults = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_err();
    assert_eq!(faults.len(), 200);
    assert!(faults.plain().contains("faults more"));
}

/// Text that a careless reader would look past to the end of the file, again and again; how quickly it is refused the bench tells.
#[test]
fn a_megabyte_of_nonsense_is_refused() {
    let pieces = [
        "1 ", "a ", "a: ", "\"a\" ", "r# ", "1 m, ", "a:1,", "(a:1),", "[],", "Some(1) ", "/**/a ", "'a' ", "@ ", "- ",
    ];
    for piece in pieces {
        for open in ["(", "[", "(name: \"x\", houses: ["] {
            let text = format!("{open}{}", piece.repeat((1 << 20) / piece.len()));
            assert!(Yard::parse(&text, "yard.ron", &Catalogue::builtin()).is_err(), "{open}{piece}");
        }
    }
}
