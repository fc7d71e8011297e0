//! What the commands write: whole or not at all, and never over what a yard is made of.

use super::{program, run, text, yard};
use std::{fs, path::Path};

/// A yard with a picture of its own and an evening, and a file to be written over.
fn set_up(folder: &Path) {
    let picture = image::RgbImage::from_pixel(8, 8, image::Rgb([200, 100, 50]));
    picture.save(folder.join("own.png")).unwrap();
    let when = r#"date: "2026-12-21", clock: "18:30", latitude_deg: 52.5, longitude_deg: 13.4, zone: "Europe/Berlin""#;
    let dated = yard("own.png").replace("walls:", &format!("evening: (when: ({when})), walls:"));
    fs::write(folder.join("yard.ron"), dated).unwrap();
}

/// Every command that writes a file, to that file.
fn writers(out: &str) -> Vec<Vec<&str>> {
    let still = ["still", "yard.ron", "--size", "64x36", "--samples", "1", "--out", out];
    match Path::new(out).extension().and_then(|ending| ending.to_str()) {
        Some("png") => vec![still.to_vec(), [&still[..], &["--adapted"]].concat()],
        Some("exr") => vec![still.to_vec()],
        Some("svg") => vec![
            vec!["compare", "yard.ron", "--station", "owl", "--of", "projectors", "--plot", out],
            vec!["evening", "yard.ron", "--plot", out],
        ],
        _ => vec![vec!["sheet", "yard.ron", "--out", out]],
    }
}

#[test]
fn nothing_is_written_over_the_yard_or_its_pictures() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    set_up(folder.path());
    let (before, picture) = (fs::read(at("yard.ron")).unwrap(), fs::read(at("own.png")).unwrap());
    let outs = ["a.png", "a.exr", "a.svg", "a.pdf", "a.html"];
    for out in outs {
        fs::hard_link(at("yard.ron"), at(out)).unwrap();
    }
    for (out, what) in outs
        .into_iter()
        .map(|out| (out, "the yard itself"))
        .chain([("own.png", "a file that the yard reads"), ("./own.png", "a file that the yard reads")])
    {
        for options in writers(out) {
            let done = run(folder.path(), &options);
            let said = text(&done.stderr);
            assert_eq!(done.status.code(), Some(2), "{options:?}: {said}");
            assert!(said.contains(what) && said.contains("choose another name"), "{options:?}: {said}");
        }
    }
    let done = run(folder.path(), &["ask", "--out", "yard.ron"]);
    assert_eq!(done.status.code(), Some(0));
    assert_eq!((fs::read(at("yard.ron")).unwrap(), fs::read(at("own.png")).unwrap()), (before, picture));
}

#[cfg(unix)]
#[test]
fn a_disk_that_takes_no_more_is_an_error_and_the_old_file_stays() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    set_up(folder.path());
    let outs = ["a.png", "a.exr", "a.svg", "a.pdf", "a.html"];
    let mut all: Vec<Vec<&str>> = outs.into_iter().flat_map(writers).collect();
    all.push(vec!["ask", "--force", "--out", "little.ron"]);
    all.push(vec!["card", "yard.ron", "--out", "."]);
    for old in outs.into_iter().chain(["little.ron", "1 owl.png"]) {
        fs::write(at(old), "old").unwrap();
    }
    let names = |folder: &Path| fs::read_dir(folder).unwrap().count();
    let count = names(folder.path());
    for options in all {
        // The shell takes away the room: no file may have more than half a kilobyte, and who tries is told so rather than killed.
        let program = program(folder.path(), &options);
        let mut shell = std::process::Command::new("bash");
        shell.args(["-c", "trap '' XFSZ; ulimit -f 0; exec \"$0\" \"$@\""]).arg(program.get_program());
        let done = shell.args(program.get_args()).current_dir(folder.path()).output().unwrap();
        let said = text(&done.stderr);
        assert_eq!(done.status.code(), Some(1), "{options:?}: {said}");
        assert!(said.contains("; make room there, or choose another folder"), "{options:?}: {said}");
        assert_eq!(names(folder.path()), count, "{options:?} left something");
    }
    for old in outs.into_iter().chain(["little.ron", "1 owl.png"]) {
        assert_eq!(fs::read_to_string(at(old)).unwrap(), "old", "{old}");
    }
}

