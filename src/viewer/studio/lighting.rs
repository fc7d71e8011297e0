//! The night in step with the document.
//!
//! Stations, lamps, the sky and cloths are followed at once. Anything else is built again beside the window, with the sky that
//! was known; and once all is quiet the whole is built thoroughly. So a picture shows the document or the one before it.

use super::super::darkroom::Revision;
use gauzelight::{
    frames::Shelf,
    light::{Followed, Night},
    scene::{Catalogue, Yard},
};
use std::{
    sync::{
        Arc,
        mpsc::{Receiver, TryRecvError, channel},
    },
    thread::JoinHandle,
    time::{Duration, Instant},
};

/// How long nothing may have changed before the yard is built thoroughly.
const QUIET: Duration = Duration::from_millis(500);

/// A yard's night, and the work on it.
pub struct Lighting {
    /// The night.
    pub night: Arc<Night>,
    /// The yard that it shows.
    pub yard: Arc<Yard>,
    /// Counts its changes.
    pub revision: Revision,
    /// A yard that could not be lit, which is not tried again.
    failed: Option<Arc<Yard>>,
    work: Option<Work>,
    changed: Instant,
    draft: Draft,
    /// Whether there is a window that shows each yard's first picture before its sky is known.
    drafts: bool,
}

/// Gathers the sky of a night as long as it is wanted.
pub type Gather = fn(&Night, &(dyn Fn() -> bool + Sync));

/// How far the sky of a yard's first night is known. Its first picture does not wait for that.
enum Draft {
    /// Not asked for yet: the picture comes first.
    Awaited,
    /// Asked for beside the window.
    Gathering {
        work: JoinHandle<()>,
        /// Once this is dropped, nobody wants it any more.
        _wanted: Arc<()>,
    },
    /// Known.
    Done,
}

struct Work {
    yard: Arc<Yard>,
    thorough: bool,
    done: Receiver<Result<Night, String>>,
}

impl Lighting {
    /// Of a night that shows a yard.
    pub fn of(night: Night, yard: Arc<Yard>) -> Self {
        let revision = Revision { light: 1, hung: 1, built: 1 };
        Self {
            night: Arc::new(night),
            yard,
            revision,
            failed: None,
            work: None,
            changed: Instant::now(),
            draft: Draft::Done,
            drafts: false,
        }
    }

    /// Shows the first picture before the sky is known, of this yard and of each that is opened after it.
    pub fn begin_as_draft(&mut self) {
        (self.draft, self.drafts) = (Draft::Awaited, true);
    }

    /// Whether the sky is not known yet.
    pub fn is_draft(&self) -> bool {
        !matches!(self.draft, Draft::Done)
    }

    /// Asks for the sky by `gather`, once the first picture is there: as long as this night is shown.
    pub fn gather(&mut self, gather: Gather) {
        if matches!(self.draft, Draft::Awaited) {
            let (night, wanted) = (Arc::clone(&self.night), Arc::new(()));
            let still = Arc::downgrade(&wanted);
            let work = std::thread::spawn(move || gather(&night, &|| still.strong_count() > 0));
            self.draft = Draft::Gathering { work, _wanted: wanted };
        }
    }

    /// Takes the sky in once it is known.
    fn take_sky(&mut self) {
        if matches!(&self.draft, Draft::Gathering { work, .. } if work.is_finished()) {
            self.draft = Draft::Done;
            self.revision.light += 1;
            self.revision.built += 1;
        }
    }

    /// Goes on with another night, whose revisions nobody has seen yet.
    pub fn begin_anew(&mut self, night: Night, yard: Arc<Yard>) {
        let (before, drafts) = (self.revision, self.drafts);
        let draft = if drafts { Draft::Awaited } else { Draft::Done };
        *self = Self { drafts, draft, ..Self::of(night, yard) };
        self.revision.light += before.light;
        self.revision.built += before.built;
    }

