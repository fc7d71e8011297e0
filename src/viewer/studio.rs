//! What the window works on: the yard with its past, its night, where the eye is, and what is chosen. Cards push [`Act`]s;
//! here alone they take effect.

mod act;
mod adapting;
mod choosing;
mod compare;
mod doing;
#[cfg(test)]
mod dragging;
mod evening;
mod judging;
mod lighting;
mod opening;
mod printing;
mod reading;
mod recovery;
mod shelf;
mod trust;
mod walk;

pub use act::{Act, Aside, Asking, Of};
pub use compare::{Comparison, Side};
pub use judging::State;
pub use printing::{Kind, Print};
pub use reading::Hover;
pub use recovery::Left;
pub use shelf::Memory;
pub use walk::{CAR, WALKER};

use super::{
    eye::Eye,
    hands::{Held, TapeHeld},
};
use crate::command::{Stage, from_spot};
use adapting::Adapting;
use choosing::Choosing;
use compare::Comparing;
use evening::Course;
use gauzelight::{
    edit::{Edit, History},
    light::Night,
    picture::Develop,
    scene::{Catalogue, Item, OwnCatalogue, Yard},
};
use glam::Vec3;
use judging::Judging;
use lighting::Lighting;
use printing::Printing;
use reading::Readings;
use recovery::Recovery;
use shelf::Papers;
use std::sync::Arc;
use walk::Walk;

/// Vertical field of view from a viewing spot, rad: about what a glance takes in.
const FIELD: f32 = 0.8;
/// Range of the false colours, cd/m².
pub const RANGE: (f32, f32) = (0.01, 100.0);

/// The state of the window.
pub struct Studio {
    /// The yard with its past.
    pub history: History,
    /// A change that is shown and not made.
    pub preview: Option<(Edit, Arc<Yard>)>,
    /// The catalogue, with what its owner has.
    pub catalogue: Catalogue,
    /// What its owner has.
    own: OwnCatalogue,
    /// Pictures, and the file that the yard is kept in.
    pub papers: Papers,
    /// How many files outside the yard's folder were asked about.
    asked_outside: usize,
    /// The copy of what is not saved.
    recovery: Recovery,
    /// The night in step with the yard.
    pub lighting: Lighting,
    /// Readings in step with the night.
    pub readings: Readings,
    /// The eye.
    pub eye: Eye,
    /// Viewing spot last stood at.
    pub spot: usize,
    /// Whether one still stands there.
    pub at_spot: bool,
    /// Passing by, if one does.
    pub walk: Option<Walk>,
    /// Name of the chosen thing.
    pub chosen: Option<String>,
    /// What is held.
    pub held: Option<Held>,
    /// The tape that is being laid.
    pub tape: TapeHeld,
    /// Counts gestures, so that one is one step back.
    gesture: u64,
    /// What is gone on with once the yard is saved.
    after_save: Option<Act>,
    /// Luminance that shows as white, cd/m².
    pub white: f32,
    /// Whether false colour shows.
    pub false_colour: bool,
    /// Whether the picture is as an adapted eye sees it.
    pub adapted: Adapting,
    /// Whether outlines show.
    pub outlines: bool,
    /// Whether the help shows.
    pub help: bool,
    /// Whether the five questions show.
    pub questions: bool,
    /// Whether the first card shows.
    pub welcome: bool,
    /// Two arrangements held against each other.
    pub comparing: Comparing,
    /// What could be bought.
    pub choosing: Choosing,
    /// Paper.
    pub printing: Printing,
    /// Findings in step with the night.
    pub judging: Judging,
    /// The course of a dated evening.
    pub course: Course,
    /// What stands at the side while nothing is chosen.
    pub aside: Option<Aside>,
    /// What a card in the middle asks.
    pub asking: Option<Asking>,
    /// Whether the window is to close.
    pub over: bool,
    /// Width over height of the picture.
    pub aspect: f32,
    /// What cards leave free of its width, from and to.
    pub free: (f32, f32),
}

