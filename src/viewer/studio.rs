//! What the window works on: the yard, its night, where the eye is, and what is chosen. Cards push [`Act`]s; here alone
//! they take effect.

use super::eye::Eye;
use crate::command::{Stage, from_spot};
use gauzelight::{
    judge::{self, StationReading},
    light::{EyeRay, Night, Seen, luma},
    picture::Develop,
};
use glam::Vec3;
use std::sync::{
    Arc,
    mpsc::{Receiver, channel},
};

/// Vertical field of view from a viewing spot, rad: about what a glance takes in.
const FIELD: f32 = 0.8;
/// Share of half the window that the picture is moved aside for the rail.
const RAIL_SHARE: f32 = 0.11;
/// Range of the false colours, cd/m².
pub const RANGE: (f32, f32) = (0.01, 100.0);

/// Everything a person can do in the window.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Stand at a viewing spot, by its place in the yard.
    Go(usize),
    /// Back to the spot last stood at.
    Home,
    /// Turn about what is looked at, rad.
    Turn(f32, f32),
    /// Look around, rad.
    Look(f32, f32),
    /// Walk to the right, up, forwards, m.
    Walk([f32; 3]),
    /// Come closer by a factor.
    Approach(f32),
    /// Choose a station, or none.
    Choose(Option<usize>),
    /// The station after the chosen one.
    NextStation,
    /// Switch a station on or off.
    Switch(usize),
    /// Switch the chosen one.
    SwitchChosen,
    /// Luminance that shows as white, cd/m².
    White(f32),
    /// False colour on or off.
    FalseColour,
    /// Outlines of the throws on or off.
    Outlines,
    /// Illuminance by the sky, lx.
    Sky(f32),
    /// Help on or off.
    Help,
    /// The page of five questions on or off.
    Questions,
    /// Open a yard made by the five questions.
    Open(Box<gauzelight::scene::Yard>),
    /// The first card has done its work.
    Welcomed,
    /// Close what is open.
    Close,
}

/// What the pointer rests on.
#[derive(Clone, Debug)]
pub struct Hover {
    /// What and where.
    pub seen: Seen,
    /// Luminance, cd/m².
    pub luminance: f32,
    /// Illuminance of the side seen, lx; of both sides of something see-through.
    pub illuminance: f32,
    /// Shares of it by source, largest first.
    pub shares: Vec<(String, f32)>,
}

/// The state of the window.
pub struct Studio {
    /// Yard, catalogue and pictures.
    pub stage: Stage,
    /// Its night.
    pub night: Arc<Night>,
    /// Counts changes of the light.
    pub revision: u64,
    /// Counts rebuilds of the yard.
    pub rebuilt: u64,
    /// The eye.
    pub eye: Eye,
    /// Viewing spot last stood at.
    pub spot: usize,
    /// Chosen station.
    pub chosen: Option<usize>,
    /// Luminance that shows as white, cd/m².
    pub white: f32,
    /// Whether false colour shows.
    pub false_colour: bool,
    /// Whether outlines show.
    pub outlines: bool,
    /// Whether the help shows.
    pub help: bool,
    /// Whether the five questions show.
    pub questions: bool,
    /// Whether the first card shows.
    pub welcome: bool,
    /// Readings of all stations, of the revision they say.
    pub readings: (u64, Vec<StationReading>),
    awaited: Option<(u64, Receiver<Vec<StationReading>>)>,
}

impl Studio {
    /// Lights a stage; `welcome` says whether the first card shows.
    pub fn new(stage: Stage, welcome: bool) -> Result<Self, String> {
        let night = stage.night().map_err(|e| e.to_string())?;
        let eye = Eye { at: Vec3::new(0.0, 1.6, 12.0), target: Vec3::new(0.0, 2.0, 0.0), field: FIELD };
        let mut studio = Self {
            night: Arc::new(night),
            revision: 1,
            rebuilt: 1,
            eye,
            spot: 0,
            chosen: None,
            white: 8.0,
            false_colour: false,
            outlines: false,
            help: false,
            questions: false,
            welcome,
            readings: (0, Vec::new()),
            awaited: None,
            stage,
        };
        studio.home();
        Ok(studio)
    }

    /// How luminance is shown.
    pub fn develop(&self) -> Develop {
        if self.false_colour { Develop::FalseColour(RANGE.0, RANGE.1) } else { Develop::White(self.white) }
    }

