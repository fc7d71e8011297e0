//! `list`: its four forms, and what it says of yards that have nothing or too much.

use super::{run, text, yard};

#[test]
fn it_prints_text_json_csv_and_labels() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    let said = |options: &[&str]| {
        let out = run(folder.path(), &[&["list", "yard.ron"], options].concat());
        assert!(out.status.success(), "{}", text(&out.stderr));
        text(&out.stdout)
    };
    let page = said(&[]);
    assert!(page.contains("mini LED") && page.contains("still to buy") && page.contains("-- owl --"), "{page}");
    let json: serde_json::Value = serde_json::from_str(&said(&["--json"])).unwrap();
    assert!(json["lines"].is_array() && json["packs"][0]["of"] == "owl");
    assert!(said(&["--csv"]).starts_with("sort,what,unit,"));
    let labels = said(&["--labels"]);
    assert!(labels.starts_with("-- owl --") && !labels.contains("still to buy"), "{labels}");
}

#[test]
fn it_refuses_what_does_not_fit_together_and_what_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    std::fs::write(folder.path().join("empty.ron"), r#"Yard(name: "empty")"#).unwrap();
    std::fs::write(folder.path().join("owned.ron"), r#"Yard(name: "owned", owned: [(what: "mini LDE")])"#).unwrap();
    assert_eq!(run(folder.path(), &["list", "yard.ron", "--json", "--csv"]).status.code(), Some(2));
    assert!(!run(folder.path(), &["list", "nowhere.ron"]).status.success());
    let owned = run(folder.path(), &["list", "owned.ron"]);
    assert_eq!(owned.status.code(), Some(2));
    assert!(text(&owned.stderr).contains("mini LED"), "{}", text(&owned.stderr));
    let empty = run(folder.path(), &["list", "empty.ron"]);
    assert!(empty.status.success() && text(&empty.stderr).contains("nothing to buy"), "{}", text(&empty.stderr));
}
