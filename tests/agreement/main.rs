//! The window's light against the core's, pixel by pixel, before any tone curve: every yard in `scenes/`, two cameras each,
//! one of them through whatever hangs there.
#![cfg(feature = "viewer")]

use image::{ImageReader, Rgb, Rgb32FImage};
use std::{
    path::{Path, PathBuf},
    process::Command,
};

/// Pixels of a comparison; enough for fine detail, few enough for a software driver.
const SIZE: &str = "480x270";
/// Luminance that counts as white, cd/m².
const WHITE: f32 = 8.0;
/// Differences are held against a pixel's own luminance, but against no less than this share of white: the least step that a
/// display of 10 000 : 1 shows.
const LEAST: f32 = 1e-4;
/// The share of pixels that must agree, and how closely.
const QUANTILE: f32 = 0.999;
const TOLERANCE: f32 = 2e-4;

/// A camera: eye, aim and field of view in degrees.
struct View {
    yard: &'static str,
    name: &'static str,
    eye: &'static str,
    aim: &'static str,
    field: &'static str,
}

const VIEWS: [View; 16] = [
    View { yard: "owl_night", name: "front", eye: "-1.5,1.7,19", aim: "-0.2,2.2,0", field: "40" },
    View { yard: "owl_night", name: "through the net", eye: "-6.2,1.5,6.6", aim: "-7.4,1.4,0.9", field: "60" },
    View { yard: "one_window", name: "front", eye: "0.4,1.6,4", aim: "0,1.5,0", field: "24" },
    View { yard: "one_window", name: "aslant", eye: "2.2,1.9,1.7", aim: "0,1.5,-0.5", field: "30" },
    View { yard: "fabric_row", name: "front", eye: "0,1.6,9", aim: "0,1.4,1", field: "34" },
    View { yard: "fabric_row", name: "along the cloths", eye: "-7.5,1.6,1.9", aim: "5,1.3,0.7", field: "34" },
    View { yard: "crossing", name: "crossing cloths", eye: "0.5,1.7,6", aim: "0,1.3,0", field: "46" },
    View { yard: "crossing", name: "in the mirror", eye: "-1.6,1.6,3.2", aim: "2.6,1.2,1.4", field: "50" },
    View { yard: "../tests/agreement/dusk", name: "by the sky alone", eye: "0.3,1.6,5", aim: "0,1.2,0", field: "46" },
    View { yard: "../tests/agreement/dusk", name: "from the side", eye: "-3.4,1.8,2.6", aim: "0.6,1,0.4", field: "50" },
    View { yard: "../tests/agreement/lamps", name: "lamp files", eye: "-0.6,1.7,6", aim: "0,1.2,0", field: "50" },
    View { yard: "../tests/agreement/crowd", name: "many alike", eye: "-0.6,1.7,6", aim: "0,0.9,0", field: "50" },
    View { yard: "../tests/agreement/crowd", name: "among them", eye: "-3.6,1.2,1.5", aim: "2,0.6,-1", field: "60" },
    View {
        yard: "../tests/agreement/signal",
        name: "bent pictures",
        eye: "-0.4,1.7,7",
        aim: "-0.2,1.6,-1",
        field: "46",
    },
    View {
        yard: "../tests/agreement/signal",
        name: "bent, aslant",
        eye: "-4.6,1.5,2",
        aim: "-0.5,1.5,-1",
        field: "50",
    },
    View { yard: "../tests/agreement/signal", name: "bent, close", eye: "1.2,1.6,2.4", aim: "0.2,1.5,-1", field: "50" },
];

fn still(view: &View, by: &str, folder: &Path) -> Result<Rgb32FImage, String> {
    let out = folder.join(format!("{} {} {by}.exr", view.yard.replace('/', "_"), view.name));
    let yard = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes").join(format!("{}.ron", view.yard));
    let run = Command::new(env!("CARGO_BIN_EXE_gauzelight"))
        .args(["still".as_ref(), yard.as_os_str()])
        .args(["--samples", "1", "--size", SIZE, "--by", by])
        .args(["--eye", view.eye, "--aim", view.aim, "--field", view.field])
        .arg("--out")
        .arg(&out)
        .env("XDG_CACHE_HOME", folder)
        .output()
        .map_err(|e| e.to_string())?;
    if !run.status.success() {
        return Err(String::from_utf8_lossy(&run.stderr).into_owned());
    }
    let picture = ImageReader::open(&out).map_err(|e| e.to_string())?.decode().map_err(|e| e.to_string())?;
    Ok(picture.into_rgb32f())
}

