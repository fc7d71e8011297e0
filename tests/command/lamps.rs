//! Lamp files beside a yard, and what meters say of them.

use super::{run, text};
use std::fs;

/// A lamp of a file, and two meters.
const YARD: &str = r#"Yard(format: 1, name: "yard",
    lamps: [(name: "wall lamp", kind: "measured", at: (0, 3, 0))],
    meters: [(name: "below", at: (0, 1, 0), tilt_deg: 90), (name: "bed, left", at: (0, 3, -2), kind: NeighbourWindow)],
    lamp_kinds: [(name: "measured", spread: File(path: "lamp.ies"))],
)"#;
const FILE: &str = include_str!("../light/data/lamp_c_symmetric.ies");

#[test]
fn a_lamp_file_is_read_beside_its_yard_or_its_fault_is_told_once() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), YARD).unwrap();
    let at = "yard.ron:4:56: warning: lamp_kinds[0].spread.path: ";
    let table = [
        (None, "there is no lamp file “lamp.ies”; a lamp of this kind stays dark (put the file beside the yard)"),
        (Some(""), "the lamp file is wrong at line 1: no line begins with TILT="),
        (Some("TILT=NONE\n1 1 1 2 1 1 2 0 0 0 1 1 1 0 90 0\n5 -5"), "the lamp file is wrong at line 3, number 2: "),
    ];
    for (file, says) in table {
        if let Some(file) = file {
            fs::write(folder.path().join("lamp.ies"), file).unwrap();
        }
        let done = run(folder.path(), &["validate", "yard.ron", "--lines"]);
        let said = text(&done.stderr);
        assert_eq!((done.status.code(), said.lines().count()), (Some(0), 1), "{said}");
        assert!(said.starts_with(at) && said.contains(says) && said.contains("stays dark"), "{said}");
        let done = run(folder.path(), &["readings", "yard.ron"]);
        assert!(text(&done.stderr).contains("lamp.ies") && done.status.success());
    }
    fs::write(folder.path().join("lamp.ies"), FILE).unwrap();
    let done = run(folder.path(), &["validate", "yard.ron"]);
    assert_eq!((text(&done.stdout).as_str(), text(&done.stderr).as_str()), ("yard.ron is sound\n", ""));
}

#[test]
fn meters_stand_after_the_stations() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), YARD).unwrap();
    fs::write(folder.path().join("lamp.ies"), FILE).unwrap();
    let say = |option: &[&str]| text(&run(folder.path(), &[&["readings", "yard.ron"], option].concat()).stdout);
    // 1000 cd straight down, 2 m above, and the sky.
    let page = say(&[]);
    assert!(page.contains("below, meter\n  on it              250 lx"), "{page}");
    assert!(page.contains("bed, left, meter in a neighbour’s window") && page.contains("wall lamp: 250 lx"), "{page}");
    let json: serde_json::Value = serde_json::from_str(&say(&["--json"])).unwrap();
    assert_eq!(json["stations"].as_array().map(Vec::len), Some(0));
    assert_eq!(json["meters"][0]["sources"][0]["source"], "wall lamp");
    assert!((json["meters"][0]["lx"]["typical"].as_f64().unwrap() - 250.0).abs() < 2.0);
    let table = say(&["--csv"]);
    let meters: Vec<&str> = table.lines().skip_while(|line| !line.is_empty()).skip(1).collect();
    assert!(meters[0].starts_with("meter,neighbour_window,lx_low,") && meters[1].starts_with("\"below\",false,"));
    // Only that name holds a comma.
    let columns = |line: &&str| line.replace("bed, left", "bed").split(',').count();
    assert!(meters.len() > 3 && meters.iter().all(|line| columns(line) == columns(&meters[0])), "{table}");
}

#[test]
fn an_own_catalogue_names_no_lamp_file() {
    let text = r#"OwnCatalogue(lamp_kinds: [(name: "measured", spread: File(path: "lamp.ies"))])"#;
    let faults = gauzelight::scene::OwnCatalogue::parse(text, "own.ron").unwrap_err().plain();
    assert!(
        faults.contains("own.ron:1:") && faults.contains("write this kind of lamp into the yard itself"),
        "{faults}"
    );
}
