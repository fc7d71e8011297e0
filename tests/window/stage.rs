//! A virtual display with the program's window on it, and what a person does there by pointer and keys.

use image::RgbImage;
use std::{
    fs::File,
    io::{BufRead, BufReader},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{Mutex, MutexGuard, PoisonError},
    time::{Duration, Instant},
};

/// Looks at what is waited for, a tenth of a second and more apart: so many that only a window that hangs outlasts them.
pub const LOOKS: usize = 6000;

/// Pixels that a window is wide.
pub const WIDTH: u32 = 1280;

/// One window at a time: two tests would share the cores.
static ALONE: Mutex<()> = Mutex::new(());

/// A program that ends with the test.
pub struct Running(pub Child);

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// A virtual display with the program's window on it, which remembers nothing of other evenings.
pub struct Stage {
    pub window: Running,
    /// Where the window keeps its own things and says, in `said`, what it has to say.
    home: PathBuf,
    work: PathBuf,
    display: String,
    _server: Running,
    _alone: MutexGuard<'static, ()>,
}

fn have(program: &str) -> bool {
    Command::new(program).arg("-version").stdout(Stdio::null()).stderr(Stdio::null()).status().is_ok()
}

/// Starts a display that nobody else uses, and returns its name once it is ready. It stays when its last client leaves: one that
/// begins anew refuses who comes just then.
fn serve(width: u32) -> (Running, String) {
    let screen = format!("{width}x800x24");
    let arguments = ["-noreset", "-displayfd", "1", "-screen", "0", &screen];
    let mut command = Command::new("Xvfb");
    let child = command.args(arguments).stdout(Stdio::piped()).stderr(Stdio::null()).spawn().expect("Xvfb starts");
    let mut server = Running(child);
    let mut number = String::new();
    let said = server.0.stdout.take().expect("its output");
    BufReader::new(said).read_line(&mut number).expect("a line");
    assert!(!number.is_empty(), "Xvfb found no display that is free");
    (server, format!(":{}", number.trim()))
}

fn pause(ms: u64) {
    std::thread::sleep(Duration::from_millis(ms));
}

impl Stage {
    /// Opens a window that keeps its own things in `home` and works in `work`; `None` where the tools are not there, which CI forbids.
    pub fn set(home: &Path, work: &Path) -> Option<Self> {
        Self::of(home, work, None, WIDTH)
    }

    /// The same on a yard, with room for another window at its right.
    pub fn with_room(folder: &Path, yard: &Path) -> Option<Self> {
        Self::of(folder, folder, Some(yard), 2 * WIDTH)
    }

    fn of(home: &Path, work: &Path, yard: Option<&Path>, width: u32) -> Option<Self> {
        if !["Xvfb", "xdotool", "import"].iter().all(|p| have(p)) {
            assert!(std::env::var_os("CI").is_none(), "Xvfb, xdotool and import must be installed");
            eprintln!("SKIPPED, for want of Xvfb, xdotool or import");
            return None;
        }
        let alone = ALONE.lock().unwrap_or_else(PoisonError::into_inner);
        // The same program to the end, whatever is built meanwhile.
        std::fs::copy(env!("CARGO_BIN_EXE_gauzelight"), home.join("program")).expect("a copy");
        let (server, display) = serve(width);
        let window = start(home, work, yard, &display);
        let (home, work) = (home.to_owned(), work.to_owned());
        Some(Self { window, home, work, display, _server: server, _alone: alone })
    }

    /// Opens the window again once it has ended.
    pub fn open_again(&mut self) {
        self.window = self.another(None);
    }

    /// Opens another window, over the first one.
    pub fn another(&self, yard: Option<&Path>) -> Running {
        start(&self.home, &self.work, yard, &self.display)
    }

