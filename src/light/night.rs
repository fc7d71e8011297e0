//! A yard at night, ready to be asked about light.

mod corners;
mod crowds;
mod follow;
mod kept_sky;
mod names;
mod raise;
mod settle;
mod skies;
mod stations;
mod without;

use crowds::Crowds;
pub use follow::Followed;
pub use kept_sky::SkyKey;
pub use names::Names;
use skies::Skies;
pub use stations::{lumens, response, throws_alike};

use super::{
    Ambient, Beam, Body, DiscLight, Glow, LightPoint, Optic, Rgb, Source, VeilLight, matter::MatterFault,
    memory::Memory,
};
use crate::{
    frames::Shelf,
    geometry::{self, Chamber, Place, Tree, crossing},
    scene::{Aim, Catalogue, Yard},
};
use glam::Vec3;
use std::sync::Arc;

/// An opaque triangle.
#[derive(Clone, Copy, Debug)]
pub struct SolidLight {
    /// Its corners.
    pub corners: crossing::Corners,
    /// Diffuse reflectance.
    pub reflectance: Rgb,
    /// Relative doubt of it.
    pub doubt: f32,
    /// Index of its name.
    pub owner: u32,
}

/// Where a ray meets something opaque.
#[derive(Clone, Copy, Debug)]
pub struct Hit {
    /// Number of the triangle, for [`Night::solid`].
    pub solid: u32,
    /// Distance in units of the ray's direction.
    pub t: f32,
    /// Weights of the triangle's corners.
    pub weights: [f32; 3],
    /// Unit normal outwards.
    pub normal: Vec3,
}

/// Why a yard cannot be lit.
#[derive(Clone, Debug, thiserror::Error)]
pub enum NightFault {
    /// A fabric whose values no law allows.
    #[error(transparent)]
    Matter(#[from] MatterFault),
    /// A name that nothing has.
    #[error("{user} names “{name}”, which is in neither the yard nor the catalogue")]
    Unknown {
        /// What names it.
        user: String,
        /// The name.
        name: String,
    },
    /// More than can be held.
    #[error(
        "the yard is made of at least {triangles} triangles, more than the {MOST_TRIANGLES} that can be held; hide or leave out houses or forms, \
         or make the ground smaller"
    )]
    Much {
        /// Opaque triangles, those of a crowd once.
        triangles: usize,
    },
    /// More than can be numbered.
    #[error(
        "the yard has {triangles} triangles with every form counted, more than {MOST_STANDING}; hide or leave out some forms"
    )]
    Crowded {
        /// Opaque triangles, those of a crowd for each of it.
        triangles: usize,
    },
}

/// Opaque triangles that a night holds at most: some 4 GB with all that is known of them.
pub const MOST_TRIANGLES: usize = 12_000_000;
/// Opaque triangles that stand in a yard at most, those of crowds among them: their corners are still numbered, and what is known of the
/// sky at them is a few hundred MB.
pub const MOST_STANDING: usize = 200_000_000;

/// A yard at night: surfaces, ray trees, tables and lights. Immutable but for a station that is moved and the sky that
/// darkens.
#[derive(Clone)]
pub struct Night {
    /// Names of the things.
    pub names: Names,
    /// Where the named things are.
    pub places: Vec<Place>,
    /// Opaque triangles in the order of their tree, but for those of crowds; copies of a night share them.
    pub solids: Arc<Vec<SolidLight>>,
    /// Tree over these.
    pub solid_tree: Arc<Tree>,
    /// The same triangles leaf by leaf of that tree.
    pub(super) fours: Arc<Vec<crossing::Four>>,
    /// Opaque things of which there are many.
    pub(super) crowds: Arc<Crowds>,
    /// See-through things and mirrors; a yard's mirrors stand last, in their own order.
    pub veils: Vec<VeilLight>,
    /// Tree over the see-through things and mirrors.
    pub veil_tree: Arc<Tree>,
    /// Angular tables that the veils share.
    pub optics: Vec<Optic>,
    /// Beams of all stations that are on.
    pub beams: Vec<Beam>,
    /// Lamps as points.
    pub lamps: Vec<LightPoint>,
    /// Tree over where each of many lamps gives enough to be traced.
    pub(super) lamp_tree: Option<Arc<Tree>>,
    /// Lamps as bright bodies.
    pub glows: Vec<Glow>,
    /// Tree over the bright bodies.
    pub(super) glow_tree: Arc<Tree>,
    /// The disc of sun or moon, where one is up.
    pub(super) disc: Option<DiscLight>,
    /// Illuminance of open level ground by the sky, lx per channel.
    pub sky_lx: Rgb,
    /// Everything that sends light; the stations first, in the yard's order.
    pub sources: Vec<Source>,
    /// Index of the sky among the sources.
    pub sky_source: u32,
    /// Whether every surface knows its sky as the yard now stands; after a quick change some remember what they saw.
    pub thorough: bool,
    pub(super) chambers: Vec<Chamber>,
    /// For each of the yard's mirrors where it stands among the veils, if it stands at all.
    mirrors: Vec<Option<u32>>,
    /// The sky that is seen among its things; nothing while it is being built.
    skies: Option<Arc<Skies>>,
    /// What it, or a night that differs from it by the sources `anew` alone, was asked before.
    pub(super) memory: Option<Arc<Memory>>,
    pub(super) anew: Vec<u32>,
}

