//! Yards begun, opened, saved and taken up again.

use super::{Act, Asking, Left, Studio, recovery::Unsaved};
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

    /// Asks about changes that were never saved, if any window left some: to whoever named a yard, those to that yard alone.
    pub(super) fn offer_what_was_left(&mut self) {
        let file = self.papers.file.as_deref();
        let concerns = |left: &Left| file.is_none_or(|file| left.is_of(file));
        if let Some(left) = self.recovery.left().into_iter().find(concerns) {
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
        self.lighting.begin_anew(night, Arc::clone(self.history.yard()));
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

#[cfg(test)]
mod tests {
    use super::super::recovery::{Recovery, leave};
    use super::*;
    use crate::command::Stage;
    use std::{fs, path::Path};

    const GOOD: &str = r#"Yard(name: "good", walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)])"#;

    /// A window with a place for what is not saved.
    fn studio(folder: &Path) -> Studio {
        let mut studio = Studio::new(Stage::demo().unwrap(), false).unwrap();
        studio.recovery = Recovery::within(Some(folder.to_owned()));
        studio
    }

    #[test]
    fn a_copy_that_cannot_be_opened_stays_and_changes_nothing() {
        let folder = tempfile::tempdir().unwrap();
        leave(folder.path(), "broken", None, "Yard(name: ");
        let mut studio = studio(folder.path());
        let before = Arc::clone(studio.yard());
        studio.offer_what_was_left();
        studio.act(Act::Restore).unwrap_err();
        assert!(Arc::ptr_eq(&before, studio.yard()) && studio.history.is_saved());
        assert_eq!(studio.recovery.left().len(), 1);
    }

    #[test]
    fn one_copy_is_restored_and_the_next_waits_for_the_next_window() {
        let folder = tempfile::tempdir().unwrap();
        leave(folder.path(), "first", None, GOOD);
        leave(folder.path(), "second", None, &GOOD.replace("good", "other"));
        let mut studio = studio(folder.path());
        studio.offer_what_was_left();
        studio.act(Act::Restore).unwrap();
        assert!(!studio.history.is_saved() && studio.asking.is_none());
        let name = studio.yard().name.0.clone();
        let left = studio.recovery.left();
        assert_eq!(left.len(), 1);
        assert!(!left[0].unsaved.yard.contains(&name), "{name} is this window's now");
    }

    #[test]
    fn to_a_named_yard_only_its_own_changes_are_offered() {
        let folder = tempfile::tempdir().unwrap();
        let [mine, other] = ["mine.ron", "other.ron"].map(|name| folder.path().join(name));
        fs::write(&mine, GOOD).unwrap();
        let kept = folder.path().join("unsaved");
        fs::create_dir(&kept).unwrap();
        leave(&kept, "other", Some(&other), GOOD);
        let mut studio = studio(&kept);
        studio.papers.keep_in(Some(folder.path().join("./mine.ron")));
        studio.offer_what_was_left();
        assert_eq!(studio.asking, None);
        leave(&kept, "mine", Some(&mine), GOOD);
        studio.offer_what_was_left();
        assert!(matches!(&studio.asking, Some(Asking::Restore(left)) if left.is_of(&mine)));
    }

    #[test]
    fn a_save_that_fails_keeps_the_window_and_forgets_the_quit() {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("yards");
        fs::create_dir(&place).unwrap();
        let mut studio = studio(&folder.path().join("unsaved"));
        studio.act(Act::SaveAs(place.join("yard.ron"))).unwrap();
        studio.act(Act::Switch(0)).unwrap();
        fs::remove_dir_all(&place).unwrap();
        fs::write(&place, "no folder any more").unwrap();
        studio.act(Act::Quit).unwrap();
        let said = studio.act(Act::Save).unwrap_err();
        assert!(said.contains("was not saved"), "{said}");
        assert!(!studio.over && !studio.history.is_saved());
        studio.act(Act::SaveAs(folder.path().join("elsewhere.ron"))).unwrap();
        assert!(studio.history.is_saved() && !studio.over, "the quit was forgotten");
    }
}