impl Studio {
    /// Lights a stage; `welcome` says whether the first card shows.
    pub fn new(stage: Stage, welcome: bool) -> Result<Self, String> {
        let night = stage.night().map_err(|e| e.to_string())?;
        let Stage { yard, catalogue, shelf, file } = stage;
        let history = History::of(yard);
        let lighting = Lighting::of(night, Arc::clone(history.yard()));
        let eye = Eye { at: Vec3::new(0.0, 1.6, 12.0), target: Vec3::new(0.0, 2.0, 0.0), field: FIELD };
        let papers = Papers::of(shelf, file);
        let white = papers.memory.white.unwrap_or(8.0);
        let mut studio = Self {
            history,
            preview: None,
            catalogue,
            own: crate::command::home::own().unwrap_or_default(),
            papers,
            asked_outside: 0,
            recovery: Recovery::new(),
            lighting,
            readings: Readings::default(),
            eye,
            spot: 0,
            at_spot: true,
            walk: None,
            chosen: None,
            held: None,
            tape: TapeHeld::No,
            gesture: 0,
            after_save: None,
            white,
            false_colour: false,
            adapted: Adapting::default(),
            outlines: false,
            help: false,
            questions: false,
            welcome,
            comparing: Comparing::default(),
            choosing: Choosing::default(),
            printing: Printing::default(),
            judging: Judging::default(),
            course: Course::default(),
            aside: None,
            asking: None,
            over: false,
            aspect: 1.6,
            free: (0.0, 1.0),
        };
        studio.home();
        studio.look_as_last_time();
        studio.offer_what_was_left();
        studio.ask_about_what_lies_outside()?;
        Ok(studio)
    }

    /// Where the eye was when this very yard was last closed, if it is the one that was.
    fn look_as_last_time(&mut self) {
        let Some(file) = self.papers.memory.recent.first().filter(|_| self.papers.file.is_some()) else { return };
        let Some((of, at, target, field)) = &self.papers.memory.eye else { return };
        if of == file {
            self.eye = Eye { at: Vec3::from(*at), target: Vec3::from(*target), field: *field };
            self.at_spot = false;
        }
    }

    /// What the next evening begins with.
    pub fn remember(&mut self, window: (u32, u32)) {
        let eye = (self.eye.at.to_array(), self.eye.target.to_array(), self.eye.field);
        let memory = &mut self.papers.memory;
        let file = memory.recent.first().cloned().filter(|_| self.papers.file.is_some());
        memory.eye = file.map(|file| (file, eye.0, eye.1, eye.2));
        (memory.window, memory.white) = (Some(window), Some(self.white));
        memory.write();
        self.recovery.end();
    }

    /// The yard as it is: what cards show and edits change.
    pub fn yard(&self) -> &Arc<Yard> {
        self.history.yard()
    }

    /// Whether a card stands in the middle.
    pub fn is_asking(&self) -> bool {
        self.help || self.questions || self.asking.is_some()
    }

    /// The night.
    pub fn night(&self) -> &Arc<Night> {
        &self.lighting.night
    }

    /// The chosen thing.
    pub fn item(&self) -> Option<Item> {
        self.yard().item(self.chosen.as_deref()?)
    }

    /// Index of the chosen station; of the first that lights the chosen thing, where that is none.
    pub fn station(&self) -> Option<usize> {
        let chosen = self.chosen.as_deref()?;
        let stations = &self.yard().stations;
        let named = |name: &str| stations.iter().position(|station| station.name.0 == name);
        let lights = self.readings.all.iter().filter(|reading| reading.on && reading.lights(chosen));
        named(chosen).or_else(|| lights.filter_map(|reading| named(&reading.station)).next())
    }

    /// How luminance is shown.
    pub fn develop(&self) -> Develop {
        match self.adapted.eye {
            Some(eye) => Develop::Adapted(eye),
            None if self.false_colour => Develop::FalseColour(RANGE.0, RANGE.1),
            None => Develop::White(self.white),
        }
    }

