//! `card`: a frame for each station to throw on its first night.

use super::{Failure, stage::Stage, which};
use gauzelight::{sheet, units::reason};
use std::path::PathBuf;

/// Options of `card`.
#[derive(clap::Args)]
pub struct Card {
    /// Yard to hang
    yard: PathBuf,
    /// Folder for the cards, a .png for each station
    #[arg(long, value_name = "FOLDER")]
    out: PathBuf,
}

impl Card {
    /// Writes the cards.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let stage = Stage::open(&self.yard)?;
        let night = stage.night()?;
        let failed = |error: &std::io::Error| {
            Failure::said(format!("cannot write into {}: {}", self.out.display(), reason(error)))
        };
        std::fs::create_dir_all(&self.out).map_err(|error| failed(&error))?;
        for (index, station) in stage.yard.stations.iter().enumerate() {
            let Some(card) = sheet::alignment_card(&stage.yard, &stage.catalogue, &night, index) else {
                let why = if stage.yard.is_hidden(&station.name.0) { "put away" } else { "off" };
                super::aside(format_args!("note: {} is {why}, so it has no card", station.name.0));
                continue;
            };
            let file = self.out.join(sheet::card_file(index, &station.name.0));
            card.save(&file).map_err(|error| match error {
                image::ImageError::IoError(error) => failed(&error),
                other => Failure::said(format!("cannot write {}: {other}", file.display())),
            })?;
            super::say(file.display());
        }
        Ok(())
    }
}