    /// Takes the yard one step nearer to being shown; never waits. Says what could not be lit.
    pub fn keep_step(
        &mut self,
        yard: &Arc<Yard>,
        catalogue: &Catalogue,
        shelf: &Shelf,
        holding: bool,
    ) -> Result<(), String> {
        self.take_sky();
        self.take_work()?;
        if self.failed.as_ref().is_some_and(|failed| Arc::ptr_eq(failed, yard)) {
            return Ok(());
        }
        let building = self.work.as_ref().is_some_and(|work| !work.thorough);
        if !Arc::ptr_eq(yard, &self.yard) && !building {
            self.changed = Instant::now();
            // A thorough build of what is no longer so is not waited for.
            self.work = None;
            if let Err(why) = self.follow(yard, catalogue, shelf) {
                self.failed = Some(Arc::clone(yard));
                return Err(why);
            }
        }
        let quiet = !holding && self.changed.elapsed() > QUIET;
        if self.work.is_none() && !self.night.thorough && quiet && Arc::ptr_eq(yard, &self.yard) {
            self.begin(yard, catalogue, shelf, true);
        }
        Ok(())
    }

    fn follow(&mut self, yard: &Arc<Yard>, catalogue: &Catalogue, shelf: &Shelf) -> Result<(), String> {
        let night = Arc::make_mut(&mut self.night);
        let followed = night.follow(&self.yard, yard, catalogue, shelf).map_err(|e| e.to_string());
        match followed? {
            Followed::Nothing => {}
            Followed::Lights => self.revision.light += 1,
            Followed::Hung => {
                self.revision.light += 1;
                self.revision.hung += 1;
            }
            Followed::Rebuild => {
                self.begin(yard, catalogue, shelf, false);
                return Ok(());
            }
        }
        self.yard = Arc::clone(yard);
        Ok(())
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.work.is_some() || self.is_draft()
    }

    fn begin(&mut self, yard: &Arc<Yard>, catalogue: &Catalogue, shelf: &Shelf, thorough: bool) {
        let (sender, done) = channel();
        let (before, after) = (Arc::clone(&self.night), Arc::clone(yard));
        let (catalogue, shelf) = (catalogue.clone(), shelf.clone());
        std::thread::spawn(move || {
            let night = if thorough {
                Night::build(&after, &catalogue, &shelf)
            } else {
                before.rebuilt(&after, &catalogue, &shelf)
            };
            // The picture wants all of it, and must not wait.
            let _ = night.as_ref().map(Night::gather);
            // Nobody listens any more if the window has closed or gone on meanwhile.
            let _ = sender.send(night.map_err(|e| e.to_string()));
        });
        self.work = Some(Work { yard: Arc::clone(yard), thorough, done });
    }

    fn take_work(&mut self) -> Result<(), String> {
        let Some(work) = &self.work else { return Ok(()) };
        let night = match work.done.try_recv() {
            Ok(night) => night,
            Err(TryRecvError::Empty) => return Ok(()),
            Err(TryRecvError::Disconnected) => Err("the yard could not be built".to_owned()),
        };
        let yard = Arc::clone(&work.yard);
        self.work = None;
        match night {
            Ok(night) => {
                (self.night, self.yard) = (Arc::new(night), yard);
                if self.is_draft() {
                    // Nobody wants the sky of the night before any more.
                    self.draft = Draft::Awaited;
                }
            }
            Err(why) => {
                // The picture stays as it was, and this yard is not tried again.
                self.failed = Some(yard);
                return Err(why);
            }
        }
        self.revision =
            Revision { light: self.revision.light + 1, hung: self.revision.hung, built: self.revision.built + 1 };
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Act, Studio};
    use crate::command::Stage;
    use gauzelight::edit::Starter;
    use std::time::Duration;

    #[test]
    fn numbers_wait_for_the_first_picture_and_come_with_the_sky() {
        let mut studio = Studio::new(Stage::demo().unwrap(), false).unwrap();
        studio.lighting.begin_as_draft();
        studio.keep_step().unwrap();
        assert!(studio.lighting.is_draft() && !studio.readings.is_at_work());
        let before = studio.lighting.revision;
        studio.lighting.gather(|night, _| night.gather());
        for _ in 0..12_000 {
            if !studio.lighting.is_draft() {
                break;
            }
            std::thread::sleep(Duration::from_millis(5));
            studio.keep_step().unwrap();
        }
        assert!(!studio.lighting.is_draft(), "the sky does not come");
        let now = studio.lighting.revision;
        assert!(now.built > before.built && now.light > before.light, "the picture is taken again with the sky");
        assert!(studio.readings.is_at_work());
        studio.act(Act::New(Starter::EmptyFront)).unwrap();
        studio.keep_step().unwrap();
        assert!(studio.lighting.is_draft() && !studio.readings.is_at_work(), "so does the next yard");
    }
}
