//! What lies beside a yard, each file loaded once: the pictures that it throws and the photometric files of its lamps.

use super::{Frame, Picture, Response, builtin, card};
use crate::{
    optics::{FileLight, LampFile},
    scene::{SpreadKind, Yard},
    units::reason,
};
use std::{
    collections::BTreeMap,
    fs::File,
    io::Read,
    path::{Path, PathBuf},
    sync::Arc,
};

/// Pictures by the name that stations give them, and measured lamps by the path that kinds of lamp give.
#[derive(Clone, Debug, Default)]
pub struct Shelf {
    /// Pictures by name.
    pub pictures: BTreeMap<String, Arc<Picture>>,
    /// Pictures that a test card stands in for, each with the reason.
    pub stand_ins: BTreeMap<String, String>,
    /// Measured lamps by the path of their file.
    pub lamps: BTreeMap<String, Arc<FileLight>>,
    /// Lamp files that could not be read, each with the reason: such lamps stay dark.
    pub unread: BTreeMap<String, String>,
    folder: PathBuf,
}

impl Shelf {
    /// An empty shelf; files are looked for beside the yard, in `folder`.
    pub fn beside(folder: &Path) -> Self {
        Self { folder: folder.to_owned(), ..Self::default() }
    }

    /// Takes in what a yard names and is not there yet. What is missing or unreadable is said.
    pub fn fetch_for(&mut self, yard: &Yard) -> Vec<String> {
        let mut said = self.fetch(yard.stations.iter().map(|station| station.content.picture.as_str()));
        let paths = yard.lamp_kinds.iter().filter_map(|kind| match &kind.spread {
            SpreadKind::File { path } => Some(path.as_str()),
            _ => None,
        });
        said.extend(self.fetch_lamps(paths));
        said
    }

    /// Takes in pictures that are not there yet: built-in ones by their names, others as files. One that is missing or
    /// unreadable is said, and a test card stands in for it.
    pub fn fetch<'a>(&mut self, names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
        let mut said = Vec::new();
        for name in names {
            if self.pictures.contains_key(name) {
                continue;
            }
            let loaded = match builtin(name) {
                Some(bytes) => Picture::decode(bytes),
                None => Picture::load(self.folder.join(name)),
            };
            let picture = loaded.unwrap_or_else(|error| {
                said.push(format!("picture “{name}”: {error}; a test card stands in"));
                self.stand_ins.insert(name.to_owned(), error.to_string());
                Picture::linear(Arc::new(card::missing()))
            });
            self.pictures.insert(name.to_owned(), Arc::new(picture));
        }
        said
    }

    /// The light that a projector of this response makes of a picture; `None` of a picture that is not here.
    pub fn frame(&self, name: &str, response: Response) -> Option<Arc<Frame>> {
        self.pictures.get(name)?.frame(response)
    }

    /// Takes in lamp files that are not there yet. One that is missing or wrong is said, and its lamps stay dark.
    pub fn fetch_lamps<'a>(&mut self, paths: impl IntoIterator<Item = &'a str>) -> Vec<String> {
        let mut said = Vec::new();
        for path in paths {
            if self.lamps.contains_key(path) || self.unread.contains_key(path) {
                continue;
            }
            match lamp(&self.folder.join(path)) {
                Ok(lamp) => {
                    self.lamps.insert(path.to_owned(), Arc::new(lamp));
                }
                Err(why) => {
                    said.push(format!("lamp file “{path}”: {why}; its lamps stay dark"));
                    self.unread.insert(path.to_owned(), why);
                }
            }
        }
        said
    }
}

impl From<BTreeMap<String, Arc<Frame>>> for Shelf {
    /// Pictures that are linear light already.
    fn from(frames: BTreeMap<String, Arc<Frame>>) -> Self {
        let linear = |(name, frame)| (name, Arc::new(Picture::linear(frame)));
        Self { pictures: frames.into_iter().map(linear).collect(), ..Self::default() }
    }
}

fn lamp(path: &Path) -> Result<FileLight, String> {
    let mut bytes = Vec::new();
    // One byte more than is allowed tells that there are more.
    let read = File::open(path).and_then(|file| file.take(LampFile::MOST_BYTES + 1).read_to_end(&mut bytes));
    read.map_err(|error| format!("the lamp file cannot be read: {}", reason(&error)))?;
    if bytes.len() as u64 > LampFile::MOST_BYTES {
        return Err(format!("the lamp file is larger than {} MB", LampFile::MOST_BYTES >> 20));
    }
    LampFile::read(&bytes).map(|file| file.light()).map_err(|fault| format!("the lamp file is wrong at {fault}"))
}
