//! The window, opened on a virtual display and worked with pointer and keys as a person would.
#![cfg(all(feature = "viewer", target_os = "linux"))]

mod hands;
mod monkey;

use image::RgbImage;
use std::{
    fs::File,
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{Mutex, MutexGuard, PoisonError},
    time::{Duration, Instant},
};

/// A display that nobody else uses.
const DISPLAY: &str = ":87";

/// A program that ends with the test.
struct Running(Child);

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

fn have(program: &str) -> bool {
    Command::new(program).arg("-version").stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok()
}

/// One window at a time: two would share the cores, and one the pointer.
static ALONE: Mutex<()> = Mutex::new(());

/// A virtual display with the program's window on it, which remembers nothing of other evenings.
struct Stage {
    window: Running,
    work: PathBuf,
    _display: Running,
    _alone: MutexGuard<'static, ()>,
}

impl Stage {
    /// Opens the window again once it has ended.
    fn open_again(&mut self, folder: &Path) {
        self.window = start(&program(folder), &[], folder, &self.work);
    }
}

/// Opens a window that keeps its own things in `folder` and works in `work`; `None` where the tools are not there, which CI forbids.
fn stage(folder: &Path, work: &Path) -> Option<Stage> {
    if !["Xvfb", "xdotool", "import"].iter().all(|p| have(p)) {
        assert!(std::env::var_os("CI").is_none(), "Xvfb, xdotool and import must be installed");
        eprintln!("SKIPPED, for want of Xvfb, xdotool or import");
        return None;
    }
    let alone = ALONE.lock().unwrap_or_else(PoisonError::into_inner);
    let display = start("Xvfb", &[DISPLAY, "-screen", "0", "1280x800x24"], folder, work);
    std::thread::sleep(Duration::from_secs(1));
    // The same program to the end, whatever is built meanwhile.
    std::fs::copy(env!("CARGO_BIN_EXE_gauzelight"), program(folder)).expect("a copy");
    let window = start(&program(folder), &[], folder, work);
    Some(Stage { window, work: work.to_owned(), _display: display, _alone: alone })
}

fn program(folder: &Path) -> String {
    folder.join("program").display().to_string()
}

/// Starts a program that keeps its own things in `home` and says there, in `said`, what it has to say.
fn start(program: &str, arguments: &[&str], home: &Path, work: &Path) -> Running {
    let said = File::options().append(true).create(true).open(home.join("said")).expect("a file");
    let child = Command::new(program)
        .args(arguments)
        .current_dir(work)
        .env("DISPLAY", DISPLAY)
        .env("XDG_CONFIG_HOME", home)
        .env("XDG_DATA_HOME", home)
        .env_remove("WAYLAND_DISPLAY")
        .stdout(Stdio::null())
        .stderr(said)
        .spawn()
        .expect("a program starts");
    Running(child)
}

fn act(arguments: &[&str]) {
    let done = Command::new("xdotool").args(arguments).env("DISPLAY", DISPLAY).status().expect("xdotool runs");
    assert!(done.success(), "xdotool {arguments:?}");
}

/// Gives the window the keys, once it is there.
fn focus() {
    act(&["mousemove", "640", "300"]);
    act(&["search", "--sync", "--onlyvisible", "--name", "gauzelight", "windowfocus"]);
}

/// As slowly as a hand does it: a window takes the pointer once a frame.
fn drag(from: [i32; 2], to: [i32; 2]) {
    let pause = || std::thread::sleep(Duration::from_millis(150));
    act(&["mousemove", &from[0].to_string(), &from[1].to_string()]);
    pause();
    act(&["mousedown", "1"]);
    for step in 1..=4 {
        pause();
        let at = |i: usize| (from[i] + (to[i] - from[i]) * step / 4).to_string();
        act(&["mousemove", &at(0), &at(1)]);
    }
    pause();
    act(&["mouseup", "1"]);
}

fn picture(folder: &Path) -> RgbImage {
    let file = folder.join("window.png");
    let taken = Command::new("import").args(["-window", "root"]).arg(&file).env("DISPLAY", DISPLAY).status();
    assert!(taken.expect("import runs").success());
    image::open(&file).expect("a screenshot").into_rgb8()
}

/// Mean of a part of a picture, 0 to 255.
fn mean(picture: &RgbImage, [x, y, w, h]: [u32; 4]) -> f64 {
    let part = image::imageops::crop_imm(picture, x, y, w, h).to_image();
    part.pixels().map(|p| p.0.iter().map(|v| f64::from(*v)).sum::<f64>()).sum::<f64>() / f64::from(3 * w * h)
}

