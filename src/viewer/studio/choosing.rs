//! Everything that could hang or stand in a thing's place, tried beside the window.

use super::lighting::Lighting;
use gauzelight::{
    craft::money::Running,
    frames::Shelf,
    judge::compare::{Comparison, Of, Question, compare},
    scene::Catalogue,
};
use std::sync::{
    Arc,
    mpsc::{Receiver, TryRecvError, channel},
};

/// What was tried, or the work on it.
#[derive(Default)]
pub struct Choosing {
    /// What is asked: a station by its index, and what is tried for it.
    pub asked: Option<(usize, Of)>,
    /// What came of it, or why nothing did.
    pub done: Option<Result<Comparison, String>>,
    work: Option<Receiver<Result<Comparison, String>>>,
}

impl Choosing {
    /// Begins to try.
    pub fn begin(&mut self, station: usize, of: Of, lighting: &Lighting, catalogue: &Catalogue, shelf: &Shelf) {
        let (sender, receiver) = channel();
        let (night, yard) = (Arc::clone(&lighting.night), Arc::clone(&lighting.yard));
        let (catalogue, shelf) = (catalogue.clone(), shelf.clone());
        std::thread::spawn(move || {
            let running = Running::of(&yard, 1);
            let question =
                Question { yard: &yard, catalogue: &catalogue, night: &night, shelf: &shelf, station, of, running };
            // The card may have been closed meanwhile.
            let _ = sender.send(compare(question).map_err(|why| why.to_string()));
        });
        (self.asked, self.done, self.work) = (Some((station, of)), None, Some(receiver));
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.work.is_some()
    }

    /// Takes what has come in; never waits.
    pub fn take(&mut self) {
        match self.work.as_ref().map(Receiver::try_recv) {
            Some(Ok(done)) => (self.done, self.work) = (Some(done), None),
            Some(Err(TryRecvError::Disconnected)) => {
                (self.done, self.work) = (Some(Err("nothing could be tried".to_owned())), None);
            }
            None | Some(Err(TryRecvError::Empty)) => {}
        }
    }
}
