//! Stills from every viewing spot and the readings, for a machine without a display.

use super::{Failure, readings, stage::Stage, still};
use gauzelight::{
    judge,
    picture::{self, Develop},
};
use std::{fs, path::Path};

const SIZE: (u32, u32) = (1280, 720);
const WHITE: f32 = 8.0;

/// Writes them into a folder, and says so.
pub fn write(stage: &Stage, folder: &Path) -> Result<(), Failure> {
    let failed =
        |what: &Path, error: std::io::Error| Failure::said(format!("cannot write: {error}: {}", what.display()));
    fs::create_dir_all(folder).map_err(|e| failed(folder, e))?;
    let night = stage.night()?;
    for spot in &stage.yard.spots {
        let camera = still::from_spot(&night, spot, 34f32.to_radians());
        let taken = still::expose(&night, &camera, SIZE, 2);
        let file = folder.join(format!("{}.png", file_name(&spot.name.0)));
        picture::write(&taken, Develop::White(WHITE), &file).map_err(Failure::said)?;
        super::say(file.display());
    }
    let page = readings::text(&judge::read_all(&night, &stage.yard, &stage.catalogue), stage.yard.units);
    let file = folder.join("readings.txt");
    fs::write(&file, page).map_err(|e| failed(&file, e))?;
    super::say(file.display());
    Ok(())
}

/// A name with nothing in it that a file system could mind.
fn file_name(name: &str) -> String {
    let plain: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '_' }).collect();
    if plain.is_empty() { "spot".to_owned() } else { plain }
}
