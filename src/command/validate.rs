//! `validate`: all faults of a yard.

use super::{Failure, stage, which};
use gauzelight::{
    frames::Shelf,
    scene::{Fault, Loaded, Station},
};
use std::path::{Path, PathBuf};

/// Options of `validate`.
#[derive(clap::Args)]
pub struct Validate {
    /// Yard to look at
    yard: PathBuf,
    /// One line a fault, for editors: FILE:LINE:COLUMN: …
    #[arg(long)]
    lines: bool,
}

impl Validate {
    /// Looks for faults.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let (faults, sound) = match stage::load(&self.yard) {
            Ok(mut loaded) => {
                look_at_pictures(&mut loaded, self.yard.parent().unwrap_or(Path::new("")));
                (loaded.warnings, true)
            }
            Err(faults) => (faults, false),
        };
        if self.lines && !faults.is_empty() {
            super::aside(faults.plain().trim_end());
        } else if !faults.is_empty() {
            stage::tell(&faults);
        }
        if !sound {
            return Err(Failure::Faults);
        }
        super::say(format!(
            "{} is sound{}",
            self.yard.display(),
            if faults.is_empty() { "" } else { ", with warnings" }
        ));
        Ok(())
    }
}

/// Decodes every picture that the yard names, in any of its arrangements; one that cannot be is one warning more.
fn look_at_pictures(loaded: &mut Loaded, folder: &Path) {
    let yard = &loaded.yard;
    let named = |list: &str, stations: &[Station]| -> Vec<(String, String)> {
        let path = |index| format!("{list}[{index}].content.picture");
        stations.iter().enumerate().map(|(i, station)| (path(i), station.content.picture.clone())).collect()
    };
    let mut pictures = named("stations", &yard.stations);
    for (index, arrangement) in yard.arrangements.iter().enumerate() {
        pictures.extend(named(&format!("arrangements[{index}].stations"), &arrangement.stations));
    }
    let mut shelf = Shelf::beside(folder);
    for (path, picture) in pictures {
        shelf.fetch([picture.as_str()]);
        // One that is not there at all is told already.
        let told = loaded.warnings.iter().any(|fault| fault.path == path);
        if let Some(why) = shelf.stand_ins.get(&picture).filter(|_| !told) {
            let fault = Fault::warning(format!("{why}; a test card stands in"));
            loaded.warn(&path, fault.remedy("a whole PNG, JPEG, WebP, GIF or EXR"));
        }
    }
}
