//! Two arrangements held against each other: what each gives, and how each looks from where one stands.

use super::Studio;
use gauzelight::{
    edit::Edit,
    judge::{self, StationReading},
    light::{Followed, Night},
    picture::{Camera, Develop, expose},
    scene::{Catalogue, Yard},
};
use std::sync::{
    Arc,
    mpsc::{Receiver, TryRecvError, channel},
};

/// Size of each picture, pixels.
const SIZE: (u32, u32) = (560, 340);

/// One arrangement as it was looked at.
pub struct Side {
    /// Its name.
    pub name: String,
    /// Its readings, in the order of its stations.
    pub readings: Vec<StationReading>,
    /// Its picture: width, height, sRGB codes.
    pub picture: ([usize; 2], Vec<u8>),
}

/// Two arrangements, the one shown first.
pub struct Comparison {
    /// Both sides.
    pub sides: [Side; 2],
    /// Counts comparisons, so that pictures are made into textures once.
    pub number: u64,
}

/// A comparison, or the work on it.
#[derive(Default)]
pub struct Comparing {
    /// The newest.
    pub done: Option<Comparison>,
    work: Option<Receiver<Result<[Side; 2], String>>>,
    count: u64,
}

impl Comparing {
    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.work.is_some()
    }

    /// Takes what has come in; what could not be made is the error.
    pub fn take(&mut self) -> Result<(), String> {
        let sides = match self.work.as_ref().map(Receiver::try_recv) {
            None | Some(Err(TryRecvError::Empty)) => return Ok(()),
            Some(Ok(sides)) => sides,
            Some(Err(TryRecvError::Disconnected)) => Err("the two could not be looked at".to_owned()),
        };
        self.work = None;
        self.count += 1;
        self.done = Some(Comparison { sides: sides?, number: self.count });
        Ok(())
    }
}

impl Studio {
    /// Begins to hold the arrangement shown against another, beside the window.
    pub(super) fn compare(&mut self, other: &str) -> Result<(), String> {
        let folder = self.papers.folder();
        let arranged = Edit::Arrange(other.to_owned()).apply(self.history.yard(), &self.catalogue, folder);
        let after = Arc::new(arranged.map_err(|refusal| refusal.to_string())?);
        // Pictures that only the other arrangement throws.
        let _ = self.papers.shelf.fetch_for(&after);
        let (night, before) = (Arc::clone(&self.lighting.night), Arc::clone(&self.lighting.yard));
        let (catalogue, pictures) = (self.catalogue.clone(), self.papers.shelf.clone());
        let (camera, develop) = (self.eye.camera(), self.develop());
        let (sender, receiver) = channel();
        std::thread::spawn(move || {
            let both = || -> Result<[Side; 2], String> {
                let mut other = (*night).clone();
                let followed = other.follow(&before, &after, &catalogue, &pictures).map_err(|e| e.to_string())?;
                if followed == Followed::Rebuild {
                    other = night.rebuilt(&after, &catalogue, &pictures).map_err(|e| e.to_string())?;
                }
                Ok([
                    look(&night, &before, &catalogue, &camera, develop),
                    look(&other, &after, &catalogue, &camera, develop),
                ])
            };
            // The card may have been closed meanwhile.
            let _ = sender.send(both());
        });
        (self.comparing.work, self.comparing.done) = (Some(receiver), None);
        Ok(())
    }
}

fn look(night: &Night, yard: &Yard, catalogue: &Catalogue, camera: &Camera, develop: Develop) -> Side {
    let still = expose(night, camera, SIZE, 2, |_| ());
    let codes = still.luminance.iter().flat_map(|luminance| develop.codes(*luminance)).collect();
    Side {
        name: yard.arrangement.0.clone(),
        readings: judge::read_all(night, yard, catalogue),
        picture: ([SIZE.0 as usize, SIZE.1 as usize], codes),
    }
}