fn luma(p: &Rgb<f32>) -> f32 {
    0.2126 * p.0[0] + 0.7152 * p.0[1] + 0.0722 * p.0[2]
}

/// A pixel's largest difference over its own luminance.
fn difference(core: &Rgb<f32>, live: &Rgb<f32>) -> f32 {
    let most = core.0.iter().zip(live.0).map(|(c, l)| (c - l).abs()).fold(0.0, f32::max);
    most / luma(core).max(LEAST * WHITE)
}

/// Every pixel's difference with its place, the largest last.
fn differences(core: &Rgb32FImage, live: &Rgb32FImage) -> Vec<(f32, [u32; 2])> {
    let pairs = core.enumerate_pixels().zip(live.pixels());
    let mut list: Vec<_> = pairs.map(|((x, y, c), l)| (difference(c, l), [x, y])).collect();
    list.sort_by(|a, b| a.0.total_cmp(&b.0));
    list
}

/// Both pictures and their difference, for a person to look at.
fn show(core: &Rgb32FImage, live: &Rgb32FImage, view: &View) -> PathBuf {
    let folder = std::env::temp_dir().join("gauzelight-agreement");
    std::fs::create_dir_all(&folder).expect("a folder for the pictures");
    let write = |what: &str, pixel: &dyn Fn(u32, u32) -> f32| {
        let file = folder.join(format!("{} {} {what}.png", view.yard.replace('/', "_"), view.name));
        image::GrayImage::from_fn(core.width(), core.height(), |x, y| {
            image::Luma([(pixel(x, y).clamp(0.0, 1.0).powf(1.0 / 2.2) * 255.0) as u8])
        })
        .save(file)
        .expect("a picture is written");
    };
    write("core", &|x, y| luma(core.get_pixel(x, y)) / WHITE);
    write("live", &|x, y| luma(live.get_pixel(x, y)) / WHITE);
    write("difference", &|x, y| 20.0 * (luma(core.get_pixel(x, y)) - luma(live.get_pixel(x, y))).abs() / WHITE);
    folder
}

#[test]
fn the_live_picture_shows_the_core_s_light() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut told = Vec::new();
    for view in &VIEWS {
        let live = match still(view, "live", folder.path()) {
            Ok(live) => live,
            Err(why) => {
                let no_driver = why.contains("no graphics driver answers");
                assert!(no_driver && std::env::var_os("CI").is_none(), "{} {}: {why}", view.yard, view.name);
                eprintln!("SKIPPED, for want of a graphics driver: {why}");
                return;
            }
        };
        let core = still(view, "core", folder.path()).expect("the core's still");
        let list = differences(&core, &live);
        let at = |q: f32| list.get((list.len() as f32 * q) as usize).map_or(f32::INFINITY, |(off, _)| *off);
        let beyond = list.iter().filter(|(off, _)| *off > TOLERANCE).count();
        // A black frame agrees with anything.
        let lit = core.pixels().filter(|p| luma(p) >= 1e-3 * WHITE).count() as f32 / list.len() as f32;
        eprintln!(
            "{} {}: {:.0} % is lit; median {:.1e}, 99th percentile {:.1e}, 99.9th {:.1e}, {beyond} pixels beyond {TOLERANCE:.0e}",
            view.yard,
            view.name,
            100.0 * lit,
            at(0.5),
            at(0.99),
            at(QUANTILE)
        );
        if lit < 0.25 || at(QUANTILE) > TOLERANCE {
            for (off, [x, y]) in list.iter().rev().step_by(beyond.div_ceil(8).max(1)).take(8) {
                let [c, l] = [&core, &live].map(|still| still.get_pixel(*x, *y).0);
                eprintln!("    {off:.1e} at {x}, {y}: {c:?} against {l:?}");
            }
            told.push(format!("{} {}: see {}", view.yard, view.name, show(&core, &live, view).display()));
        }
    }
    assert!(told.is_empty(), "{told:#?}");
}
