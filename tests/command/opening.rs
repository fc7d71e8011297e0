//! What is opened: files that are files, not too large, and where the yard may look.

use super::{program, run, text, yard};
use std::{
    fs::{self, File},
    path::Path,
};

/// A lamp of a file.
fn lamp(path: &str) -> String {
    format!(
        r#"Yard(format: 1, name: "yard", lamps: [(name: "lamp", kind: "measured", at: (0, 3, 0))],
    lamp_kinds: [(name: "measured", spread: File(path: "{path}"))])"#
    )
}

const IES: &str = include_str!("../light/data/lamp_c_symmetric.ies");

/// What `validate` says of a yard, and its code.
fn validated(folder: &Path, text_of_yard: &str, more: &[&str]) -> (String, Option<i32>) {
    fs::write(folder.join("yard.ron"), text_of_yard).unwrap();
    let done = run(folder, &[&["validate", "yard.ron", "--lines"], more].concat());
    (text(&done.stderr), done.status.code())
}

#[cfg(unix)]
#[test]
fn what_is_no_file_is_refused_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = |name: &str| {
        assert!(std::process::Command::new("mkfifo").arg(folder.path().join(name)).status().unwrap().success());
    };
    pipe("pipe.ron");
    pipe("pipe.png");
    pipe("pipe.ies");
    for place in ["pipe.ron", "/dev/zero"] {
        for command in [&["validate", place][..], &["readings", place], &["still", place, "--out", "a.png"]] {
            let done = run(folder.path(), command);
            let said = text(&done.stderr);
            assert_eq!(done.status.code(), Some(2), "{said}");
            assert!(said.contains("the file is no file but a pipe or a device"), "{said}");
        }
    }
    for (yard, says) in [
        (yard("pipe.png"), "the picture is no file but a pipe or a device"),
        (lamp("pipe.ies"), "the lamp file is no file but a pipe or a device"),
        (yard("."), "the picture is a folder"),
    ] {
        let (said, code) = validated(folder.path(), &yard, &[]);
        assert!(code == Some(0) && said.contains(says), "{said}");
        assert!(text(&run(folder.path(), &["readings", "yard.ron"]).stderr).contains(says));
    }
}

#[test]
fn sizes_are_bounded_and_told() {
    let folder = tempfile::tempdir().unwrap();
    let long = |name: &str, megabytes: u64| {
        File::create(folder.path().join(name)).unwrap().set_len(megabytes << 20).unwrap();
    };
    long("long.ron", 5000);
    long("long.png", 5000);
    long("long.ies", 5000);
    let done = run(folder.path(), &["validate", "long.ron"]);
    assert!(text(&done.stderr).contains("larger than 8 MB") && done.status.code() == Some(2));
    for (yard, says) in [
        (yard("long.png"), "the picture is larger than 128 MB"),
        (lamp("long.ies"), "the lamp file is larger than 8 MB"),
    ] {
        let (said, code) = validated(folder.path(), &yard, &[]);
        assert!(code == Some(0) && said.contains(says), "{said}");
    }
}

/// A GIF of so many pixels and a few bytes: one frame of one colour.
fn gif(width: u16, height: u16) -> Vec<u8> {
    let [w, h] = [width, height].map(u16::to_le_bytes);
    let screen = [&b"GIF89a"[..], &w, &h, &[0x80, 0, 0, 0, 0, 0, 255, 255, 255]].concat();
    let frame = [&[0x2c, 0, 0, 0, 0][..], &w, &h, &[0, 2, 2, 0x44, 1, 0, 0x3b]].concat();
    [screen, frame].concat()
}

#[test]
fn a_small_file_of_a_huge_picture_is_refused_with_its_size() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("huge.gif"), gif(7900, 7900)).unwrap();
    let (said, code) = validated(folder.path(), &yard("huge.gif"), &[]);
    let size = "the picture is 7900 by 7900 texels, which takes 714 MB to open where 512 are the most; make it smaller";
    assert!(code == Some(0) && said.contains(size), "{said}");
}

#[test]
fn a_yard_reads_outside_its_folder_only_if_its_owner_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let inside = folder.path().join("yards");
    fs::create_dir(&inside).unwrap();
    fs::create_dir(inside.join("sub")).unwrap();
    image::RgbImage::from_pixel(8, 8, image::Rgb([200, 100, 50])).save(folder.path().join("secret.png")).unwrap();
    fs::copy(folder.path().join("secret.png"), inside.join("sub/own.png")).unwrap();
    fs::write(folder.path().join("secret.ies"), IES).unwrap();
    let whole = folder.path().join("secret.png").display().to_string().replace('\\', "/");
    let mut outside = vec![
        (yard("../secret.png"), "the picture"),
        (yard("sub/../../secret.png"), "the picture"),
        (yard(&whole), "the picture"),
        (lamp("../secret.ies"), "the lamp file"),
    ];
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink("../secret.png", inside.join("soft.png")).unwrap();
        std::os::unix::fs::symlink("..", inside.join("way")).unwrap();
        outside.extend([(yard("soft.png"), "the picture"), (yard("way/secret.png"), "the picture")]);
    }
    for (text_of_yard, what) in &outside {
        let (said, code) = validated(&inside, text_of_yard, &[]);
        let says = format!("{what} lies outside the yard's folder");
        assert!(code == Some(0) && said.contains(&says) && said.contains("say --files-from-anywhere"), "{said}");
        assert_eq!(validated(&inside, text_of_yard, &["--files-from-anywhere"]), (String::new(), Some(0)));
        let done = run(&inside, &["readings", "yard.ron"]);
        assert!(text(&done.stderr).contains(&says) && text(&done.stderr).contains("--files-from-anywhere"));
        let done = run(&inside, &["readings", "yard.ron", "--files-from-anywhere"]);
        assert_eq!((text(&done.stderr).as_str(), done.status.code()), ("", Some(0)));
    }
    // What is not there at all says no more than that it would lie outside.
    let (said, _) = validated(&inside, &yard("../nowhere.png"), &[]);
    assert!(said.contains("lies outside the yard's folder"), "{said}");
    for name in ["sub/own.png", "./sub/../sub/own.png"] {
        assert_eq!(validated(&inside, &yard(name), &[]), (String::new(), Some(0)), "{name}");
    }
    // The folder is the yard's, wherever the program runs.
    let done = program(folder.path(), &["validate", "yards/yard.ron"]).output().unwrap();
    assert_eq!(text(&done.stderr), "");
}
