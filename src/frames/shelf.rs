//! What lies beside a yard, each file loaded once: the pictures that it throws and the photometric files of its lamps.

use super::{Frame, FrameError, Picture, Response, builtin, card};
use crate::{
    files::{self, Reach, ReadError},
    optics::{FileLight, LampFile},
    scene::{SpreadKind, Yard},
    units::clipped,
};
use rayon::prelude::*;
use std::{
    collections::{BTreeMap, BTreeSet},
    path::{Path, PathBuf},
    sync::Arc,
};

/// Pictures that are opened at once: a large one takes half a gigabyte.
const AT_ONCE: usize = 2;

/// Characters of a file's name that a message has.
const LONGEST_NAME: usize = 80;

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
    /// Files that were not read because the yard may not look where they lie, by the name that it gives them. Once its owner has said
    /// that it may, [`Shelf::allow`] lets them be fetched.
    pub outside: BTreeMap<String, PathBuf>,
    folder: PathBuf,
    reach: Reach,
}

/// Where a picture comes from.
enum Source {
    /// From the program itself: bytes of a file.
    Own(&'static [u8]),
    /// From a file.
    File(PathBuf),
}

impl Shelf {
    /// An empty shelf; files are looked for beside the yard, in `folder`.
    pub fn beside(folder: &Path) -> Self {
        Self { folder: folder.to_owned(), ..Self::default() }
    }

    /// With this reach beyond that folder.
    pub fn reaching(self, reach: Reach) -> Self {
        Self { reach, ..self }
    }

    /// How far the yard may look.
    pub fn reach(&self) -> &Reach {
        &self.reach
    }

    /// Lets the yard look further: what lay outside can be fetched now.
    pub fn allow(&mut self, reach: Reach) {
        self.reach = reach;
        for name in std::mem::take(&mut self.outside).into_keys() {
            if self.stand_ins.remove(&name).is_some() {
                self.pictures.remove(&name);
            }
            self.unread.remove(&name);
        }
    }

    /// The files that a yard names and may read, in any of its arrangements.
    pub fn files(&self, yard: &Yard) -> Vec<PathBuf> {
        let hidden = yard.arrangements.iter().flat_map(|arrangement| &arrangement.stations);
        let pictures = yard.stations.iter().chain(hidden).map(|station| station.content.picture.as_str());
        let pictures = pictures.filter(|name| builtin(name).is_none());
        pictures.chain(lamp_files(yard)).filter_map(|name| self.reach.find(&self.folder, name).ok()).collect()
    }

    /// Takes in what a yard names and is not there yet. What is missing or unreadable is said.
    pub fn fetch_for(&mut self, yard: &Yard) -> Vec<String> {
        let mut said = self.fetch(yard.stations.iter().map(|station| station.content.picture.as_str()));
        said.extend(self.fetch_lamps(lamp_files(yard)));
        said
    }

    /// Takes in pictures that are not there yet: built-in ones by their names, others as files. One that is missing or
    /// unreadable is said, and a test card stands in for it.
    pub fn fetch<'a>(&mut self, names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
        let mut asked = BTreeSet::new();
        let names = names.into_iter().filter(|name| asked.insert(*name));
        let new: Vec<&str> = names.filter(|name| !self.pictures.contains_key(*name)).collect();
        let found: Vec<_> = new
            .into_iter()
            .map(|name| match builtin(name) {
                Some(bytes) => (name, Ok(Source::Own(bytes))),
                None => (name, self.find(name).map(Source::File)),
            })
            .collect();
        let load = |source| match source {
            Source::Own(bytes) => Picture::decode(bytes),
            Source::File(path) => Picture::load(path),
        };
        let load = |(name, source): (_, Result<_, ReadError>)| (name, source.map_err(FrameError::from).and_then(load));
        let (mut found, mut loaded) = (found.into_iter(), Vec::new());
        while found.len() > 0 {
            let some: Vec<_> = found.by_ref().take(AT_ONCE).collect();
            loaded.extend(some.into_par_iter().map(load).collect::<Vec<_>>());
        }
        let mut said = Vec::new();
        for (name, loaded) in loaded {
            let picture = loaded.unwrap_or_else(|error| {
                said.push(format!("picture “{}”: {error}; a test card stands in", clipped(name, LONGEST_NAME)));
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
            match self.find(path).map_err(|error| format!("the lamp file {error}")).and_then(|file| lamp(&file)) {
                Ok(lamp) => {
                    self.lamps.insert(path.to_owned(), Arc::new(lamp));
                }
                Err(why) => {
                    said.push(format!("lamp file “{}”: {why}; its lamps stay dark", clipped(path, LONGEST_NAME)));
                    self.unread.insert(path.to_owned(), why);
                }
            }
        }
        said
    }

    /// Where a file lies that the yard names; noted if that is where it may not look.
    fn find(&mut self, name: &str) -> Result<PathBuf, ReadError> {
        let found = self.reach.find(&self.folder, name);
        if let Err(ReadError::Outside(place)) = &found {
            self.outside.insert(name.to_owned(), place.clone());
        }
        found
    }
}

/// The lamp files that a yard names.
fn lamp_files(yard: &Yard) -> impl Iterator<Item = &str> {
    yard.lamp_kinds.iter().filter_map(|kind| match &kind.spread {
        SpreadKind::File { path } => Some(path.as_str()),
        _ => None,
    })
}

impl From<BTreeMap<String, Arc<Frame>>> for Shelf {
    /// Pictures that are linear light already.
    fn from(frames: BTreeMap<String, Arc<Frame>>) -> Self {
        let linear = |(name, frame)| (name, Arc::new(Picture::linear(frame)));
        Self { pictures: frames.into_iter().map(linear).collect(), ..Self::default() }
    }
}

fn lamp(path: &Path) -> Result<FileLight, String> {
    let bytes = files::read(path, LampFile::MOST_BYTES).map_err(|error| format!("the lamp file {error}"))?;
    LampFile::read(&bytes).map(|file| file.light()).map_err(|fault| format!("the lamp file is wrong at {fault}"))
}