/// Share of pixels that differ clearly.
fn changed(a: &RgbImage, b: &RgbImage, [x, y, w, h]: [u32; 4]) -> f64 {
    let far = |x, y| a.get_pixel(x, y).0.iter().zip(b.get_pixel(x, y).0).any(|(a, b)| a.abs_diff(b) > 12);
    let count = (x..x + w).flat_map(|x| (y..y + h).map(move |y| (x, y))).filter(|(x, y)| far(*x, *y)).count();
    count as f64 / f64::from(w * h)
}

/// Looks at what is waited for, a tenth of a second and more apart: so many that only a window that hangs outlasts them.
pub const LOOKS: usize = 6000;

fn wait_for(what: &str, folder: &Path, good: impl Fn(&RgbImage) -> bool) -> RgbImage {
    let begun = Instant::now();
    for _ in 0..LOOKS {
        let now = picture(folder);
        if good(&now) {
            eprintln!("{what} after {:.1} s", begun.elapsed().as_secs_f32());
            return now;
        }
        std::thread::sleep(Duration::from_millis(150));
    }
    panic!("{what}: it does not come");
}

/// The picture between rail and card, below the bar and above the strip.
const MIDDLE: [u32; 4] = [240, 60, 700, 660];

#[test]
fn the_window_opens_and_obeys() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(mut stage) = stage(folder.path(), folder.path()) else { return };
    let sky = [600, 60, 40, 30];
    let opened = wait_for("a picture", folder.path(), |now| mean(now, sky) > 8.0);
    if stage.window.0.try_wait().expect("the window can be asked").is_some() {
        panic!("the window closed by itself");
    }
    focus();
    act(&["key", "2"]);
    let kerb = wait_for("the kerb", folder.path(), |now| changed(&opened, now, MIDDLE) > 0.2);
    act(&["key", "f"]);
    let coloured = wait_for("false colour", folder.path(), |now| changed(&kerb, now, MIDDLE) > 0.5);
    act(&["key", "f"]);
    wait_for("plain again", folder.path(), |now| changed(&coloured, now, MIDDLE) > 0.5);

    // A click on a tile opens the card; a drag and the wheel over the card leave the picture alone.
    act(&["mousemove", "150", "70", "click", "1"]);
    let card = [970, 60, 290, 300];
    let with_card = wait_for("a card", folder.path(), |now| changed(&kerb, now, card) > 0.5);
    std::thread::sleep(Duration::from_secs(3));
    let before = picture(folder.path());
    drag([1120, 300], [1000, 330]);
    act(&["click", "4", "click", "4"]);
    std::thread::sleep(Duration::from_secs(2));
    let after = picture(folder.path());
    assert!(changed(&before, &after, [300, 60, 600, 600]) < 0.02, "the picture moved under a card");
    act(&["key", "Escape"]);
    wait_for("no card", folder.path(), |now| changed(&with_card, now, card) > 0.5);

    // A drag on the picture turns it.
    let still = picture(folder.path());
    drag([640, 400], [480, 420]);
    wait_for("a turn", folder.path(), |now| changed(&still, now, MIDDLE) > 0.08);
}

#[test]
fn a_question_holds_back_what_lies_beside_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(_stage) = stage(folder.path(), folder.path()) else { return };
    wait_for("a picture", folder.path(), |now| mean(now, [600, 60, 40, 30]) > 8.0);
    focus();
    act(&["key", "Escape"]);
    std::thread::sleep(Duration::from_secs(1));
    let without = picture(folder.path());
    let card = [940, 60, 320, 110];
    act(&["mousemove", "150", "70", "click", "1"]);
    wait_for("a card", folder.path(), |now| changed(&without, now, card) > 0.1);
    act(&["key", "space", "sleep", "1", "key", "ctrl+o", "sleep", "1", "type", "--args", "1", "any.ron"]);
    act(&["sleep", "1", "key", "Return"]);
    // Its first button is warm.
    wait_for("the question", folder.path(), |now| mean(now, [424, 418, 4, 16]) > 100.0);
    let before = picture(folder.path());
    let leaf = ["mousemove", "1056", "133", "sleep", "0.3", "click", "1", "sleep", "2"];
    act(&leaf);
    assert!(changed(&before, &picture(folder.path()), card) < 0.02, "a click went past the question");
    act(&["key", "Escape", "sleep", "1"]);
    let answered = picture(folder.path());
    act(&leaf);
    wait_for("another leaf", folder.path(), |now| changed(&answered, now, card) > 0.02);
}
