//! Files that a yard names outside its own folder: read once its owner has said so, and then again every time.

use super::{Asking, Studio};
use gauzelight::{files::Reach, light::Night};
use std::{collections::BTreeMap, path::PathBuf, sync::Arc};

impl Studio {
    /// What the yard names that lies outside its folder, by name and place.
    pub fn outside(&self) -> &BTreeMap<String, PathBuf> {
        &self.papers.shelf.outside
    }

    /// Asks whether the yard may read what lies outside its folder, once for whatever that is; a yard that was trusted before reads it.
    pub(super) fn ask_about_what_lies_outside(&mut self) -> Result<(), String> {
        let outside = self.papers.shelf.outside.len();
        if outside <= self.asked_outside {
            return Ok(());
        }
        self.asked_outside = outside;
        if self.trusted_file().is_some_and(|file| self.papers.memory.trusted.contains(&file)) {
            return self.read_outside();
        }
        self.asking.get_or_insert(Asking::Outside);
        Ok(())
    }

    /// The yard may read it, now and whenever it is opened again.
    pub(super) fn trust(&mut self) -> Result<(), String> {
        self.asking = None;
        if let Some(file) = self.trusted_file().filter(|file| !self.papers.memory.trusted.contains(file)) {
            self.papers.memory.trusted.push(file);
            self.papers.memory.write();
        }
        self.read_outside()
    }

    fn trusted_file(&self) -> Option<PathBuf> {
        self.papers.file.as_ref().map(|file| std::fs::canonicalize(file).unwrap_or_else(|_| file.clone()))
    }

    fn read_outside(&mut self) -> Result<(), String> {
        let yard = Arc::clone(self.history.yard());
        self.papers.shelf.allow(Reach::anywhere());
        let said = self.papers.shelf.fetch_for(&yard);
        let night = Night::build(&yard, &self.catalogue, &self.papers.shelf).map_err(|error| error.to_string())?;
        self.papers.opened += 1;
        self.lighting.begin_anew(night, yard);
        if said.is_empty() { Ok(()) } else { Err(said.join("; ")) }
    }
}
