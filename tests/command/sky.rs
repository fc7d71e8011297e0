//! Stills keep the sky that they asked for, and are the same with it and without.

use super::{program, yard};
use std::{
    fs,
    path::{Path, PathBuf},
};

/// A still of a yard, by a program whose cache is here.
fn still(folder: &Path, cache: &Path, out: &str) -> Vec<u8> {
    let options = ["still", "yard.ron", "--size", "64x36", "--samples", "1", "--out", out];
    let run = program(folder, &options).env("XDG_CACHE_HOME", cache).output().unwrap();
    assert!(run.status.success(), "{}", String::from_utf8_lossy(&run.stderr));
    fs::read(folder.join(out)).unwrap()
}

fn skies(cache: &Path) -> Vec<PathBuf> {
    let Ok(entries) = fs::read_dir(cache.join("gauzelight/skies")) else { return Vec::new() };
    let paths = entries.map(|entry| entry.unwrap().path());
    paths.filter(|path| path.extension().is_some_and(|ending| ending == "sky")).collect()
}

#[test]
fn a_kept_sky_gives_the_same_still_and_few_are_kept() {
    let (folder, cache) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
    fs::write(folder.path().join("yard.ron"), yard("owl_face")).unwrap();
    let first = still(folder.path(), cache.path(), "first.png");
    let [kept] = skies(cache.path()).try_into().unwrap();
    let bytes = fs::read(&kept).unwrap();
    assert!(still(folder.path(), cache.path(), "again.png") == first);
    assert!(fs::read(&kept).unwrap() == bytes);
    // Damaged, it is asked for and kept anew.
    fs::write(&kept, &bytes[..bytes.len() / 2]).unwrap();
    assert!(still(folder.path(), cache.path(), "damaged.png") == first);
    assert!(fs::read(&kept).unwrap() == bytes);
    // Of many the oldest go; what is no sky stays.
    let of = |name: &str| kept.with_file_name(name);
    (0..20).for_each(|i| fs::write(of(&format!("old {i}.sky")), "old").unwrap());
    fs::write(of("note.txt"), "mine").unwrap();
    let wider = yard("owl_face").replace("width: 4", "width: 5");
    fs::write(folder.path().join("yard.ron"), wider).unwrap();
    still(folder.path(), cache.path(), "wider.png");
    assert_eq!(skies(cache.path()).len(), 12);
    assert!(of("note.txt").exists());
    // A folder that cannot be made is no fault.
    let none = folder.path().join("yard.ron");
    still(folder.path(), &none, "without.png");
}