    /// Lets an act take effect.
    pub fn act(&mut self, act: Act) -> Result<(), String> {
        let stations = self.stage.yard.stations.len();
        match act {
            Act::Go(spot) => {
                self.spot = spot;
                self.home();
            }
            Act::Home => self.home(),
            Act::Turn(left, up) => self.eye.turn_about(left, up),
            Act::Look(left, up) => self.eye.look(left, up),
            Act::Walk(way) => self.eye.walk(way),
            Act::Approach(factor) => self.eye.approach(factor),
            Act::Choose(station) => {
                self.chosen = station.filter(|s| *s < stations);
                self.welcome = false;
            }
            Act::Welcomed => self.welcome = false,
            Act::NextStation if stations > 0 => self.chosen = Some(self.chosen.map_or(0, |s| (s + 1) % stations)),
            Act::NextStation => {}
            Act::Switch(station) => self.switch(station)?,
            Act::SwitchChosen => {
                if let Some(station) = self.chosen {
                    self.switch(station)?;
                }
            }
            Act::White(white) => self.white = white.clamp(0.01, 10_000.0),
            Act::FalseColour => self.false_colour = !self.false_colour,
            Act::Outlines => self.outlines = !self.outlines,
            Act::Sky(lx) => self.set_sky(lx),
            Act::Help => self.help = !self.help,
            Act::Questions => self.questions = !self.questions,
            Act::Open(yard) => self.open(*yard)?,
            Act::Close => {
                (self.help, self.questions, self.welcome) = (false, false, false);
                self.chosen = None;
            }
        }
        Ok(())
    }

    fn home(&mut self) {
        let Some(spot) = self.stage.yard.spots.get(self.spot) else { return };
        let camera = from_spot(&self.night, spot, FIELD);
        let target = self.night.aim(&spot.look).unwrap_or(camera.eye + 8.0 * camera.forward);
        // The rail takes a part of the window: what is looked at stands in the middle of what it leaves.
        let half_width = camera.half_height * 1.6 * (target - camera.eye).length();
        self.eye = Eye { at: camera.eye, target: target - camera.right * half_width * RAIL_SHARE, field: FIELD };
    }

    fn switch(&mut self, station: usize) -> Result<(), String> {
        let Some(entry) = self.stage.yard.stations.get_mut(station) else { return Ok(()) };
        entry.on = !entry.on;
        let night = Arc::make_mut(&mut self.night);
        night
            .set_station(&self.stage.yard, &self.stage.catalogue, &self.stage.shelf.frames, station)
            .map_err(|e| e.to_string())?;
        self.revision += 1;
        Ok(())
    }

    fn set_sky(&mut self, lx: f32) {
        let night = Arc::make_mut(&mut self.night);
        night.set_sky(lx);
        self.stage.yard.evening.sky_lx = f64::from(lx);
        self.revision += 1;
    }

    fn open(&mut self, yard: gauzelight::scene::Yard) -> Result<(), String> {
        let said = self.stage.shelf.fetch(yard.stations.iter().map(|s| s.content.picture.as_str()));
        self.stage.yard = yard;
        self.night = Arc::new(self.stage.night().map_err(|e| e.to_string())?);
        self.revision += 1;
        self.rebuilt += 1;
        (self.spot, self.chosen, self.questions, self.welcome) = (0, Some(0), false, false);
        self.home();
        if said.is_empty() { Ok(()) } else { Err(said.join("; ")) }
    }

    /// Takes readings that have come in, and asks for those of the light as it now is; never waits.
    pub fn refresh_readings(&mut self) {
        if let Some((revision, receiver)) = &self.awaited
            && let Ok(readings) = receiver.try_recv()
        {
            self.readings = (*revision, readings);
            self.awaited = None;
        }
        if self.awaited.is_none() && self.readings.0 != self.revision {
            let (sender, receiver) = channel();
            let (night, yard) = (Arc::clone(&self.night), self.stage.yard.clone());
            let catalogue = self.stage.catalogue.clone();
            std::thread::spawn(move || {
                // Nobody listens any more if the window has closed meanwhile.
                let _ = sender.send(judge::read_all(&night, &yard, &catalogue));
            });
            self.awaited = Some((self.revision, receiver));
        }
    }

    /// What a ray of the picture meets, and its light; with `through`, what stands behind cloth and glass.
    pub fn hover(&self, ray: EyeRay, through: bool) -> Hover {
        let seen = self.night.seen(ray, through);
        let luminance = luma(self.night.luminance(ray));
        let mut shares: Vec<(String, f32)> = Vec::new();
        let mut illuminance = 0.0;
        if !seen.name.is_empty() {
            let side = |normal: Vec3| -> Vec<f32> {
                self.night.illuminance(seen.point, normal).lx.into_iter().map(luma).collect()
            };
            let mut lx = side(seen.normal);
            if seen.see_through {
                // What lights a film from behind has lit it.
                lx.iter_mut().zip(side(-seen.normal)).for_each(|(near, far)| *near += far);
            }
            illuminance = lx.iter().sum();
            let names = (0..lx.len() as u32).map(|i| self.night.source_name(i).to_owned());
            shares = names.zip(lx.iter().map(|v| v / illuminance.max(1e-9))).filter(|s| s.1 >= 0.005).collect();
            shares.sort_by(|a, b| b.1.total_cmp(&a.1));
        }
        Hover { seen, luminance, illuminance, shares }
    }
}
