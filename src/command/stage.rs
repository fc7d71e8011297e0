//! What every command that shows light begins with: a yard, its catalogue, its pictures and lamp files, its night.

use super::{
    Failure, home,
    progress::timed,
    skies,
    trust::{self, Trust},
};
use gauzelight::{
    files::Kept,
    frames::Shelf,
    judge::findings::Level,
    light::Night,
    scene::{Catalogue, Faults, Loaded, Yard},
};
use std::{
    io::IsTerminal,
    path::{Path, PathBuf},
};

/// A yard ready to be lit.
pub struct Stage {
    /// The yard.
    pub yard: Yard,
    /// The catalogue it draws on.
    pub catalogue: Catalogue,
    /// Its pictures and lamp files.
    pub shelf: Shelf,
    /// The file that it is kept in; a yard of the program's own has none.
    pub file: Option<PathBuf>,
}

/// The built-in yards, so that the program works from any folder.
const BUILTIN: [(&str, &str); 4] = [
    ("owl_night.ron", include_str!("../../scenes/owl_night.ron")),
    ("one_window.ron", include_str!("../../scenes/one_window.ron")),
    ("fabric_row.ron", include_str!("../../scenes/fabric_row.ron")),
    ("crossing.ron", include_str!("../../scenes/crossing.ron")),
];

/// The file names of the built-in yards.
pub fn carried() -> impl Iterator<Item = &'static str> {
    BUILTIN.iter().map(|(name, _)| *name)
}

impl Stage {
    /// The yard at a path, or a built-in one by its file name where no such file lies there.
    pub fn open(path: &Path, trust: Trust) -> Result<Self, Failure> {
        let catalogue = home::catalogue();
        let Loaded { yard, warnings, .. } = load(path).map_err(|faults| tell(&faults))?;
        if !warnings.is_empty() {
            tell(&warnings);
        }
        let folder = path.parent().unwrap_or(Path::new("")).to_owned();
        let mut shelf = Shelf::beside(&folder).reaching(trust.reach());
        // A missing file is among the warnings already; one that is there and cannot be read is not.
        for said in shelf.fetch_for(&yard) {
            super::aside(format_args!("gauzelight: {said}"));
        }
        if !shelf.outside.is_empty() {
            super::aside(format_args!(
                "note: a yard reads what lies outside its folder only with {}; say so of a yard whose maker you trust",
                trust::OPTION
            ));
        }
        let file = path.exists().then(|| path.to_owned());
        Ok(Self { yard, catalogue, shelf, file })
    }

    /// The demo yard.
    pub fn demo() -> Result<Self, Failure> {
        Self::open(Path::new(BUILTIN[0].0), Trust::default())
    }

    /// What nothing may be written over: the yard, what it reads, and what its owner has.
    pub fn kept(&self) -> Kept {
        Kept::none()
            .and(self.file.clone(), "the yard itself")
            .and(self.shelf.files(&self.yard), "a file that the yard reads")
            .and(home::file(home::OWN), "the list of what you own")
    }

    /// An error where what was written shows a test card in the place of a picture, or lamps dark that a file should light. That is
    /// told already, and worth a check.
    pub fn complete(&self) -> Result<(), Failure> {
        if self.shelf.stand_ins.is_empty() && self.shelf.unread.is_empty() {
            Ok(())
        } else {
            Err(Failure::Judged(Level::Check))
        }
    }

    /// Its night.
    pub fn night(&self) -> Result<Night, Failure> {
        let build = || Night::build(&self.yard, &self.catalogue, &self.shelf);
        let night = timed("lighting the yard", build).map_err(Failure::said)?;
        skies::recall(&night);
        Ok(night)
    }
}

/// Reads the yard at a path, or a built-in one by its file name where no such file lies there.
pub fn load(path: &Path) -> Result<Loaded, Faults> {
    let catalogue = home::catalogue();
    match BUILTIN.iter().find(|(name, _)| !path.exists() && Path::new(name) == path) {
        Some((name, text)) => Yard::parse(text, name, &catalogue),
        None => Yard::open(path, &catalogue),
    }
}

/// Tells faults on the terminal.
pub fn tell(faults: &Faults) -> Failure {
    let terminal = std::io::stderr().is_terminal();
    super::aside_as_it_is(faults.pretty(terminal, 110).trim_end());
    Failure::Faults
}
