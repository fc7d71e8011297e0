//! `validate`: all faults of a yard.

mod much;

use super::{
    Failure, stage,
    trust::{self, Trust},
    which,
};
use gauzelight::{
    frames::Shelf,
    scene::{Fault, Loaded, SpreadKind, Station},
};
use std::path::{Path, PathBuf};

/// Options of `validate`.
#[derive(clap::Args)]
pub struct Validate {
    /// Yard to look at
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
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
                let folder = self.yard.parent().unwrap_or(Path::new(""));
                let mut shelf = Shelf::beside(folder).reaching(self.trust.reach());
                look_at_pictures(&mut loaded, &mut shelf);
                look_at_lamps(&mut loaded, &mut shelf);
                much::look(&mut loaded);
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
fn look_at_pictures(loaded: &mut Loaded, shelf: &mut Shelf) {
    let yard = &loaded.yard;
    let named = |list: &str, stations: &[Station]| -> Vec<(String, String)> {
        let path = |index| format!("{list}[{index}].content.picture");
        stations.iter().enumerate().map(|(i, station)| (path(i), station.content.picture.clone())).collect()
    };
    let mut pictures = named("stations", &yard.stations);
    for (index, arrangement) in yard.arrangements.iter().enumerate() {
        pictures.extend(named(&format!("arrangements[{index}].stations"), &arrangement.stations));
    }
    for (path, picture) in pictures {
        shelf.fetch([picture.as_str()]);
        // One that is not there at all is told already.
        let told = loaded.warnings.iter().any(|fault| fault.path == path);
        if let Some(why) = shelf.stand_ins.get(&picture).filter(|_| !told) {
            let fault = Fault::warning(format!("{why}; a test card stands in"));
            let remedy = remedy(shelf, &picture, "a whole PNG, JPEG, WebP, GIF or EXR");
            loaded.warn(&path, fault.remedy(remedy));
        }
    }
}

/// Reads every lamp file that the yard names; one that cannot be is one warning more.
fn look_at_lamps(loaded: &mut Loaded, shelf: &mut Shelf) {
    let named = loaded.yard.lamp_kinds.iter().enumerate().filter_map(|(index, kind)| match &kind.spread {
        SpreadKind::File { path } => Some((format!("lamp_kinds[{index}].spread.path"), path.clone())),
        _ => None,
    });
    for (path, file) in named.collect::<Vec<_>>() {
        shelf.fetch_lamps([file.as_str()]);
        let told = loaded.warnings.iter().any(|fault| fault.path == path);
        if let Some(why) = shelf.unread.get(&file).filter(|_| !told) {
            let fault = Fault::warning(format!("{why}; a lamp of this kind stays dark"));
            let remedy = remedy(shelf, &file, "a photometric file by IES LM-63");
            loaded.warn(&path, fault.remedy(remedy));
        }
    }
}

/// What helps with a file that was not taken: another kind of file, or another place for it.
fn remedy(shelf: &Shelf, name: &str, kinds: &str) -> String {
    if shelf.outside.contains_key(name) {
        format!("or, if you trust whoever made this yard, say {}", trust::OPTION)
    } else {
        kinds.to_owned()
    }
}