/// Tint of a night sky against neutral white: a little blue. From memory of twilight spectra; luminance 1.
const SKY_TINT: Rgb = Rgb::new(0.86, 1.0, 1.414);
/// Reflectance of settled snow (IES Lighting Handbook, "snow, old" 0.64, "new" 0.74; from memory).
const SNOW: f32 = 0.7;

impl Night {
    /// Builds the night of a yard. `shelf` holds what lies beside it: the frame of every station; a lamp whose
    /// file is not there stays dark. How much sky a place sees is asked for when that is first wanted.
    pub fn build(yard: &Yard, catalogue: &Catalogue, shelf: &Shelf) -> Result<Self, NightFault> {
        Ok(Self::raised(yard, catalogue, shelf, &[])?.under_its_sky())
    }

    /// The same of a yard that was changed: stations that throw the same picture the same way keep what it was cut into.
    pub fn build_after(&self, yard: &Yard, catalogue: &Catalogue, shelf: &Shelf) -> Result<Self, NightFault> {
        Ok(Self::raised(yard, catalogue, shelf, &self.beams)?.under_its_sky())
    }

    fn under_its_sky(mut self) -> Self {
        self.skies = Some(Arc::new(Skies::of(&self)));
        self
    }

    /// Builds the night of a yard that was changed, quickly: what stands where it stood remembers its sky, though something
    /// else may now stand before that.
    pub fn rebuilt(&self, yard: &Yard, catalogue: &Catalogue, shelf: &Shelf) -> Result<Self, NightFault> {
        let mut night = Self::raised(yard, catalogue, shelf, &self.beams)?;
        night.skies = self.skies.as_ref().map(|before| Arc::new(Skies::kept(&night, before)));
        night.thorough = false;
        Ok(night)
    }

    fn raised(yard: &Yard, catalogue: &Catalogue, shelf: &Shelf, before: &[Beam]) -> Result<Self, NightFault> {
        let built = geometry::build(yard);
        let triangles = built.triangles();
        if triangles > MOST_TRIANGLES {
            return Err(NightFault::Much { triangles });
        }
        let triangles = built.standing();
        if triangles > MOST_STANDING {
            return Err(NightFault::Crowded { triangles });
        }
        let mut night = Self::bare();
        night.raise_solids(yard, catalogue, &built)?;
        night.hang_veils(yard, catalogue, &built)?;
        (night.names, night.places, night.chambers) = (Names::of(built.names), built.places, built.chambers);
        night.beams = before.to_vec();
        night.set_lights(yard, catalogue, shelf)?;
        Ok(night)
    }

    /// The same, and from now on it remembers luminance by source ray by ray; copies of it that follow a change of stations ask for
    /// those alone. Worth its place where the same looks are taken often.
    #[must_use]
    pub fn remembering(&self) -> Self {
        Self { memory: Some(Arc::new(Memory::empty(self.sources.len()))), anew: Vec::new(), ..self.clone() }
    }

    /// Forgets: more than the light of some sources has changed.
    fn forget(&mut self) {
        (self.memory, self.anew) = (None, Vec::new());
    }

    /// The light of a source is another from now on.
    fn ask_anew(&mut self, source: u32) {
        if self.memory.is_some() && !self.anew.contains(&source) {
            self.anew.push(source);
        }
    }

