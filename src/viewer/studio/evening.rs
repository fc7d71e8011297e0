//! The course of a dated evening, and how well each station is seen in it; kept while nothing but the clock changes.

use super::lighting::Lighting;
use gauzelight::{
    frames::Shelf,
    judge::{
        Word,
        evening::{EveningCourse, Watch},
    },
    light::ambient::{Moment, course},
    scene::{Angle, Catalogue, Clock, Date, Fraction, Latitude, Longitude, Setting, When, Yard, Zone},
};
use jiff::{ZonedDateTime, tz::TimeZone};
use std::sync::{
    Arc,
    mpsc::{Receiver, TryRecvError, channel},
};

/// Minutes between two moments of the course.
const STEP: u16 = 5;

/// How the light of the evening goes.
#[derive(Default)]
pub struct Course {
    /// Every few minutes, from before sunset to midnight; empty where the evening has no date.
    pub moments: Vec<Moment>,
    /// How well each station is seen from where one stands; `None` until that has been worked out.
    pub seen: Option<EveningCourse>,
    of: Option<(When, Setting)>,
    /// The yard and the spot that the stations were watched in, and whether every surface knew its sky.
    watched: Option<(Arc<Yard>, usize, bool)>,
    awaited: Option<Receiver<Option<EveningCourse>>>,
}

impl Course {
    /// Follows the evening's date and place and what lies around; its clock does not matter.
    pub fn keep_step(&mut self, yard: &Yard) {
        let day = yard.evening.when.as_ref().map(|when| (when.at(Clock::new(12, 0)), yard.setting));
        if self.of != day {
            self.moments = day.as_ref().map(|(when, setting)| course(when, *setting, STEP)).unwrap_or_default();
            self.of = day;
        }
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.awaited.is_some()
    }

    /// Follows what is seen from a spot, beside the window; never waits.
    pub fn watch(&mut self, lighting: &Lighting, catalogue: &Catalogue, shelf: &Shelf, spot: usize, holding: bool) {
        if let Some(receiver) = &self.awaited {
            match receiver.try_recv() {
                Ok(seen) => (self.seen, self.awaited) = (seen, None),
                Err(TryRecvError::Disconnected) => self.awaited = None,
                Err(TryRecvError::Empty) => return,
            }
        }
        let yard = &lighting.yard;
        let thorough = lighting.night.thorough;
        let Some(when) = yard.evening.when.clone().filter(|_| !yard.spots.is_empty()) else {
            (self.seen, self.watched) = (None, None);
            return;
        };
        if let Some((watched, from, was_thorough)) = &mut self.watched
            && *from == spot
            && *was_thorough == thorough
        {
            if Arc::ptr_eq(watched, yard) {
                return;
            }
            if differ_by_clock(watched, yard) {
                *watched = Arc::clone(yard);
                return;
            }
        }
        if holding {
            return;
        }
        let (sender, receiver) = channel();
        let (night, yard) = (Arc::clone(&lighting.night), Arc::clone(yard));
        let (catalogue, shelf) = (catalogue.clone(), shelf.clone());
        (self.watched, self.awaited) = (Some((Arc::clone(&yard), spot, thorough)), Some(receiver));
        std::thread::spawn(move || {
            let watch = Watch::of(&night, &yard, &catalogue, &shelf, spot).ok();
            let seen = watch.map(|mut watch| watch.course(&yard, &when, STEP, Word::Clear));
            // Nobody listens any more if the window has closed meanwhile.
            let _ = sender.send(seen);
        });
    }
}

/// Whether two yards differ in nothing but what the clock shows.
fn differ_by_clock(one: &Yard, other: &Yard) -> bool {
    let Some(when) = &other.evening.when else { return false };
    let mut at_noon = one.clone();
    if let Some(own) = &mut at_noon.evening.when {
        own.clock = when.clock;
    }
    at_noon == *other
}

/// A date and place to begin with: today in this computer's time zone, at the longitude where the sun keeps its time, half way
/// to the pole; somebody's own place is theirs to type.
pub fn usual() -> Option<When> {
    let now = ZonedDateTime::now();
    let system = TimeZone::system();
    let zone = system.iana_name().and_then(|name| Zone::parse(name).ok()).or_else(|| Zone::parse("UTC").ok())?;
    let hours = f64::from(now.offset().seconds()) / 3600.0;
    Some(When {
        date: Date::parse(&now.date().to_string()).ok()?,
        clock: Clock::new(18, 30),
        latitude_deg: Latitude(45.0),
        longitude_deg: Longitude(15.0 * hours),
        zone,
        faces_deg: Angle(180.0),
        cloud: Fraction(0.0),
    })
}
