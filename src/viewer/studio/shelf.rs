//! The yard's file and pictures, and what the window remembers from one evening to the next.

use crate::command::home;
use gauzelight::{
    files::{self, Kept},
    frames::Shelf,
    scene::{Units, Yard},
};
use serde::{Deserialize, Serialize};
use std::{
    fs,
    path::{Path, PathBuf},
};

/// The file that the window remembers in.
const FILE: &str = "window.ron";
/// The most that it has, bytes.
const MOST_BYTES: u64 = 1 << 20;
/// Files that are remembered.
const MOST_RECENT: usize = 8;

/// A yard's pictures and file.
pub struct Papers {
    /// Its pictures.
    pub shelf: Shelf,
    /// The file that it is kept in; a yard of the program's own has none.
    pub file: Option<PathBuf>,
    /// What stood in that file when it was last read or saved here.
    bytes: Option<Vec<u8>>,
    /// What is remembered.
    pub memory: Memory,
    /// Counts the yards that were opened, whose pictures may be others of the same name.
    pub opened: u64,
}

impl Papers {
    /// Of a yard as it was opened.
    pub fn of(shelf: Shelf, file: Option<PathBuf>) -> Self {
        let mut papers = Self { shelf, file: None, bytes: None, memory: Memory::read(), opened: 0 };
        papers.keep_in(file);
        papers
    }

    /// The yard is kept in this file from now on.
    pub fn keep_in(&mut self, file: Option<PathBuf>) {
        if let Some(file) = &file {
            let whole = fs::canonicalize(file).unwrap_or_else(|_| file.clone());
            self.memory.recent.retain(|known| *known != whole);
            self.memory.recent.insert(0, whole);
            self.memory.recent.truncate(MOST_RECENT);
        }
        self.bytes = file.as_deref().and_then(|file| fs::read(file).ok());
        self.file = file;
    }

    /// Whether the yard's file is another than when it was last read or saved here.
    pub fn is_changed_outside(&self) -> bool {
        let now = self.file.as_deref().and_then(|file| fs::read(file).ok());
        // A file that is gone is written again.
        now.is_some() && now != self.bytes
    }

    /// What nothing but the yard itself may be written over: its file, what it reads, and what its owner has.
    pub fn kept(&self, yard: &Yard) -> Kept {
        self.read(yard).and(self.file.clone(), "the yard itself")
    }

    /// What even the yard may not be written over.
    pub fn read(&self, yard: &Yard) -> Kept {
        let own = home::file(home::OWN);
        Kept::none().and(self.shelf.files(yard), "a file that the yard reads").and(own, "the list of what you own")
    }

    /// The folder that pictures are looked for in.
    pub fn folder(&self) -> Option<&Path> {
        self.file.as_deref().and_then(Path::parent)
    }
}

/// What the window remembers.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Memory {
    /// Size of the window, points.
    pub window: Option<(u32, u32)>,
    /// Luminance that showed as white, cd/m².
    pub white: Option<f32>,
    /// Whether new yards begin in feet; by the person's country where nobody has said.
    pub feet: Option<bool>,
    /// Where the eye was in the yard that was shown last: its file, where the eye was, what it looked at, m, its field, rad.
    pub eye: Option<(PathBuf, [f32; 3], [f32; 3], f32)>,
    /// Yards that may read files outside their folders.
    pub trusted: Vec<PathBuf>,
    /// Yards last opened or saved, newest first.
    pub recent: Vec<PathBuf>,
}

impl Memory {
    /// What was remembered; nothing where that cannot be read.
    pub fn read() -> Self {
        let bytes = home::file(FILE).and_then(|path| files::read(&path, MOST_BYTES).ok());
        bytes
            .and_then(|bytes| String::from_utf8(bytes).ok())
            .and_then(|text| ron::from_str(&text).ok())
            .unwrap_or_default()
    }

    /// Remembers it. A window that cannot remember is no reason to keep anybody from closing it.
    pub fn write(&self) {
        let Some(path) = home::file(FILE) else { return };
        let Ok(text) = ron::ser::to_string_pretty(self, ron::ser::PrettyConfig::default()) else { return };
        let folder = path.parent().map(fs::create_dir_all);
        if folder.is_some_and(|made| made.is_ok()) {
            // Nothing depends on it.
            let _ = files::write(&path, text.as_bytes(), &Kept::none());
        }
    }

    /// The units that a new yard begins in.
    pub fn units(&self) -> Units {
        match self.feet {
            Some(true) => Units::Feet,
            Some(false) => Units::Metric,
            None => home::units(),
        }
    }
}