#[cfg(unix)]
#[test]
fn a_pipe_that_nobody_reads_from_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    set_up(folder.path());
    assert!(std::process::Command::new("mkfifo").arg(folder.path().join("a.png")).status().unwrap().success());
    let options = &writers("a.png")[0];
    let done = run(folder.path(), options);
    assert_eq!(done.status.code(), Some(1));
    let said = text(&done.stderr);
    assert!(said.contains("nobody reads from it: a.png; start its reader first, or name a file"), "{said}");
    // With a reader it is a file like others.
    let reader = std::process::Command::new("cat")
        .arg(folder.path().join("a.png"))
        .stdout(std::process::Stdio::piped())
        .spawn()
        .unwrap();
    assert_eq!(run(folder.path(), options).status.code(), Some(0));
    assert!(reader.wait_with_output().unwrap().stdout.starts_with(b"\x89PNG"));
}

#[test]
fn folders_are_told_alike() {
    let folder = tempfile::tempdir().unwrap();
    set_up(folder.path());
    fs::create_dir(folder.path().join("out")).unwrap();
    for what in [&["still"][..], &["sheet"]] {
        let done = run(folder.path(), &[what, &["yard.ron", "--out", "out"]].concat());
        let said = text(&done.stderr);
        assert!(done.status.code() == Some(2) && said.contains("this is a folder: out; name a file in it"), "{said}");
    }
    for options in [&["still", "yard.ron", "--out", "no/a.png"][..], &["card", "yard.ron", "--out", "no/cards"]] {
        let done = run(folder.path(), options);
        let said = text(&done.stderr);
        assert!(done.status.code() == Some(1) && said.contains("there is no folder no; make it"), "{said}");
    }
    assert!(!folder.path().join("no").exists());
    let done = run(folder.path(), &["card", "yard.ron", "--out", "cards"]);
    assert_eq!((done.status.code(), text(&done.stdout).trim()), (Some(0), "cards/1 owl.png"));
    let done = run(folder.path(), &["card", "yard.ron", "--out", "yard.ron"]);
    assert!(done.status.code() == Some(1) && text(&done.stderr).contains("this file is there already: yard.ron"));
}

#[test]
fn what_lacks_a_picture_says_so_by_its_code() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("yard.ron"), yard("nowhere.png")).unwrap();
    for out in ["a.png", "a.pdf"] {
        for options in writers(out) {
            let done = run(folder.path(), &options);
            assert_eq!(done.status.code(), Some(3), "{}", text(&done.stderr));
            assert!(folder.path().join(out).exists() && text(&done.stderr).contains("nowhere.png"));
        }
    }
}

#[test]
fn a_full_device_is_never_done() {
    if !Path::new("/dev/full").exists() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    set_up(folder.path());
    for out in ["a.png", "a.exr", "a.svg", "a.pdf", "a.html"] {
        #[cfg(unix)]
        std::os::unix::fs::symlink("/dev/full", folder.path().join(out)).unwrap();
        for options in writers(out) {
            let done = run(folder.path(), &options);
            assert_eq!(done.status.code(), Some(1), "{options:?}: {}", text(&done.stderr));
            assert!(text(&done.stderr).contains("make room there"), "{options:?}: {}", text(&done.stderr));
        }
    }
    let done = run(folder.path(), &["ask", "--force", "--out", "/dev/full"]);
    assert_eq!(done.status.code(), Some(1), "{}", text(&done.stderr));
}
