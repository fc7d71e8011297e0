//! `card`: a frame for each station to throw on its first night.

use super::{Failure, stage::Stage, trust::Trust, which};
use gauzelight::{files, picture, sheet};
use std::path::PathBuf;

/// Options of `card`.
#[derive(clap::Args)]
pub struct Card {
    /// Yard to hang
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// Folder for the cards, a .png for each station
    #[arg(long, value_name = "FOLDER")]
    out: PathBuf,
}

impl Card {
    /// Writes the cards.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let stage = Stage::open(&self.yard, self.trust)?;
        let night = stage.night()?;
        files::make_folder(&self.out).map_err(|error| Failure::unwritten("the cards", &error))?;
        let kept = stage.kept();
        for (index, station) in stage.yard.stations.iter().enumerate() {
            let Some(card) = sheet::alignment_card(&stage.yard, &stage.catalogue, &night, index) else {
                let why = if stage.yard.is_hidden(&station.name.0) { "put away" } else { "off" };
                super::aside(format_args!("note: {} is {why}, so it has no card", station.name.0));
                continue;
            };
            let file = self.out.join(sheet::card_file(index, &station.name.0));
            let bytes = picture::encoded(card, image::ImageFormat::Png).map_err(Failure::said)?;
            files::write(&file, &bytes, &kept).map_err(|error| Failure::unwritten("the card", &error))?;
            super::say(file.display());
        }
        Ok(())
    }
}
