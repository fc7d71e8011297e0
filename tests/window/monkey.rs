//! A monkey at the window: thousands of random acts by pointer and keys. The window lives and answers, every yard on the disk can be
//! read, what is unsaved too, and memory stays bounded. One seed, one series of acts.

use super::stage::{LOOKS, Stage, changed};
use gauzelight::scene::{Catalogue, Yard};
use std::{
    fs,
    path::{Path, PathBuf},
    time::Duration,
};

/// How many acts there are; so many where nothing else is said.
const ACTS: (&str, usize) = ("GAUZELIGHT_TEST_ACTS", 200);
/// Which series it is.
const SEED: (&str, usize) = ("GAUZELIGHT_TEST_SEED", 1);
/// After so many acts it is looked whether all is well.
const EACH: usize = 100;
/// After so many the window is killed and opened again.
const KILL: usize = 1900;
/// The most memory that the window may take: a third of what a small old computer has, kB.
const MOST_KB: u64 = 4 << 18;
/// A folder so deep that no series of clicks leaves it upwards and saves a yard elsewhere.
const DEEP: &str = "a/b/c/d/e/f/g/h/i/j/k/l";

/// Keys that do something, and some that should do nothing.
const KEYS: [&str; 44] = [
    "Home",
    "f",
    "e",
    "o",
    "space",
    "Tab",
    "g",
    "n",
    "l",
    "h",
    "Delete",
    "x",
    "p",
    "t",
    "q",
    "F1",
    "Escape",
    "Escape",
    "Return",
    "BackSpace",
    "1",
    "2",
    "3",
    "9",
    "Left",
    "Right",
    "Up",
    "Down",
    "Prior",
    "Next",
    "shift+Left",
    "shift+Up",
    "comma",
    "period",
    "shift+comma",
    "w",
    "s",
    "a",
    "d",
    "r",
    "v",
    "F5",
    "ctrl+d",
    "ctrl+p",
];
/// What is typed into whatever takes it.
const TEXTS: [&str; 16] = [
    "2.5",
    "-3",
    "0",
    "1e9",
    "1/3",
    "6' 4 1/2\"",
    "nan",
    "owl",
    "kerb",
    "18:30",
    "2026-12-21",
    "(1, 2, 3)",
    "  ",
    "ein Fenster",
    "%%%",
    "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa",
];

/// Numbers by chance, always the same ones for one seed.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) as usize % most
    }

    fn of<'a>(&mut self, list: &[&'a str]) -> &'a str {
        list[self.below(list.len())]
    }

    /// A place in the window: anywhere, or where most can be clicked.
    fn place(&mut self) -> [String; 2] {
        let (from, size) = match self.below(6) {
            0 | 1 => ([0, 0], [1280, 800]),
            2 => ([0, 0], [1280, 40]),
            3 => ([10, 50], [200, 740]),
            4 => ([950, 50], [320, 600]),
            _ => ([380, 200], [520, 420]),
        };
        [0, 1].map(|i| (from[i] + self.below(size[i])).to_string())
    }
}

/// One act, as what is told to the pointer and the keys.
fn next(chance: &mut Chance) -> Vec<String> {
    let of = |words: &[&str]| words.iter().map(ToString::to_string).collect::<Vec<String>>();
    let file = ["one", "two", "three", "new/four"][chance.below(4)];
    let named = |chord: &str| of(&["key", chord, "sleep", "0.1", "key", "ctrl+a", "type", "--args", "1", "--", file]);
    match chance.below(100) {
        0..30 => {
            let [x, y] = chance.place();
            let button = if chance.below(12) == 0 { "3" } else { "1" };
            of(&["mousemove", &x, &y, "sleep", "0.03", "click", button])
        }
        30..45 => {
            let ([x, y], [to_x, to_y], [via_x, via_y]) = (chance.place(), chance.place(), chance.place());
            let button = if chance.below(4) == 0 { "3" } else { "1" };
            let held = chance.of(&["shift", "ctrl", "alt"]);
            let held: &[&str] = if chance.below(4) == 0 { &["keydown", held] } else { &[] };
            let up = held.last().map(|held| of(&["keyup", held])).unwrap_or_default();
            let way = ["mousemove", &x, &y, "mousedown", button, "sleep", "0.03", "mousemove", &via_x, &via_y];
            let end = ["sleep", "0.03", "mousemove", &to_x, &to_y, "sleep", "0.03", "mouseup", button];
            [of(held), of(&way), of(&end), up].concat()
        }
        45..70 => of(&["key", chance.of(&KEYS)]),
        70..77 => [
            of(&["key", "ctrl+a", "type", "--args", "1", "--"]),
            of(&[chance.of(&TEXTS), "key", chance.of(&["Return", "Tab"])]),
        ]
        .concat(),
        77..82 => of(&["key", "ctrl+z"]),
        82..85 => of(&["key", "ctrl+y"]),
        85..89 => [named("ctrl+s"), of(&["key", "Return"])].concat(),
        89..91 => [named("ctrl+o"), of(&["type", "--args", "1", ".ron", "key", "Return"])].concat(),
        91..93 => of(&["key", "Delete"]),
        93..96 => of(&["click", "--repeat", "3", chance.of(&["4", "5"])]),
        _ => of(&["key", "Escape"]),
    }
}

