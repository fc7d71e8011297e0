//! All faults at once, each at its place, whatever kind it is of.

use super::GOOD;
use gauzelight::scene::{Catalogue, Yard};

#[test]
fn seven_faults_give_seven_messages_in_the_order_of_the_file() {
    let text = GOOD
        .replace("\"small\",", "\"small\"")
        .replace("sky_lx: 0.3", "sky: 0.3")
        .replace("left: 4, width: 1", "left: 7.5, width: 1")
        .replace("width: 4, height: 2),", "width: \"4 yd\", height: 0),")
        .replace("fabric: \"white tulle\"", "fabric: \"whit tulle\"")
        .replace("reflect: 0.5, diffuse: 0.2", "reflect: 0.9, diffuse: 0.2");
    let faults = Yard::parse(&text, "seven.ron", &Catalogue::builtin()).unwrap_err();
    let plain = faults.plain();
    let heads: Vec<&str> = plain.lines().map(|line| line.split(": error: ").next().unwrap()).collect();
    let expected = [
        "seven.ron:4:17",
        "seven.ron:6:15",
        "seven.ron:23:42",
        "seven.ron:28:46",
        "seven.ron:28:62",
        "seven.ron:48:31",
        "seven.ron:80:32",
    ];
    assert_eq!(heads, expected, "{plain}");
    let pretty = faults.pretty(false, 120);
    assert_eq!(pretty.matches("seven.ron:").count(), 7, "{pretty}");
}

#[test]
fn what_could_not_be_read_is_not_called_missing() {
    // The window is aimed at, filled with film and named by nothing that could be read; only its own fault is told.
    let text = GOOD.replace("sill: 1, width: 1.5", "sill: oops, width: 1.5").replace("aim: \"net\"", "aim: \"window\"");
    let faults = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_err();
    assert_eq!(faults.len(), 1, "{faults}");
}

#[test]
fn a_fault_after_an_item_that_was_left_out_keeps_its_place() {
    let text = GOOD
        .replace("sill: 1, width: 1.5", "sill: oops, width: 1.5")
        .replace("left: 4, width: 1", "left: 7.5, width: 1");
    let faults = Yard::parse(&text, "yard.ron", &Catalogue::builtin()).unwrap_err();
    let paths: Vec<&str> = faults.iter().map(|fault| fault.path.as_str()).collect();
    assert_eq!(paths, ["houses[0].openings[0].sill", "houses[0].openings[1].left"]);
    let lines: Vec<_> = faults.iter().map(|fault| faults.line_and_column(fault).unwrap().0).collect();
    assert_eq!(lines, [22, 23]);
}
