//! Yards begun, opened, saved and taken up again.

use super::{Act, Asking, Left, Studio, lighting::Lighting, recovery::Unsaved};
use crate::viewer::hands::TapeHeld;
use gauzelight::{
    edit::{History, Starter},
    files,
    light::Night,
    scene::Yard,
};
use std::{path::PathBuf, sync::Arc};

impl Studio {
    pub(super) fn save(&mut self, file: PathBuf) -> Result<(), String> {
        // What was to follow does so once; after a failure it is asked for anew.
        let after = self.after_save.take();
        self.carry_own()?;
        files::check(&file, &self.papers.read(self.yard()))
            .map_err(|error| format!("The yard was not saved: {error}"))?;
        let saved = self.history.yard().save(&file).map_err(|e| e.to_string())?;
        self.history.mark_saved();
        self.papers.keep_in(Some(file));
        self.asking = None;
        if let Some(act) = after {
            self.begin(act)?;
        }
        match saved.message() {
            Some(message) => Err(message),
            None => Ok(()),
        }
    }

    /// Takes up changes that a window left that is no more.
    pub(super) fn restore(&mut self, left: &Left) -> Result<(), String> {
        let Unsaved { file, yard } = &left.unsaved;
        let loaded = Yard::parse(yard, "the unsaved yard", &self.catalogue).map_err(|faults| faults.plain())?;
        let before = Arc::clone(self.history.yard());
        let opened = self.open(loaded.yard, file.clone());
        // Where it could not be opened its copy stays; what else was left is offered when the window is next opened, not over this.
        if !Arc::ptr_eq(&before, self.history.yard()) {
            self.history.mark_unsaved();
            self.recovery.take_over(left, self.history.yard())?;
        }
        opened
    }

    /// Asks about changes that were never saved, if any window left some.
    pub(super) fn offer_what_was_left(&mut self) {
        if let Some(left) = self.recovery.left().into_iter().next() {
            self.asking = Some(Asking::Restore(Box::new(left)));
        }
    }

    /// Begins another yard, or ends; what was not saved is lost.
    pub(super) fn begin(&mut self, act: Act) -> Result<(), String> {
        self.asking = None;
        match act {
            Act::Quit => self.over = true,
            Act::Open(yard) => self.open(*yard, None)?,
            Act::New(starter) => {
                let mut yard = starter.yard();
                yard.units = self.papers.memory.units();
                self.open(yard, None)?;
                if starter == Starter::EmptyFront {
                    self.asking = Some(Asking::Front);
                }
            }
            Act::OpenFile(file) => {
                let loaded = crate::command::load(&file).map_err(|faults| faults.plain())?;
                self.open(loaded.yard, Some(file))?;
                if !loaded.warnings.is_empty() {
                    return Err(loaded.warnings.plain());
                }
            }
            _ => {}
        }
        Ok(())
    }

    pub(super) fn open(&mut self, yard: Yard, file: Option<PathBuf>) -> Result<(), String> {
        let folder = file.as_deref().and_then(std::path::Path::parent).unwrap_or(std::path::Path::new(""));
        let mut shelf = gauzelight::frames::Shelf::beside(folder);
        let said = shelf.fetch_for(&yard);
        let night = Night::build(&yard, &self.catalogue, &shelf).map_err(|e| e.to_string())?;
        self.papers.shelf = shelf;
        self.papers.opened += 1;
        self.papers.keep_in(file);
        self.history = History::of(yard);
        let revision = self.lighting.revision;
        self.lighting = Lighting::of(night, Arc::clone(self.history.yard()));
        self.lighting.revision.light += revision.light;
        self.lighting.revision.built += revision.built;
        (self.spot, self.questions, self.welcome, self.held, self.preview) = (0, false, false, None, None);
        (self.walk, self.tape, self.comparing) = (None, TapeHeld::No, Default::default());
        (self.readings, self.judging, self.course) = (Default::default(), Default::default(), Default::default());
        self.choosing = Default::default();
        self.chosen = self.history.yard().stations.first().map(|s| s.name.0.clone());
        self.home();
        self.asked_outside = 0;
        self.ask_about_what_lies_outside()?;
        if said.is_empty() { Ok(()) } else { Err(said.join("; ")) }
    }
}
