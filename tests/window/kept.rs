//! Nothing is lost: two windows on one yard, kills, and a save that fails.

use super::stage::{LOOKS, Running, Stage, WIDTH, changed, mean};
use image::RgbImage;
use std::{
    fs,
    path::{Path, PathBuf},
    time::Duration,
};

fn pause(ms: u64) {
    std::thread::sleep(Duration::from_millis(ms));
}

/// Waits until something is there, so long that only a window that hangs gets to the end.
fn wait<T>(what: &str, mut look: impl FnMut() -> Option<T>) -> T {
    for _ in 0..LOOKS {
        if let Some(found) = look() {
            return found;
        }
        pause(100);
    }
    panic!("{what}: it does not come");
}

/// A yard with one window, as a file.
fn yard(file: &Path) {
    fs::copy(Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/one_window.ron"), file).expect("a copy");
}

/// The copies of what is not saved, by name.
fn copies(home: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(home.join("gauzelight/unsaved")).into_iter().flatten().flatten();
    let mut list: Vec<PathBuf> =
        entries.map(|entry| entry.path()).filter(|path| path.extension().is_some_and(|found| found == "ron")).collect();
    list.sort();
    list
}

/// What a window has not saved, once that is kept.
fn copy_of(home: &Path, window: &Running) -> String {
    let name = format!("{}-0.ron", window.0.id());
    let path = wait("a copy", || copies(home).into_iter().find(|path| path.ends_with(&name)));
    fs::read_to_string(path).expect("a copy that can be read")
}

/// Switches the one station, in the window that begins at `x`.
fn switch(stage: &Stage, x: u32) {
    let tile = (x + 150).to_string();
    stage.act(&["mousemove", &tile, "70", "sleep", "0.3", "click", "1", "sleep", "1", "key", "space", "sleep", "1"]);
}

fn save(stage: &Stage) {
    stage.act(&["keydown", "ctrl", "sleep", "0.2", "key", "s", "sleep", "0.2", "keyup", "ctrl"]);
}

/// Whether the station's small picture shows, in the window that begins at `x`.
fn is_there(now: &RgbImage, x: u32) -> bool {
    mean(now, [x + 20, 66, 36, 60]) > 10.0
}

/// Where a message comes, in the window that begins at `x`.
fn message(x: u32) -> [u32; 4] {
    [x + 440, 720, 400, 24]
}

/// The upper end of a question's first answer, which is warm.
fn first_answer(now: &RgbImage) -> Option<u32> {
    (400..480).find(|y| mean(now, [424, *y, 4, 8]) > 100.0)
}

#[test]
fn two_windows_on_one_yard_lose_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let (home, file) = (folder.path(), folder.path().join("mine.ron"));
    yard(&file);
    let Some(mut stage) = Stage::with_room(home, &file) else { return };
    stage.place(&stage.window, 0);
    let mut other = stage.another(Some(&file));
    stage.place(&other, WIDTH);
    stage.wait_for("both windows", |now| is_there(now, 0) && is_there(now, WIDTH));

    // One changes it and saves.
    let before = fs::read(&file).expect("a file");
    stage.place(&stage.window, 0);
    switch(&stage, 0);
    save(&stage);
    let saved = wait("a saved yard", || fs::read(&file).ok().filter(|now| *now != before));

    // The other, which has not read that, may not save over it.
    stage.place(&other, WIDTH);
    switch(&stage, WIDTH);
    let unsaved = copy_of(home, &other);
    let quiet = stage.picture();
    save(&stage);
    stage.wait_for("a message", |now| changed(&quiet, now, message(WIDTH)) > 0.02);
    assert_eq!(fs::read(&file).expect("a file"), saved);

    // After a kill, both have left what was not saved, each its own.
    stage.place(&stage.window, 0);
    stage.act(&["key", "Delete"]);
    let gone = copy_of(home, &stage.window);
    assert_ne!(gone, unsaved);
    for window in [&mut stage.window, &mut other] {
        window.0.kill().expect("it can be killed");
        window.0.wait().expect("it ends");
    }
    assert_eq!(copies(home).len(), 2);
    let next = stage.another(Some(&file));
    stage.place(&next, 0);
    let asked = stage.wait_for("the question", |now| first_answer(now).is_some());
    let at = first_answer(&asked).map_or(0, |y| y + 4).to_string();
    stage.act(&["mousemove", "440", &at, "sleep", "0.3", "click", "1"]);
    assert_eq!(copy_of(home, &next), gone, "the newest is offered first");
    wait("one copy less", || (copies(home).len() == 2).then_some(()));
    assert!(copies(home).iter().any(|path| fs::read_to_string(path).is_ok_and(|text| text == unsaved)));
    assert_eq!(fs::read(&file).expect("a file"), saved);
}

#[test]
fn a_save_that_fails_keeps_the_window_that_was_to_close() {
    let folder = tempfile::tempdir().expect("a folder");
    let (home, place) = (folder.path(), folder.path().join("place"));
    fs::create_dir(&place).expect("a folder");
    let file = place.join("mine.ron");
    yard(&file);
    let Some(mut stage) = Stage::with_room(home, &file) else { return };
    stage.place(&stage.window, 0);
    stage.wait_for("the window", |now| is_there(now, 0));
    switch(&stage, 0);
    let unsaved = copy_of(home, &stage.window);
    // The folder is no more.
    fs::remove_dir_all(&place).expect("it can be removed");
    fs::write(&place, "no folder any more").expect("a file");

    let closed = stage.picture();
    stage.act(&["mousemove", "90", "20", "click", "1"]);
    stage.wait_for("the menu", |now| changed(&closed, now, [20, 60, 100, 290]) > 0.02);
    stage.act(&["mousemove", "40", "416", "sleep", "0.3", "click", "1"]);
    let asked = stage.wait_for("the question", |now| first_answer(now).is_some());
    let at = first_answer(&asked).map_or(0, |y| y + 4).to_string();
    stage.act(&["mousemove", "440", &at, "sleep", "0.3", "click", "1"]);
    stage.wait_for("a message", |now| first_answer(now).is_none() && changed(&asked, now, message(0)) > 0.02);
    assert!(stage.window.0.try_wait().expect("it can be asked").is_none(), "the window closed");
    assert_eq!(copy_of(home, &stage.window), unsaved);

    // Once it can be saved it is, and the window stays: nobody wants it closed any more.
    fs::remove_file(&place).expect("it can be removed");
    fs::create_dir(&place).expect("a folder");
    save(&stage);
    wait("a saved yard", || file.exists().then_some(()));
    pause(2000);
    assert!(stage.window.0.try_wait().expect("it can be asked").is_none(), "the window closed");
}
