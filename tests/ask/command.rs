//! The command around the questions.

use std::{
    fs,
    path::Path,
    process::{Command, Output, Stdio},
};

fn ask(folder: &Path, options: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_gauzelight"))
        .arg("ask")
        .args(options)
        .current_dir(folder)
        .env("LC_ALL", "C")
        .stdin(Stdio::null())
        .output()
        .expect("the program starts")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

#[test]
fn without_a_terminal_the_usual_is_taken_and_said() {
    let folder = tempfile::tempdir().unwrap();
    let done = ask(folder.path(), &["--street", "dim"]);
    assert_eq!(done.status.code(), Some(0), "{}", text(&done.stderr));
    for said in [
        "--target window",
        "--width 1.2 m",
        "--height as high as its picture",
        "--lower-edge 1 m",
        "--distance 1.7 m",
        "--projector mini LED",
    ] {
        assert!(text(&done.stderr).contains(said), "{}", text(&done.stderr));
    }
    assert!(!text(&done.stderr).contains("--street"));
    assert!(text(&done.stdout).contains("gauzelight little.ron"), "{}", text(&done.stdout));
    // Too fine is never lost.
    let fine = "; faint below 2.0, and too fine to be read below 1.0; clear from 2.0, strong from 4.0";
    assert!(text(&done.stdout).contains(fine), "{}", text(&done.stdout));
    assert!(text(&done.stdout).contains("; lost below 1.5, else faint; clear from 7.0"), "{}", text(&done.stdout));
}

#[test]
fn nothing_is_written_over_unless_that_is_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("little.ron"), "mine").unwrap();
    let done = ask(folder.path(), &["--target", "wall"]);
    assert_eq!(done.status.code(), Some(0));
    assert!(text(&done.stderr).contains("little.ron is there already"));
    assert_eq!(fs::read_to_string(at("little.ron")).unwrap(), "mine");
    assert!(fs::read_to_string(at("little_2.ron")).unwrap().starts_with("// A wall 2.4 m wide"));
    ask(folder.path(), &["--target", "wall", "--force"]);
    assert!(fs::read_to_string(at("little.ron")).unwrap().starts_with("// A wall"));
}

#[test]
fn json_agrees_with_the_readings_of_the_yard() {
    let folder = tempfile::tempdir().unwrap();
    let done = ask(folder.path(), &["--target", "cloth", "--width", "6ft", "--distance", "9ft", "--json"]);
    let answer: serde_json::Value = serde_json::from_slice(&done.stdout).unwrap();
    assert_eq!(answer["yard"], "little.ron");
    let readings = Command::new(env!("CARGO_BIN_EXE_gauzelight"))
        .args(["readings", "little.ron", "--json"])
        .current_dir(folder.path())
        .output()
        .unwrap();
    let readings: serde_json::Value = serde_json::from_slice(&readings.stdout).unwrap();
    assert_eq!(readings["stations"][0], answer["reading"]);
    let sight = &readings["stations"][0]["spots"][0]["sight"];
    assert_eq!(*sight, answer["verdict"]["sight"]);
    assert_eq!(sight["word"], answer["verdict"]["word"]);
    assert_eq!(sight["answers"].as_array().unwrap().len(), 4);
}

#[test]
fn feet_bring_foot_candles() {
    let folder = tempfile::tempdir().unwrap();
    let done = ask(folder.path(), &["--target", "wall", "--width", "8ft"]);
    let page = text(&done.stdout);
    assert!(page.contains(") fc") && page.contains(" fc; ") && page.contains("' ") && !page.contains(" m,"), "{page}");
}

#[test]
fn faulty_options_end_with_code_2_and_a_sentence() {
    let folder = tempfile::tempdir().unwrap();
    let table: [(&[&str], &str); 14] = [
        (
            &["--lumens", "7500"],
            "--lumens: 7500 lm on the box, or measured? Say --box-lumens 7500 or --measured-lumens 7500",
        ),
        (&["--target", "windwo"], "--target: no thing to light is called “windwo” (did you mean “window”?)"),
        (&["--height", "900 m"], "--height: a height of 900 m is out of range; say from 0.1 to 20 m"),
        (&["--lower-edge", "-1 m"], "--lower-edge: a lower edge of -1 m is out of range"),
        (
            &["--projector", "mini LED", "--measured-lumens", "7500"],
            "--measured-lumens: 7500 lm measured is implausible for a “mini LED”",
        ),
        (
            &["--projector", "mini LED", "--measured-lumens", "7500"],
            "Say --box-lumens 7500 if that is printed on its box",
        ),
        (&["--measured-lumens", "7500", "--box-lumens", "7500"], "--box-lumens"),
        (&["--street", "moon"], "there are: country lane; dim street"),
        (&["--projector", "mini LEF"], "did you mean “mini LED”?"),
        (&["--fabric", "rear film, gray"], "did you mean “rear film, grey”?"),
        (&["--width", "wide"], "is not a length"),
        (&["--width", "900 m"], "--width: a width of 900 m is out of range; say from 0.1 to 20 m"),
        (&["--box-lumens", "-5"], "from 20 to 100000 lm"),
        (&["--picture-width", "40in"], "--picture-at"),
    ];
    for (options, wanted) in table {
        let done = ask(folder.path(), options);
        assert_eq!(done.status.code(), Some(2), "{options:?}");
        assert!(text(&done.stderr).contains(wanted), "{options:?}: {}", text(&done.stderr));
    }
    assert!(!folder.path().join("little.ron").exists());
    let done = ask(folder.path(), &["--out", "no/such/folder/little.ron"]);
    assert_eq!(done.status.code(), Some(1));
}
