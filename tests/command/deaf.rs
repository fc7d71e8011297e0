//! Nobody listens: hints and faults go nowhere, and the work goes on.

use super::{program, run, text, yard};
use std::{fs, process::Stdio};

/// Standard error that takes nothing: a pipe whose reader is gone.
fn closed() -> Stdio {
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    Stdio::from(writer)
}

#[test]
fn a_closed_standard_error_breaks_nothing() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("bad.ron"), yard("owl_face").replace("width: 4", "width: 0")).unwrap();
    fs::write(folder.path().join("warns.ron"), yard("nowhere.png")).unwrap();
    let table: [(&[&str], i32); 6] = [
        (&["ask"], 0),
        (&["ask", "--target", "windwo"], 2),
        (&["validate", "bad.ron"], 2),
        (&["validate", "bad.ron", "--lines"], 2),
        (&["validate", "warns.ron"], 0),
        (&["frobnicate"], 2),
    ];
    for (options, code) in table {
        let done = program(folder.path(), options).stderr(closed()).output().unwrap();
        assert_eq!(done.status.code(), Some(code), "{options:?}");
    }
}

#[test]
fn the_answer_comes_before_the_complaint_about_the_little_yard() {
    let folder = tempfile::tempdir().unwrap();
    let done = run(folder.path(), &["ask", "--out", "no/such/folder/little.ron"]);
    assert_eq!(done.status.code(), Some(1));
    let (out, err) = (text(&done.stdout), text(&done.stderr));
    assert!(out.contains("mean on the target") && !out.contains("little yard"), "{out}");
    assert!(err.contains("cannot write the little yard") && !err.contains("os error"), "{err}");
    let done = run(folder.path(), &["ask", "--json", "--out", "no/such/folder/little.ron"]);
    let answer: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
    assert!(answer["yard"].is_null() && answer["reading"]["on"] == true);
}

#[test]
fn who_stops_reading_hears_the_same_code() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    for options in [&["judge", "yard.ron"][..], &["judge", "yard.ron", "--json", "--quick"], &["readings", "yard.ron"]]
    {
        let heard = run(folder.path(), options).status.code();
        let done = program(folder.path(), options).stdout(closed()).output().unwrap();
        assert_eq!((done.status.code(), text(&done.stderr).as_str()), (heard, ""), "{options:?}");
        assert_ne!((options[0], heard), ("judge", Some(0)));
    }
}