    /// Gives a window the keys, once it is there, and moves it to `x`.
    pub fn place(&self, window: &Running, x: u32) {
        let (process, x) = (window.0.id().to_string(), x.to_string());
        let search = ["search", "--sync", "--all", "--onlyvisible", "--pid", &process, "--name", "gauzelight"];
        self.act(&[&search[..], &["windowmove", &x, "0", "windowraise", "windowfocus"]].concat());
    }

    pub fn act(&self, arguments: &[&str]) {
        let done =
            Command::new("xdotool").args(arguments).env("DISPLAY", &self.display).status().expect("xdotool runs");
        assert!(done.success(), "xdotool {arguments:?}");
    }

    /// Gives the window the keys, once it is there.
    pub fn focus(&self) {
        self.act(&["mousemove", "640", "300"]);
        self.act(&["search", "--sync", "--onlyvisible", "--name", "gauzelight", "windowfocus"]);
    }

    /// As slowly as a hand does it: a window takes the pointer once a frame.
    pub fn drag(&self, from: [i32; 2], to: [i32; 2]) {
        self.act(&["mousemove", &from[0].to_string(), &from[1].to_string()]);
        pause(150);
        self.act(&["mousedown", "1"]);
        for step in 1..=4 {
            pause(150);
            let at = |i: usize| (from[i] + (to[i] - from[i]) * step / 4).to_string();
            self.act(&["mousemove", &at(0), &at(1)]);
        }
        pause(150);
        self.act(&["mouseup", "1"]);
    }

    pub fn picture(&self) -> RgbImage {
        let file = self.home.join("window.png");
        let mut command = Command::new("import");
        let taken = command.args(["-window", "root"]).arg(&file).env("DISPLAY", &self.display).status();
        assert!(taken.expect("import runs").success());
        image::open(&file).expect("a screenshot").into_rgb8()
    }

    /// Waits until the first tile has its numbers: then the sky is known, and the picture changes no more by itself but for its fineness.
    pub fn wait_for_numbers(&self) {
        self.wait_for("numbers", |now| mean(now, [91, 84, 90, 24]) > 35.0);
    }

    pub fn wait_for(&self, what: &str, good: impl Fn(&RgbImage) -> bool) -> RgbImage {
        let begun = Instant::now();
        for _ in 0..LOOKS {
            let now = self.picture();
            if good(&now) {
                eprintln!("{what} after {:.1} s", begun.elapsed().as_secs_f32());
                return now;
            }
            pause(150);
        }
        panic!("{what}: it does not come");
    }
}

fn start(home: &Path, work: &Path, yard: Option<&Path>, display: &str) -> Running {
    let said = File::options().append(true).create(true).open(home.join("said")).expect("a file");
    let child = Command::new(home.join("program"))
        .args(yard)
        .current_dir(work)
        .env("DISPLAY", display)
        .env("XDG_CONFIG_HOME", home)
        .env("XDG_DATA_HOME", home)
        .env("XDG_CACHE_HOME", home)
        .env_remove("WAYLAND_DISPLAY")
        .stdout(Stdio::null())
        .stderr(said)
        .spawn()
        .expect("a program starts");
    Running(child)
}

/// Mean of a part of a picture, 0 to 255.
pub fn mean(picture: &RgbImage, [x, y, w, h]: [u32; 4]) -> f64 {
    let part = image::imageops::crop_imm(picture, x, y, w, h).to_image();
    part.pixels().map(|p| p.0.iter().map(|v| f64::from(*v)).sum::<f64>()).sum::<f64>() / f64::from(3 * w * h)
}

/// Share of pixels that differ clearly.
pub fn changed(a: &RgbImage, b: &RgbImage, [x, y, w, h]: [u32; 4]) -> f64 {
    let far = |x, y| a.get_pixel(x, y).0.iter().zip(b.get_pixel(x, y).0).any(|(a, b)| a.abs_diff(b) > 12);
    let count = (x..x + w).flat_map(|x| (y..y + h).map(move |y| (x, y))).filter(|(x, y)| far(*x, *y)).count();
    count as f64 / f64::from(w * h)
}