/// Every yard in a folder and below.
fn yards(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("a folder").flatten().map(|entry| entry.path());
    entries
        .flat_map(|path| match () {
            () if path.is_dir() => yards(&path),
            () if path.extension().is_some_and(|ending| ending == "ron") => vec![path],
            () => Vec::new(),
        })
        .collect()
}

/// What a window keeps of changes that are not saved.
#[derive(serde::Deserialize)]
struct Unsaved {
    yard: String,
}

/// How many yards lie on the disk, saved and unsaved; each can be read.
fn read_all(folder: &Path) -> (usize, usize) {
    let catalogue = Catalogue::builtin();
    let saved = yards(&folder.join(DEEP));
    for path in &saved {
        let loaded = Yard::open(path, &catalogue);
        loaded.unwrap_or_else(|faults| panic!("{}", faults.plain()));
    }
    let unsaved = yards(&folder.join("gauzelight/unsaved"));
    for path in &unsaved {
        // One that was saved meanwhile is gone.
        let Ok(text) = fs::read_to_string(path) else { continue };
        let unsaved: Unsaved = ron::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let loaded = Yard::parse(&unsaved.yard, "unsaved", &catalogue);
        loaded.unwrap_or_else(|faults| panic!("{}", faults.plain()));
    }
    (saved.len(), unsaved.len())
}

/// Shows the help and closes it: so long as it does, the window answers.
fn answers(stage: &Stage) {
    for _ in 0..4 {
        stage.act(&["key", "Escape"]);
    }
    std::thread::sleep(Duration::from_millis(500));
    let without = stage.picture();
    stage.act(&["key", "F1"]);
    for look in 0..LOOKS {
        if changed(&without, &stage.picture(), [440, 200, 400, 400]) > 0.3 {
            stage.act(&["key", "Escape"]);
            return;
        }
        // Its first Escape may have been for a list that was open; and a window that has just come may not have the keys yet.
        if look % 50 == 49 {
            stage.focus();
            stage.act(&["key", "F1"]);
        }
        std::thread::sleep(Duration::from_millis(100));
    }
    panic!("the window does not answer");
}

fn number(variable: (&str, usize)) -> usize {
    std::env::var(variable.0).ok().and_then(|text| text.parse().ok()).unwrap_or(variable.1)
}

/// Opens the window again where it was closed, which a monkey may do; any other end is a fault.
fn see_that_it_lives(stage: &mut Stage, folder: &Path, acts: usize) {
    let said = fs::read_to_string(folder.join("said")).unwrap_or_default();
    assert!(!said.contains("panicked"), "after {acts} acts: {said}");
    if let Some(ended) = stage.window.0.try_wait().expect("the window can be asked") {
        assert!(ended.success(), "after {acts} acts it ended with {ended}: {said}");
        eprintln!("{acts} acts: closed, and opened again");
        stage.open_again();
        stage.focus();
        answers(stage);
    }
}

fn memory_kb(stage: &Stage) -> u64 {
    let status = fs::read_to_string(format!("/proc/{}/status", stage.window.0.id())).unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:"));
    line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok()).unwrap_or(0)
}

#[test]
fn a_monkey_breaks_nothing_and_fills_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let (path, work) = (folder.path(), folder.path().join(DEEP));
    fs::create_dir_all(work.join("new")).expect("a folder");
    let Some(mut stage) = Stage::set(path, &work) else { return };
    stage.focus();
    answers(&stage);
    let (acts, mut chance) = (number(ACTS), Chance(number(SEED) as u64));
    for done in 1..=acts {
        let what = next(&mut chance);
        stage.act(&what.iter().map(String::as_str).collect::<Vec<_>>());
        see_that_it_lives(&mut stage, path, done);
        if done % EACH == 0 {
            answers(&stage);
            see_that_it_lives(&mut stage, path, done);
            let (saved, unsaved) = read_all(path);
            let memory = memory_kb(&stage);
            eprintln!("{done} acts: {} MB; {saved} yards saved, {unsaved} not", memory >> 10);
            assert!(memory < MOST_KB, "{memory} kB after {done} acts");
        }
        if done % KILL == 0 {
            stage.window.0.kill().expect("it can be killed");
            stage.open_again();
            stage.focus();
            answers(&stage);
        }
    }
}
