//! The pictures that a yard throws, each loaded once.

use super::{Frame, builtin, card};
use std::{
    collections::BTreeMap,
    path::{Path, PathBuf},
    sync::Arc,
};

/// Pictures by the name that stations give them.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    /// Frames by name.
    pub frames: BTreeMap<String, Arc<Frame>>,
    /// Pictures that a test card stands in for, each with the reason.
    pub stand_ins: BTreeMap<String, String>,
    folder: PathBuf,
}

impl Shelf {
    /// An empty shelf; files are looked for beside the yard, in `folder`.
    pub fn beside(folder: &Path) -> Self {
        Self { frames: BTreeMap::new(), stand_ins: BTreeMap::new(), folder: folder.to_owned() }
    }

    /// Takes in pictures that are not there yet: built-in ones by their names, others as files. One that is missing or
    /// unreadable is said, and a test card stands in for it.
    pub fn fetch<'a>(&mut self, names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
        let mut said = Vec::new();
        for name in names {
            if self.frames.contains_key(name) {
                continue;
            }
            let loaded = match builtin(name) {
                Some(bytes) => Frame::decode(bytes),
                None => Frame::load(self.folder.join(name)),
            };
            let frame = loaded.unwrap_or_else(|error| {
                said.push(format!("picture “{name}”: {error}; a test card stands in"));
                self.stand_ins.insert(name.to_owned(), error.to_string());
                card::missing()
            });
            self.frames.insert(name.to_owned(), Arc::new(frame));
        }
        said
    }
}
