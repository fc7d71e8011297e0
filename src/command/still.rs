//! `still`: a picture of a yard at night.

use super::{Failure, hour::Hour, skies, stage::Stage, trust::Trust, which};
use gauzelight::{
    files::{self, Kept, WriteError},
    judge, light,
    picture::{self, Camera, Develop, Impression, PictureError, Still},
    scene::Spot,
    units::{candelas, number},
};
use glam::Vec3;
use std::path::{Path, PathBuf};

/// Who computes the picture.
#[derive(Clone, Copy, PartialEq, clap::ValueEnum)]
pub enum By {
    /// The core, on the processor.
    Core,
    /// The window's shader, on whatever graphics driver there is.
    Live,
}

/// Options of `still`.
#[derive(clap::Args)]
pub struct Take {
    /// Yard to look at
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Viewing spot to look from; the first where none is named
    #[arg(long, conflicts_with = "eye")]
    from: Option<String>,
    /// Free camera: eye as x,y,z in metres
    #[arg(long, value_parser = triple, requires = "aim", allow_hyphen_values = true)]
    eye: Option<Vec3>,
    /// Free camera: what it looks at, x,y,z in metres
    #[arg(long, value_parser = triple, requires = "eye", allow_hyphen_values = true)]
    aim: Option<Vec3>,
    /// Vertical field of view, degrees
    #[arg(long, default_value_t = 34.0, allow_negative_numbers = true)]
    field: f32,
    /// Pixels, as 1280x720
    #[arg(long, default_value = "1280x720", value_parser = size)]
    size: (u32, u32),
    /// Rays a pixel along each side: 2 means 4 rays
    #[arg(long, default_value_t = 2, value_parser = clap::value_parser!(u32).range(1..=16))]
    samples: u32,
    /// Luminance that shows as white, cd/m²
    #[arg(long, default_value_t = 8.0, allow_negative_numbers = true)]
    white: f32,
    /// False colour instead, from 0.01 to 100 cd/m² unless said otherwise as LOW,HIGH
    #[arg(long, num_args = 0..=1, default_missing_value = "0.01,100", value_parser = range)]
    false_colour: Option<(f32, f32)>,
    /// As an eye sees it that is adapted to it: what is too dark for it is black, colour and detail go in the dark, bright things veil
    #[arg(long, conflicts_with_all = ["white", "false_colour"])]
    adapted: bool,
    #[command(flatten)]
    hour: Hour,
    /// Who computes it
    #[arg(long, value_enum, default_value = "core")]
    by: By,
    /// File to write: .png as seen, .exr in linear cd/m²
    #[arg(long)]
    out: PathBuf,
}

/// An eye and an aim as near as this are one place, m.
const ONE_PLACE: f32 = 1e-3;

/// The widest field that a spot's look takes in a still, rad.
fn field(degrees: f32) -> Result<f32, Failure> {
    if (1.0..=150.0).contains(&degrees) {
        Ok(degrees.to_radians())
    } else {
        Err(Failure::options(format!("a field of view of {}° is not one; 1 to 150 are", number(degrees))))
    }
}

impl Take {
    /// Takes the picture.
    pub fn run(&self) -> Result<(), Failure> {
        let field = self.checked()?;
        let mut stage = Stage::open(&self.yard, self.trust)?;
        self.hour.set(&mut stage)?;
        let kept = stage.kept();
        files::check(&self.out, &kept).map_err(|error| unwritten(error.into()))?;
        let night = stage.night()?;
        let (camera, age) = match (self.eye, self.aim) {
            (Some(eye), Some(aim)) => (Camera::looking(eye, aim, field), YOUNG),
            _ => {
                let spot = find_spot(&stage, self.from.as_deref())?;
                (from_spot(&night, spot, field), f64::from(spot.age.0))
            }
        };
        let still = match self.by {
            By::Core => expose(&night, &camera, self.size, self.samples),
            By::Live => live(&night, &camera, self.size, self.samples)?,
        };
        skies::keep(&night);
        let develop = self.false_colour.map_or(Develop::White(self.white), |(a, b)| Develop::FalseColour(a, b));
        if self.adapted {
            let places = judge::Figures::of(&night, &stage.yard).seen(&night, camera.eye);
            write_adapted(&picture::adapted(&still, &camera, age, &places), &self.out, &kept)?;
        } else {
            picture::write(&still, develop, &self.out, &kept).map_err(unwritten)?;
        }
        super::say(self.out.display());
        stage.complete()
    }
}

impl Take {
    /// Looks for faults of the options before the yard is opened; the field of view in radians.
    fn checked(&self) -> Result<f32, Failure> {
        picture::can_write(&self.out).map_err(unwritten)?;
        let is_exr = self.out.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("exr"));
        if self.adapted && is_exr {
            return Err(Failure::options(
                "an .exr holds linear cd/m², which no eye changes; write what it sees to a .png",
            ));
        }
        if self.false_colour.is_some() && is_exr {
            return Err(Failure::options(
                "an .exr holds linear cd/m² and no colours for them; write false colour to a .png",
            ));
        }
        if !(self.white > 0.0 && self.white.is_finite()) {
            return Err(Failure::options(format!(
                "white must be a luminance above 0 cd/m², not {}",
                number(self.white)
            )));
        }
        if let (Some(eye), Some(aim)) = (self.eye, self.aim)
            && eye.abs_diff_eq(aim, ONE_PLACE)
        {
            return Err(Failure::options("the eye is where it aims; aim at something else, at least 1 mm away"));
        }
        which::there(&self.yard, &[])?;
        field(self.field)
    }
}

