//! Files that are no yard, and pictures that are not there.

use super::GOOD;
use gauzelight::scene::{Catalogue, Yard};
use std::fs::{self, File};
use std::path::Path;

fn fault_of(path: &Path) -> String {
    Yard::open(path, &Catalogue::builtin()).unwrap_err().plain()
}

#[test]
fn a_file_that_cannot_be_a_yard_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name);

    assert!(fault_of(&path("nowhere.ron")).contains("nowhere.ron: error: the file cannot be read"));
    assert!(fault_of(folder.path()).contains("this is a folder"));

    for empty in ["", " \n\t\n"] {
        fs::write(path("empty.ron"), empty).unwrap();
        assert!(fault_of(&path("empty.ron")).contains("empty.ron: error: the file is empty"));
    }

    fs::write(path("latin.ron"), b"(\n    name: \"caf\xe9\",\n)").unwrap();
    assert!(fault_of(&path("latin.ron")).contains("not text in UTF-8: line 2"));

    // 200 MB without writing them.
    File::create(path("huge.ron")).unwrap().set_len(200 << 20).unwrap();
    assert!(fault_of(&path("huge.ron")).contains("larger than 8 MB"));
}

#[test]
fn a_text_too_large_is_refused_unread() {
    let faults = Yard::parse(&" ".repeat((8 << 20) + 1), "large.ron", &Catalogue::builtin()).unwrap_err();
    assert!(faults.plain().starts_with("large.ron: error: the file is larger than 8 MB"));
    assert!(faults.pretty(false, 80).contains("large.ron"));
}

#[test]
fn a_picture_is_looked_for_beside_the_yard() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("yard.ron");
    fs::write(&path, GOOD.replace("owl_glide", "own/picture.png")).unwrap();
    let warnings = Yard::open(&path, &Catalogue::builtin()).unwrap().warnings.plain();
    assert!(warnings.contains(":69:32: warning: ") && warnings.contains("put the file beside the yard"), "{warnings}");

    fs::create_dir(folder.path().join("own")).unwrap();
    fs::write(folder.path().join("own/picture.png"), b"any").unwrap();
    assert!(Yard::open(&path, &Catalogue::builtin()).unwrap().warnings.is_empty());
}
