//! `compare` and what an adapted eye sees, at the terminal.

use super::{run, text};
use std::fs;

#[test]
fn a_comparison_as_text_csv_json_and_a_drawing() {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    let ask = |more: &[&str]| run(here, &[&["compare", "fabric_row.ron", "--station", "Sheer"], more].concat());
    let page = text(&ask(&["--plot", "row.svg"]).stdout);
    assert!(page.starts_with("Sheer on three: 12 fabrics, prices in your money\n"), "{page}");
    assert!(
        page.contains("white sheer  (as it is now)") && page.contains("from from the side") && page.contains("by day")
    );
    let svg = fs::read_to_string(here.join("row.svg")).unwrap();
    assert!(svg.contains(">garden row cover</text>") && svg.contains("seen from in front") && svg.contains("cd/m²"));
    let csv = text(&ask(&["--csv", "--from", "in front", "--sort", "cost"]).stdout);
    assert_eq!(csv.lines().count(), 13);
    // Of the names some hold one comma.
    let plain: Vec<&str> = csv.lines().filter(|line| !line.contains(", ")).collect();
    assert!(plain.iter().all(|line| line.split(',').count() == plain[0].split(',').count()), "{csv}");
    let json: serde_json::Value = serde_json::from_str(&text(&ask(&["--of", "projectors", "--json"]).stdout)).unwrap();
    assert_eq!(json["rows"].as_array().unwrap().len(), 7);
    assert!(json["rows"][0]["upkeep"]["kwh"].is_number() && json["rows"][0]["spots"][0]["word"].is_string());
}

#[test]
fn faulty_comparisons_end_with_a_sentence() {
    let folder = tempfile::tempdir().unwrap();
    for (options, code, says) in [
        (&["--station", "Owl"][..], 2, "no station is called “Owl”; there are: White tulle, Voile,"),
        (&["--station", "Sheer", "--of", "films"], 2, "it is one of: fabrics, pairs, projectors"),
        (&["--station", "Sheer", "--sort", "beauty"], 2, "it is one of: name, word, luminance"),
        (&["--station", "Sheer", "--from", "moon"], 2, "no viewing spot is called “moon”"),
        (&["--station", "Sheer", "--plot", "row.png"], 2, "a plot is an .svg, not row.png"),
        (&["--station", "Sheer", "--plot", "no/row.svg"], 1, "cannot write the plot: there is no folder no; make it"),
    ] {
        let done = run(folder.path(), &[&["compare", "fabric_row.ron"], options].concat());
        let said = text(&done.stderr);
        assert_eq!(done.status.code(), Some(code), "{said}");
        assert!(said.contains(says), "{said}");
    }
}

#[test]
fn an_adapted_still_says_what_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let still = |out: &str, more: &[&str]| {
        let options =
            [&["still", "one_window.ron", "--size", "160x90", "--samples", "1", "--adapted", "--out", out], more];
        run(folder.path(), &options.concat())
    };
    let done = still("eye.png", &[]);
    let said = text(&done.stderr);
    assert_eq!(done.status.code(), Some(0), "{said}");
    assert!(said.contains("as an eye sees it that is adapted to ") && said.contains("white is 80 cd/m²"), "{said}");
    assert!(image::open(folder.path().join("eye.png")).is_ok_and(|picture| picture.width() == 160));
    for (out, more, says) in [
        ("eye.exr", &[][..], "an .exr holds linear cd/m²"),
        ("eye.png", &["--white", "4"], "cannot be used with"),
        ("eye.png", &["--false-colour"], "cannot be used with"),
    ] {
        let done = still(out, more);
        let said = text(&done.stderr);
        assert_eq!(done.status.code(), Some(2), "{said}");
        assert!(said.contains(says), "{said}");
    }
}