    /// Keeps night and readings in step with the yard; never waits.
    pub fn keep_step(&mut self) -> Result<(), String> {
        if self.chosen.is_none() {
            // Whose list it was is closed.
            self.preview = None;
        }
        let yard = Arc::clone(self.preview.as_ref().map_or(self.history.yard(), |(_, yard)| yard));
        let holding = self.held.is_some() || self.preview.is_some();
        let lit = self.lighting.keep_step(&yard, &self.catalogue, &self.papers.shelf, holding);
        let (file, is_saved) = (self.papers.file.as_deref(), self.history.is_saved());
        let kept = self.recovery.keep_step(self.history.yard(), file, is_saved);
        if self.lighting.is_draft() {
            // Readings and findings would take the time of the first picture.
            return lit.and(kept);
        }
        let station = if holding { self.station() } else { None };
        self.readings.keep_step(&self.lighting, &self.catalogue, station);
        self.choosing.take();
        let is_lit = Arc::ptr_eq(&self.lighting.yard, self.history.yard());
        if self.asking == Some(Asking::Paper) && is_lit && !self.printing.is_of(self.history.yard()) {
            self.print(None);
        }
        self.judging.keep_step(&self.lighting, &self.catalogue, holding);
        self.course.keep_step(&yard);
        self.course.watch(&self.lighting, &self.catalogue, &self.papers.shelf, self.spot, holding);
        self.adapted.keep_step(&self.lighting, self.eye);
        self.stroll();
        lit.and(kept).and(self.comparing.take()).and(self.printing.take())
    }

    /// Whether anything is awaited that is worked on beside the window.
    pub fn is_at_work(&self) -> bool {
        self.lighting.is_at_work()
            || self.readings.is_at_work()
            || self.judging.is_at_work()
            || self.course.is_at_work()
            || self.choosing.is_at_work()
            || self.comparing.is_at_work()
            || self.printing.is_at_work()
            || self.recovery.is_at_work()
    }

    /// To the spot last stood at.
    fn home(&mut self) {
        let Some(spot) = self.yard().spots.get(self.spot).cloned() else { return };
        let camera = from_spot(self.night(), &spot, FIELD);
        let target = self.night().aim(&spot.look).unwrap_or(camera.eye + 8.0 * camera.forward);
        self.eye = Eye { at: camera.eye, target, field: FIELD };
        self.at_spot = true;
        self.set_aside();
    }

    /// The rail takes a part of the window: what is looked at stands in the middle of what it leaves.
    fn set_aside(&mut self) {
        /// Share of half the window that the picture is moved aside for the rail.
        const RAIL_SHARE: f32 = 0.11;
        let camera = self.eye.camera();
        let half_width = camera.half_height * self.aspect * (self.eye.target - self.eye.at).length();
        self.eye.target -= camera.right * half_width * RAIL_SHARE;
    }

    /// Turns the eye just so far that the chosen thing, or what it lights, does not lie under a card.
    fn bring_into_sight(&mut self) {
        let Some(item) = self.item() else { return };
        let lit = self.station().and_then(|index| self.readings.all.get(index)).map(|reading| reading.target.clone());
        let name = lit.unwrap_or_else(|| item.name().to_owned());
        let Some(middle) = self.night().place(&name).map(|place| place.middle) else { return };
        let camera = self.eye.camera();
        let Some((x, _)) = camera.project(middle, self.aspect, 1.0) else { return };
        let (from, to) = (self.free.0 * self.aspect, self.free.1 * self.aspect);
        let margin = 0.12 * (to - from);
        let over = (x - (to - margin)).max(0.0) + (x - (from + margin)).min(0.0);
        if over != 0.0 {
            // What stands at the edge of the free part is some way off the axis: both ways in angle.
            let angle = |x: f32| ((2.0 * x - self.aspect) * camera.half_height).atan();
            self.eye.look(angle(x - over) - angle(x), 0.0);
        }
    }
}