/// A still that was not written. An ending that is none, and a file that must stay, are faults of the options.
fn unwritten(error: PictureError) -> Failure {
    match error {
        PictureError::Ending(_) | PictureError::Write(WriteError::Kept(..) | WriteError::Folder(_)) => {
            Failure::options(error)
        }
        _ => Failure::said(error),
    }
}

/// Age of an eye that belongs to no spot, years.
const YOUNG: f64 = 25.0;

/// Writes what an eye sees, and says what it is.
fn write_adapted(seen: &Impression, path: &Path, kept: &Kept) -> Result<(), Failure> {
    let eye = seen.eye;
    picture::write_codes(&seen.still, |luminance| eye.codes(luminance), path, kept).map_err(unwritten)?;
    let what = if seen.by_figures {
        "the figures in this picture and their ground"
    } else {
        "the mean of this picture with its veil"
    };
    let [adaptation, threshold, white] = [eye.adaptation, eye.threshold, eye.threshold + eye.white];
    super::aside(format_args!(
        "gauzelight: as an eye sees it that is adapted to {}, {what}: below {} all is black, {} shows as white. For a display whose white is {}",
        candelas(f64::from(adaptation)),
        candelas(f64::from(threshold)),
        candelas(f64::from(white)),
        candelas(picture::DISPLAY_WHITE),
    ));
    Ok(())
}

/// A still by the core, with progress on the terminal.
pub fn expose(night: &light::Night, camera: &Camera, size: (u32, u32), samples: u32) -> Still {
    let bar = indicatif::ProgressBar::new(100);
    bar.set_draw_target(indicatif::ProgressDrawTarget::stderr_with_hz(8));
    let still = picture::expose(night, camera, size, samples, |share| bar.set_position((share * 100.0) as u64));
    bar.finish_and_clear();
    still
}

#[cfg(feature = "viewer")]
fn live(night: &light::Night, camera: &Camera, size: (u32, u32), samples: u32) -> Result<Still, Failure> {
    let device = crate::viewer::gpu::Headless::open().map_err(Failure::said)?;
    super::aside(format_args!("gauzelight: drawn by {}", device.name));
    device.still(night, camera, size, samples).map_err(Failure::said)
}

#[cfg(not(feature = "viewer"))]
fn live(_: &light::Night, _: &Camera, _: (u32, u32), _: u32) -> Result<Still, Failure> {
    Err(Failure::said("this build has no live picture; build it with the feature “viewer”"))
}

/// The camera of a spot: the eye there, looking where its people look.
pub fn from_spot(night: &light::Night, spot: &Spot, field: f32) -> Camera {
    let target = night.aim(&spot.look).unwrap_or(Vec3::new(0.0, 2.0, 0.0));
    Camera::looking(judge::eye(spot), target, field)
}

pub fn find_spot<'a>(stage: &'a Stage, name: Option<&str>) -> Result<&'a Spot, Failure> {
    let spots = &stage.yard.spots;
    let found = match name {
        Some(name) => spots.iter().find(|s| s.name.0 == name),
        None => spots.first(),
    };
    found.ok_or_else(|| {
        let names: Vec<&str> = spots.iter().map(|s| s.name.0.as_str()).collect();
        match name {
            Some(name) if !names.is_empty() => {
                Failure::options(format!("no viewing spot is called “{name}”; there are: {}", names.join(", ")))
            }
            _ => Failure::options("the yard has no viewing spot; say --eye and --aim"),
        }
    })
}

fn triple(text: &str) -> Result<Vec3, String> {
    let parts: Vec<f32> = text.split(',').map(|p| p.trim().parse().unwrap_or(f32::NAN)).collect();
    match parts.as_slice() {
        &[x, y, z] if parts.iter().all(|v| v.is_finite() && v.abs() <= 1000.0) => Ok(Vec3::new(x, y, z)),
        _ => Err("three metres as x,y,z, each within ±1000".to_owned()),
    }
}

fn size(text: &str) -> Result<(u32, u32), String> {
    let parts: Vec<u32> = text.split(['x', '×']).map(|p| p.trim().parse().unwrap_or(0)).collect();
    match parts.as_slice() {
        &[w, h] if (1..=16384).contains(&w) && (1..=16384).contains(&h) && w * h <= 64_000_000 => Ok((w, h)),
        _ => Err("pixels as 1280x720, at most 16384 each way and 64 million in all".to_owned()),
    }
}

fn range(text: &str) -> Result<(f32, f32), String> {
    let parts: Vec<f32> = text.split(',').map(|p| p.trim().parse().unwrap_or(f32::NAN)).collect();
    match *parts.as_slice() {
        [low, high] if low > 0.0 && high > low && high.is_finite() => Ok((low, high)),
        [low, high] if low >= high && high > 0.0 => Err("the first must be the lesser".to_owned()),
        _ => Err("two luminances as LOW,HIGH, both above 0".to_owned()),
    }
}