    /// Its things alone, without a light.
    fn dark(&self) -> Self {
        Self {
            solids: Arc::clone(&self.solids),
            solid_tree: Arc::clone(&self.solid_tree),
            fours: Arc::clone(&self.fours),
            crowds: Arc::clone(&self.crowds),
            veils: self.veils.clone(),
            veil_tree: Arc::clone(&self.veil_tree),
            optics: self.optics.clone(),
            names: self.names.clone(),
            ..Self::bare()
        }
    }

    fn bare() -> Self {
        Self {
            names: Names::default(),
            places: Vec::new(),
            solids: Arc::default(),
            solid_tree: Arc::new(Tree::over(&[])),
            fours: Arc::default(),
            crowds: Arc::new(Crowds::none()),
            veils: Vec::new(),
            veil_tree: Arc::new(Tree::over(&[])),
            optics: Vec::new(),
            beams: Vec::new(),
            lamps: Vec::new(),
            lamp_tree: None,
            glows: Vec::new(),
            glow_tree: Arc::new(Tree::over(&[])),
            disc: None,
            sky_lx: Rgb::ZERO,
            sources: Vec::new(),
            sky_source: 0,
            thorough: true,
            chambers: Vec::new(),
            mirrors: Vec::new(),
            skies: None,
            memory: None,
            anew: Vec::new(),
        }
    }

    /// Sets all stations, lamps and the sky anew, as the yard now says.
    fn set_lights(&mut self, yard: &Yard, catalogue: &Catalogue, shelf: &Shelf) -> Result<(), NightFault> {
        let stations = yard.stations.iter().enumerate();
        self.forget();
        self.sources = stations.map(|(i, s)| Source::Station(i as u32, s.name.0.clone())).collect();
        (self.lamps, self.glows) = (Vec::new(), Vec::new());
        super::lamp::light(self, yard, catalogue, shelf)?;
        self.lamp_tree = super::lamp::reaches(&self.lamps).map(|reaches| Arc::new(Tree::over(&reaches)));
        let bodies: Vec<_> = self.glows.iter().map(|glow| crossing::outline_box(&glow.outline)).collect();
        self.glow_tree = Arc::new(Tree::over(&bodies));
        let ambient = Ambient::of(yard);
        // The disc stands among the sources between the lamps and the sky.
        self.sources.extend(ambient.disc.map(|disc| match disc.body {
            Body::Sun => Source::Sun,
            Body::Moon => Source::Moon,
        }));
        self.sky_source = self.sources.len() as u32;
        self.sources.push(Source::Sky);
        self.set_ambient(&ambient);
        // Stations that throw the same picture the same way keep what it was cut into.
        let before = std::mem::take(&mut self.beams);
        (0..yard.stations.len()).try_for_each(|station| self.place_station(yard, catalogue, shelf, (station, &before)))
    }

    /// Sets the light from above; the disc, where there is one, is the source before the sky.
    fn set_ambient(&mut self, ambient: &Ambient) {
        self.set_sky(ambient.sky_lx as f32);
        self.set_disc(ambient.disc.map(|disc| DiscLight {
            toward: disc.toward(),
            // White, whatever it is: moonlight is sunlight off grey rock, and how red a low sun is depends on the day.
            square: Rgb::splat(disc.square_lx() as f32),
            source: self.sky_source.saturating_sub(1),
        }));
    }

    /// The disc of sun or moon, where one is up.
    pub const fn disc(&self) -> Option<DiscLight> {
        self.disc
    }

    /// Sets the disc of sun or moon. What is remembered of its light, and of that of the one before it, is asked for anew.
    pub fn set_disc(&mut self, disc: Option<DiscLight>) {
        let before = std::mem::replace(&mut self.disc, disc);
        for source in [before, disc].into_iter().flatten().map(|disc| disc.source) {
            self.ask_anew(source);
        }
    }

    /// Sets the illuminance of open level ground by the sky, lx.
    pub fn set_sky(&mut self, lx: f32) {
        self.sky_lx = sky(lx);
        self.ask_anew(self.sky_source);
    }

    /// Where an aim points.
    pub fn aim(&self, aim: &Aim) -> Option<Vec3> {
        match aim {
            Aim::At(point) => Some(point.vec3()),
            Aim::Thing(name) => self.place(&name.0).map(|place| place.middle),
        }
    }

    /// The place of a named thing.
    pub fn place(&self, name: &str) -> Option<Place> {
        self.names.number(name).map(|number| self.places[number as usize])
    }
}

fn sky(lx: f32) -> Rgb {
    lx * SKY_TINT / super::luma(SKY_TINT)
}
