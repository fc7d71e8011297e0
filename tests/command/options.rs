//! Faults of the options: each ends with code 2 and a sentence of our own.

use super::{run, text, yard};
use std::fs;

#[test]
fn faulty_options_end_with_code_2_and_a_sentence() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    let still = |more: &[&'static str]| -> Vec<&str> {
        let out: &[&str] = if more.contains(&"--out") { &[] } else { &["--out", "a.png"] };
        [&["still", "yard.ron"], out, more].concat()
    };
    let table: Vec<(Vec<&str>, &str)> = vec![
        (vec!["ask", "--distance", "-3"], "a distance of -3 m is out of range"),
        (vec!["ask", "--width", "-3ft"], "a width of -3 ft is out of range"),
        (vec!["ask", "--height", "-1' 2\""], "out of range"),
        (vec!["ask", "--picture-width", "-1 m", "--picture-at", "2 m"], "a picture of -1 m at 2 m is out of range"),
        (still(&["--clock", "25:00"]), "hours are from 0 to 23"),
        (still(&["--clock", "18:30"]), "has no date and place for --date and --clock"),
        (vec!["readings", "yard.ron", "--date", "2026-02-30"], "days 1 to 28"),
        (still(&["--white", "0"]), "white must be a luminance above 0"),
        (still(&["--white", "-1"]), "white must be a luminance above 0"),
        (still(&["--field", "180"]), "1 to 150"),
        (still(&["--from", "nowhere"]), "no viewing spot is called “nowhere”; there are: gate"),
        (still(&["--out", "a.jpg"]), "a still is a .png"),
        (still(&["--eye", "1,2,3", "--aim", "1,2,3"]), "the eye is where it aims"),
        (still(&["--false-colour", "5,1"]), "the first must be the lesser"),
        (still(&["--field", "1e38"]), "a field of view of 1e38° is not one"),
        (still(&["--white", "-1e38"]), "white must be a luminance above 0 cd/m², not -1e38"),
        (still(&["--false-colour", "--out", "a.exr"]), "write false colour to a .png"),
        (vec!["ask", "--box-lumens", "1e300"], "a claim of 1e300 lm is out of range"),
        (vec!["ask", "--width", "1000000000000000"], "a width of 1e15 m is out of range"),
        (vec!["stil", "yard.ron", "--out", "a.png"], "did you mean the command “still”?"),
        (vec!["redings", "yard.ron", "--json"], "did you mean the command “readings”?"),
        (vec!["frobnicate"], "no file and no command of this name: frobnicate"),
        (vec!["reading"], "did you mean the command “readings”?"),
        (vec!["owl"], "did you mean the built-in yard “owl_night.ron”?"),
        (vec!["readings", "owl_night"], "did you mean the built-in yard “owl_night.ron”?"),
        (
            vec!["evening", "yard.ron"],
            "the yard's evening has no date and place, which sunset and twilight follow from",
        ),
        (vec!["evening", "yard.ron", "--plot", "a.png"], "a plot is an .svg"),
        (vec!["evening", "yard.ron", "--word", "bright"], "one of faint, clear and strong"),
        (vec!["validate", "nowhere.ron"], "no file of this name: nowhere.ron"),
    ];
    for (options, wanted) in table {
        let done = run(folder.path(), &options);
        let said = text(&done.stderr);
        assert_eq!(done.status.code(), Some(2), "{options:?}: {said}");
        assert!(said.contains(wanted) && !said.contains("os error"), "{options:?}: {said}");
    }
    assert!(!folder.path().join("a.png").exists());
}

#[test]
fn another_hour_is_another_light() {
    let folder = tempfile::tempdir().unwrap();
    let when = r#"date: "2026-12-21", clock: "18:30", latitude_deg: 52.5, longitude_deg: 13.4, zone: "Europe/Berlin""#;
    let dated = yard("owl_face").replace("walls:", &format!("evening: (when: ({when})), walls:"));
    fs::write(folder.path().join("yard.ron"), dated).unwrap();
    let said = |more: &[&str]| {
        let done = run(folder.path(), &[&["readings", "yard.ron", "--json"], more].concat());
        assert_eq!(done.status.code(), Some(0), "{}", text(&done.stderr));
        text(&done.stdout)
    };
    let own = said(&[]);
    assert_eq!(said(&["--clock", "6:30 pm"]), own);
    assert_ne!(said(&["--clock", "15:30"]), own);
    assert_ne!(said(&["--date", "2026-06-21"]), own);
}

#[test]
fn a_yard_without_stations_says_so() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("bare.ron"), r#"Yard(name: "bare")"#).unwrap();
    let done = run(folder.path(), &["readings", "bare.ron"]);
    assert_eq!(done.status.code(), Some(0));
    assert!(text(&done.stdout).contains("no stations"), "{}", text(&done.stdout));
}

#[test]
fn numbers_for_other_programs_have_no_tails() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    let digits = |number: &str| number.trim_start_matches(['0', '.', '-']).chars().filter(char::is_ascii_digit).count();
    for format in ["--json", "--csv"] {
        let said = text(&run(folder.path(), &["readings", "yard.ron", format]).stdout);
        let numbers = said.split(|c: char| !(c.is_ascii_digit() || ".-".contains(c))).filter(|n| n.contains('.'));
        let long: Vec<&str> = numbers.filter(|number| digits(number) > 6).collect();
        assert!(long.is_empty(), "{format}: {long:?}");
    }
}
