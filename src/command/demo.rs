//! Stills from every viewing spot and the readings, for a machine without a display.

use super::{Failure, readings, stage::Stage, still};
use gauzelight::{
    files, judge,
    picture::{self, Develop},
    scene::Units,
};
use std::{collections::BTreeSet, path::Path};

const SIZE: (u32, u32) = (1280, 720);
const WHITE: f32 = 8.0;

/// Writes them into a folder, and says so.
pub fn write(stage: &Stage, folder: &Path) -> Result<(), Failure> {
    files::make_folder(folder).map_err(|error| Failure::unwritten("the stills", &error))?;
    let kept = stage.kept();
    let night = stage.night()?;
    let names = file_names(stage.yard.spots.iter().map(|spot| spot.name.0.as_str()));
    for (spot, name) in stage.yard.spots.iter().zip(names) {
        let camera = still::from_spot(&night, spot, 34f32.to_radians());
        let taken = still::expose(&night, &camera, SIZE, 2);
        let file = folder.join(format!("{name}.png"));
        picture::write(&taken, Develop::White(WHITE), &file, &kept).map_err(Failure::said)?;
        super::say(file.display());
    }
    let ground = readings::ground::text(&judge::OpenGround::of(&stage.yard), stage.yard.units == Units::Feet);
    let page = readings::text(
        &judge::read_all(&night, &stage.yard, &stage.catalogue),
        &judge::read_meters(&night, &stage.yard, &stage.catalogue),
        stage.yard.units,
        &readings::cards(stage),
    );
    let file = folder.join("readings.txt");
    files::write(&file, (ground + &page).as_bytes(), &kept).map_err(|e| Failure::unwritten("the readings", &e))?;
    super::say(file.display());
    Ok(())
}

/// Names with nothing in them that a file system could mind, no two alike: those that would be get a number.
fn file_names<'a>(names: impl Iterator<Item = &'a str>) -> Vec<String> {
    let mut taken = BTreeSet::new();
    // Some file systems do not tell small letters from capitals.
    let mut take = |name: &String| taken.insert(name.to_lowercase());
    names
        .map(|name| {
            let plain: String = name.chars().map(|c| if c.is_alphanumeric() { c } else { '_' }).collect();
            let plain = if plain.is_empty() { "spot".to_owned() } else { plain };
            let mut name = plain.clone();
            let mut number = 1;
            while !take(&name) {
                number += 1;
                name = format!("{plain}_{number}");
            }
            name
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::file_names;

    #[test]
    fn no_two_stills_share_a_file() {
        let names = ["a b", "a_b", "a_b_2", "A b", "Gate", "gate", "a/b", "", "spot", "Tür"];
        let wanted = ["a_b", "a_b_2", "a_b_2_2", "A_b_3", "Gate", "gate_2", "a_b_4", "spot", "spot_2", "Tür"];
        assert_eq!(file_names(names.into_iter()), wanted);
    }
}
