//! Findings in step with the night, and the remedies that are tried for one of them; all beside the window.

use super::lighting::Lighting;
use gauzelight::{
    frames::Shelf,
    judge::findings::{Case, Finding, Remedy, judge, remedies},
    scene::Catalogue,
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

/// What came of trying what would help.
pub struct Tried {
    /// Against what.
    pub finding: Finding,
    /// What helps; `None` while it is being tried.
    pub remedies: Option<Vec<Remedy>>,
    work: Option<Receiver<Vec<Remedy>>>,
}

/// The findings, and the work on them.
#[derive(Default)]
pub struct Judging {
    /// The newest, worst first.
    pub findings: Vec<Finding>,
    /// What was tried against the finding that was last asked about.
    pub tried: Option<Tried>,
    /// The change of the light that they are of, and since when the light is as it is.
    of: u64,
    since: Option<(u64, Instant)>,
    awaited: Option<(u64, Receiver<Vec<Finding>>)>,
}

impl Judging {
    /// Takes findings and remedies that have come in, and asks for those of the light as it now is; never waits.
    pub fn keep_step(&mut self, lighting: &Lighting, catalogue: &Catalogue, holding: bool) {
        let now = lighting.revision.light;
        if let Some((of, receiver)) = &self.awaited {
            match receiver.try_recv() {
                Ok(findings) => (self.findings, self.of, self.awaited) = (findings, *of, None),
                Err(TryRecvError::Empty) => {}
                Err(TryRecvError::Disconnected) => (self.of, self.awaited) = (*of, None),
            }
        }
        if let Some(tried) = &mut self.tried {
            tried.take();
        }
        if self.since.is_none_or(|(of, _)| of != now) {
            self.since = Some((now, Instant::now()));
        }
        let quiet = !holding && self.since.is_some_and(|(_, since)| since.elapsed() > QUIET);
        if self.awaited.is_some() || self.of == now || !quiet {
            return;
        }
        let (sender, receiver) = channel();
        let (night, yard, catalogue) = (Arc::clone(&lighting.night), Arc::clone(&lighting.yard), catalogue.clone());
        std::thread::spawn(move || {
            // Nobody listens any more if the window has closed meanwhile.
            let _ = sender.send(judge(&Case::of(&yard, &catalogue, &night)));
        });
        (self.awaited, self.tried) = (Some((now, receiver)), None);
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
        let (night, yard) = (Arc::clone(&lighting.night), Arc::clone(&lighting.yard));
        let (catalogue, shelf, against) = (catalogue.clone(), shelf.clone(), finding.clone());
        std::thread::spawn(move || {
            let case = Case::of(&yard, &catalogue, &night);
            // Somebody may have gone on meanwhile.
            let _ = sender.send(remedies(&case, &against, &shelf, folder.as_deref()));
        });
        self.tried = Some(Tried { finding, remedies: None, work: Some(receiver) });
    }
}

impl Tried {
    fn take(&mut self) {
        match self.work.as_ref().map(Receiver::try_recv) {
            Some(Ok(remedies)) => (self.remedies, self.work) = (Some(remedies), None),
            Some(Err(TryRecvError::Disconnected)) => (self.remedies, self.work) = (Some(Vec::new()), None),
            None | Some(Err(TryRecvError::Empty)) => {}
        }
    }
}
