//! Findings in step with the night, and the remedies that are tried for one of them; all beside the window.

use super::lighting::Lighting;
use gauzelight::{
    frames::Shelf,
    judge::findings::{Case, Finding, Remedy, Stopped, Work, all_remedies, judge},
    light::Night,
    scene::{Catalogue, Yard},
    sheet::{self, Notes},
};
use std::{
    path::PathBuf,
    sync::{
        Arc,
        mpsc::{Receiver, TryRecvError, channel},
    },
    time::{Duration, Instant},
};

/// How long the light must have stayed as it is before it is judged.
const QUIET: Duration = Duration::from_millis(250);

/// What stations need, by their names.
type Asked = Vec<(String, Notes)>;

/// How far the judging has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum State {
    /// It goes on; what is shown is of the yard before.
    #[default]
    Judging,
    /// The findings are those of the yard as it stands.
    Judged,
    /// It could not be judged.
    Failed,
}

/// What came of trying what would help.
pub struct Tried {
    /// Against what.
    pub finding: Finding,
    /// What helps; `None` while it is being tried.
    pub remedies: Option<Vec<Remedy>>,
    awaited: Option<Receiver<Result<Vec<Vec<Remedy>>, Stopped>>>,
    /// How far that has come.
    work: Arc<Work>,
    /// The yard that the remedies change: for another they would undo what was done since.
    yard: Arc<Yard>,
}

/// The findings, and the work on them.
#[derive(Default)]
pub struct Judging {
    /// The newest, worst first.
    pub findings: Vec<Finding>,
    /// What each station's box, cable and wind need, by its name, part by part of the work.
    pub notes: Vec<(String, Notes)>,
    /// What was tried against the finding that was last asked about.
    pub tried: Option<Tried>,
    /// How far it has come.
    pub state: State,
    /// The light and the yard that were last judged or are being judged: who watches and from where changes no light.
    of: Option<(u64, Arc<Yard>)>,
    /// Since when light and yard are as they are.
    since: Option<(u64, Arc<Yard>, Instant)>,
    awaited: Option<Receiver<(Vec<Finding>, Asked)>>,
}

impl Judging {
    /// Takes findings and remedies that have come in, and asks for those of the yard as it now is; never waits.
    pub fn keep_step(&mut self, lighting: &Lighting, catalogue: &Catalogue, holding: bool) {
        let (light, yard) = (lighting.revision.light, &lighting.yard);
        let is_now = |of: u64, which: &Arc<Yard>| of == light && Arc::ptr_eq(which, yard);
        match self.awaited.as_ref().map(Receiver::try_recv) {
            Some(Ok((findings, notes))) => {
                (self.findings, self.notes, self.state, self.awaited) = (findings, notes, State::Judged, None);
            }
            Some(Err(TryRecvError::Disconnected)) => (self.state, self.awaited) = (State::Failed, None),
            None | Some(Err(TryRecvError::Empty)) => {}
        }
        if let Some(tried) = &mut self.tried {
            tried.take();
        }
        if self.tried.as_ref().is_some_and(|tried| !Arc::ptr_eq(&tried.yard, yard)) {
            self.tried = None;
        }
        if !self.since.as_ref().is_some_and(|(of, which, _)| is_now(*of, which)) {
            self.since = Some((light, Arc::clone(yard), Instant::now()));
        }
        let same = self.of.as_ref().is_some_and(|(of, which)| is_now(*of, which));
        if !same {
            self.state = State::Judging;
        }
        let quiet = !holding && self.since.as_ref().is_some_and(|(_, _, since)| since.elapsed() > QUIET);
        if self.awaited.is_some() || same || !quiet {
            return;
        }
        let (sender, receiver) = channel();
        let (night, yard, catalogue) = (Arc::clone(&lighting.night), Arc::clone(yard), catalogue.clone());
        (self.of, self.awaited) = (Some((light, Arc::clone(&yard))), Some(receiver));
        std::thread::spawn(move || {
            // Nobody listens any more if the window has closed meanwhile.
            let findings = judge(&Case::of(&yard, &catalogue, &night));
            let names = yard.stations.iter().map(|station| station.name.0.clone());
            let notes = names.zip(sheet::brief_in_full(&yard, &catalogue, &night)).collect();
            let _ = sender.send((findings, notes));
        });
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.awaited.is_some() || self.tried.as_ref().is_some_and(|tried| tried.awaited.is_some())
    }

    /// Tries what would help against a finding.
    pub fn try_for(
        &mut self,
        finding: Finding,
        lighting: &Lighting,
        catalogue: &Catalogue,
        shelf: &Shelf,
        folder: Option<PathBuf>,
    ) {
        let (sender, receiver) = channel();
        let (night, yard) = (Night::remembering(&lighting.night), Arc::clone(&lighting.yard));
        let (catalogue, shelf, against) = (catalogue.clone(), shelf.clone(), finding.clone());
        let work = Arc::new(Work::default());
        let own = Arc::clone(&work);
        std::thread::spawn(move || {
            let case = Case::of(&yard, &catalogue, &night);
            // Somebody may have gone on meanwhile.
            let _ = sender.send(all_remedies(&case, &[against], &shelf, folder.as_deref(), &own));
        });
        let yard = Arc::clone(&lighting.yard);
        // What was tried for another finding, or for another yard, is called off as it is dropped.
        self.tried = Some(Tried { finding, remedies: None, awaited: Some(receiver), work, yard });
    }
}

impl Tried {
    /// How many of the things to try are done, and of how many.
    pub fn progress(&self) -> (usize, usize) {
        self.work.progress()
    }

    fn take(&mut self) {
        let found = match self.awaited.as_ref().map(Receiver::try_recv) {
            Some(Ok(found)) => found.ok().and_then(|mut all| all.pop()).unwrap_or_default(),
            Some(Err(TryRecvError::Disconnected)) => Vec::new(),
            None | Some(Err(TryRecvError::Empty)) => return,
        };
        (self.remedies, self.awaited) = (Some(found), None);
    }
}

impl Drop for Tried {
    fn drop(&mut self) {
        self.work.stop();
    }
}
