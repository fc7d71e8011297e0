//! Yards of very much: what is told of them, and that they are refused rather than never answered.

use super::{run, text};
use std::fmt::Write as _;

#[test]
fn more_stations_than_patience_and_more_forms_than_room_are_told() {
    let folder = tempfile::tempdir().unwrap();
    // No two of a size.
    let mut figures = String::new();
    (0..1000).for_each(|i| {
        let height = 1.5 + 0.0005 * f64::from(i);
        writeln!(figures, "Figure(name: \"figure {i}\", at: ({}, 0, {}), height: {height:.4}),", i % 50, i / 50)
            .unwrap()
    });
    let mut stations = String::new();
    (0..1001).for_each(|i| {
        let content = "content: (picture: \"owl_face\")";
        writeln!(stations, "(name: \"s{i}\", projector: \"mini LED\", at: (0, 1, 4), aim: (0, 1, 0), {content}),")
            .unwrap();
    });
    let yard = |forms: &str, stations: &str| {
        format!(
            "Yard(format: 1, name: \"much\", ground: (width: 60, depth: 60),\nforms: [{forms}],\nstations: [{stations}])"
        )
    };
    for (file, content, list, words) in [
        ("figures.ron", yard(&figures, ""), "forms", "no command takes more than"),
        ("stations.ron", yard("", &stations), "stations", "judging them takes half a minute or more"),
    ] {
        std::fs::write(folder.path().join(file), content).unwrap();
        let told = run(folder.path(), &["validate", file, "--lines"]);
        let said = text(&told.stderr);
        assert!(told.status.success(), "{said}");
        let line = said.lines().find(|line| line.contains(words)).unwrap_or_else(|| panic!("{said}"));
        assert!(line.contains(list), "{line}");
    }
    let refused = run(folder.path(), &["readings", "figures.ron"]);
    assert_eq!(refused.status.code(), Some(1));
    assert!(text(&refused.stderr).contains("hide or leave out"), "{}", text(&refused.stderr));
    let alike: String =
        (0..1000).map(|i| format!("Figure(name: \"f{i}\", at: ({}, 0, {})),", i % 50, i / 50)).collect();
    let crowd = yard(&alike, "");
    std::fs::write(folder.path().join("crowd.ron"), crowd).unwrap();
    let told = text(&run(folder.path(), &["validate", "crowd.ron", "--lines"]).stderr);
    assert!(
        told.contains("leaves out forms of which more than four are alike") && !told.contains("no command"),
        "{told}"
    );
    let read = run(folder.path(), &["readings", "crowd.ron"]);
    assert!(read.status.success(), "{}", text(&read.stderr));
    let fine = run(folder.path(), &["validate", "owl_night.ron", "--lines"]);
    assert!(!text(&fine.stderr).contains("takes"), "{}", text(&fine.stderr));
}
