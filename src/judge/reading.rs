//! The readings of a station.

use super::{
    Banded, Beyond, Extent, Fate, Landing, SpotReading,
    band::Scale,
    beyond::beyond,
    extent::{corner_point, extent, throw},
    fate::fate,
    glint::thrown_back,
    landing::{follow, leave},
    sight::{self, By, Limits, Sighting},
    slack::{Slack, slack},
    spot,
};
use crate::{
    geometry::{Sight as Ray, crossing},
    light::{Beam, Night, luma, lumens},
    scene::{Catalogue, Station, Yard},
    units::border,
};
use glam::Vec3;
use rayon::prelude::*;
use serde::Serialize;

/// What a station gives.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StationReading {
    /// Name of the station.
    pub station: String,
    /// Whether it is on; a station that is off has no further readings.
    pub on: bool,
    /// What it is meant to light.
    pub target: String,
    /// Real lumens that leave its box.
    pub lumens: Banded,
    /// From the lens to the target, along the lens axis, m; by way of any mirrors.
    #[serde(serialize_with = "border::lengths")]
    pub throw_m: f64,
    /// Where the picture's corners land, as the raster names them: left upper, right upper, left lower, right lower.
    #[serde(serialize_with = "border::lengths")]
    pub corners: [Option<[f64; 3]>; 4],
    /// The lit picture on the target.
    pub picture: Extent,
    /// The figure on the target.
    pub figure: Extent,
    /// The middle of the figure on the target, m; `None` where nothing of it lands there.
    #[serde(serialize_with = "border::lengths")]
    pub figure_at: Option<[f64; 3]>,
    /// How far the aim may stray.
    pub slack: Option<Slack>,
    /// Mean illuminance of the target by this station when it throws white, lx.
    pub white_lx: Banded,
    /// Mean illuminance of the target over the figure by everything, lx.
    pub figure_lx: Banded,
    /// Native pixels over a metre of the target.
    #[serde(serialize_with = "border::light")]
    pub pixels_per_m: f64,
    /// Share of the raster's light that misses the target.
    #[serde(serialize_with = "border::light")]
    pub misses: f64,
    /// Share of the figure's light that misses the target.
    #[serde(serialize_with = "border::light")]
    pub figure_misses: f64,
    /// Share of what reaches the target that passes straight through.
    #[serde(serialize_with = "border::light")]
    pub passes: f64,
    /// What becomes of the light that meets the target.
    pub fate: Option<Fate>,
    /// What the rest lands on, largest share first.
    pub beyond: Vec<Beyond>,
    /// What the light lands on that the first glass on its way throws back, largest share first.
    pub thrown_back: Vec<Beyond>,
    /// Whether the picture reads the right way round from where most spots stand.
    pub reads_right: bool,
    /// From each viewing spot.
    pub spots: Vec<SpotReading>,
}

/// Readings of every station.
pub fn read_all(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<StationReading> {
    all_followed(night, yard, catalogue).into_iter().map(|(reading, _)| reading).collect()
}

/// What a station is meant to light: its target, else the thing aimed at, else what the middle of its picture meets.
pub(super) fn target_of(night: &Night, station: &Station, beam: &Beam) -> Option<u32> {
    // A window whose film is lit stands for that film.
    if let Some(place) = station.lit().and_then(|name| night.place(&name.0)) {
        return Some(film_in(night, place.owner).unwrap_or(place.owner));
    }
    let (from, along) = leave(night, beam, [0.5, 0.5])?;
    let touches = night.touches(Ray::endless(from, along));
    touches
        .iter()
        .find(|t| t.veil.is_none_or(|v| night.veils[v as usize].sort != crate::light::VeilSort::Pane))
        .map(|t| t.owner)
}

fn film_in(night: &Night, window: u32) -> Option<u32> {
    let face = night.places[window as usize].face?;
    night
        .veils
        .iter()
        .filter(|veil| veil.sort == crate::light::VeilSort::Film)
        .find(|veil| {
            let middle = night.places[veil.owner as usize].middle;
            (middle - face.middle()).length() < 0.1
        })
        .map(|veil| veil.owner)
}

/// Readings of one station; `None` for an index that the yard doesn't have.
pub fn read_station(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<StationReading> {
    followed(night, yard, catalogue, index).map(|(reading, _)| reading)
}

/// Readings of every station, in their order, each with where its raster lands; nothing of one that is off.
pub(super) fn all_followed(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<(StationReading, Vec<Landing>)> {
    let stations = (0..yard.stations.len()).into_par_iter();
    stations.filter_map(|index| followed(night, yard, catalogue, index)).collect()
}

fn followed(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<(StationReading, Vec<Landing>)> {
    let station = yard.stations.get(index)?;
    let class = yard.projector(catalogue, &station.projector.0)?;
    let own = lumens(yard, catalogue, station)?;
    let mut reading = StationReading {
        station: station.name.0.clone(),
        on: station.on,
        target: String::new(),
        lumens: Banded { low: own.low, typical: own.typical, high: own.high },
        throw_m: 0.0,
        corners: [None; 4],
        picture: Extent::default(),
        figure: Extent::default(),
        figure_at: None,
        slack: None,
        white_lx: Banded::default(),
        figure_lx: Banded::default(),
        pixels_per_m: 0.0,
        misses: 0.0,
        figure_misses: 0.0,
        passes: 0.0,
        fate: None,
        beyond: Vec::new(),
        thrown_back: Vec::new(),
        reads_right: true,
        spots: Vec::new(),
    };
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32);
    let Some(beam) = beam else { return Some((reading, Vec::new())) };
    let target = target_of(night, station, beam);
    let landings = follow(night, beam, target);
    reading.target = target.map(|t| night.names[t as usize].clone()).unwrap_or_default();
    let landed = || landings.iter().filter(|l| l.target.is_some());
    let share = |pick: &dyn Fn(&Landing) -> bool, weight: &dyn Fn(&Landing) -> f32| -> f64 {
        landings.iter().filter(|l| pick(l)).map(|l| f64::from(weight(l))).sum()
    };
    let white = share(&|_| true, &|l| l.white);
    let figure = share(&|l| l.figure, &|l| l.white * l.content);
    reading.misses = (share(&|l| l.target.is_none(), &|l| l.white) / white.max(1e-12)).max(0.0);
    reading.figure_misses = share(&|l| l.figure && l.target.is_none(), &|l| l.white * l.content) / figure.max(1e-12);
    // A sum that comes to nothing may come to a hair less.
    reading.figure_misses = reading.figure_misses.max(0.0);
    let reached = white * (1.0 - reading.misses);
    reading.passes =
        share(&|l| l.target.is_some(), &|l| l.white * l.target.map_or(0.0, |t| t.through)) / reached.max(1e-12);
    reading.throw_m = throw(beam, &landings);
    reading.picture = extent(landed().filter_map(|l| l.target.map(|t| t.point)), beam, &landings);
    reading.figure = extent(landed().filter(|l| l.figure).filter_map(|l| l.target.map(|t| t.point)), beam, &landings);
    reading.figure_at = middle(landed().filter(|l| l.figure).filter_map(|l| l.target.map(|t| t.point)));
    reading.slack = slack(night, beam, target, &landings);
    if reading.throw_m > 0.0 {
        reading.pixels_per_m = f64::from(class.pixels.0) / f64::from(beam.lens.w1) / reading.throw_m;
    }
    for (corner, uv) in [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].into_iter().enumerate() {
        reading.corners[corner] = corner_point(night, beam, uv, &landings).map(|p| p.as_dvec3().to_array());
    }
    let flux = Scale::of(own.low, own.typical, own.high);
    (reading.white_lx, reading.figure_lx) = illuminance(night, index as u32, beam, &landings, flux);
    reading.fate = fate(night, yard, &landings);
    reading.beyond = beyond(night, beam, &landings);
    reading.thrown_back = thrown_back(night, index as u32, &landings);
    reading.reads_right = reads_right(yard, station, &landings, beam);
    let limits = Limits::of(yard, catalogue);
    let seen = look(night, yard, &landings, flux, &limits, index as u32);
    reading.spots = yard.spots.iter().zip(&seen).map(|(spot, sighting)| spot::read(spot, sighting, &limits)).collect();
    Some((reading, landings))
}

/// The middle of the box around points, m.
fn middle(points: impl Iterator<Item = Vec3>) -> Option<[f64; 3]> {
    let grown =
        |span: Option<(Vec3, Vec3)>, p: Vec3| Some(span.map_or((p, p), |(low, high)| (low.min(p), high.max(p))));
    points.fold(None, grown).map(|(low, high)| (0.5 * (low + high)).as_dvec3().to_array())
}

/// What every viewing spot of the yard sees of a station, by source: for an evening, see [`Sighting::under`]. `None` for an
/// index that the yard doesn't have; of a station that is off nothing is seen.
pub fn sightings(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<Vec<Sighting>> {
    let station = yard.stations.get(index)?;
    let own = lumens(yard, catalogue, station)?;
    let Some(landings) = landings(night, yard, index) else { return Some(Vec::new()) };
    let flux = Scale::of(own.low, own.typical, own.high);
    Some(look(night, yard, &landings, flux, &Limits::of(yard, catalogue), index as u32))
}

/// Where the raster of a station that is on lands.
fn landings(night: &Night, yard: &Yard, index: usize) -> Option<Vec<Landing>> {
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32)?;
    Some(follow(night, beam, target_of(night, yard.stations.get(index)?, beam)))
}

/// What one viewing spot sees of a station, by source; `None` for an index that the yard doesn't have, and for a station that
/// is off.
pub fn sighting(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize, spot: usize) -> Option<Sighting> {
    let (station, spot) = (yard.stations.get(index)?, yard.spots.get(spot)?);
    let own = lumens(yard, catalogue, station)?;
    let landings = landings(night, yard, index)?;
    let scale = Scale::of(own.low, own.typical, own.high).and(response_scale(night, &landings)(spot::eye(spot)));
    Some(Sighting::of(night, index as u32, &landings, spot, scale, &Limits::of(yard, catalogue)))
}

fn look(night: &Night, yard: &Yard, landings: &[Landing], flux: Scale, limits: &Limits, station: u32) -> Vec<Sighting> {
    let cloth = response_scale(night, landings);
    let neighbours = sight::neighbours(night, station);
    let by = By { night, station, landings, neighbours: &neighbours, limits };
    yard.spots.iter().map(|spot| Sighting::by(by, spot, flux.and(cloth(spot::eye(spot))))).collect()
}

/// Mean illuminance of the target: by the station in white, and over the figure by everything as it is.
fn illuminance(night: &Night, station: u32, beam: &Beam, landings: &[Landing], flux: Scale) -> (Banded, Banded) {
    let landed: Vec<&Landing> = landings.iter().filter(|l| l.target.is_some()).collect();
    let mut white = 0.0;
    for touch in landed.iter().filter_map(|l| l.target) {
        if let Some((square, toward)) = beam.white(touch.point) {
            let left = luma(beam.transmittance(night, touch.point, touch.normal));
            white += f64::from(square * touch.normal.dot(toward).max(0.0) * left);
        }
    }
    // Every point of the figure asks for the whole sky: two hundred of them are enough for a mean.
    let figure: Vec<_> = landed.iter().filter(|l| l.figure).filter_map(|l| l.target).collect();
    let step = figure.len().div_ceil(200).max(1);
    let taken: Vec<_> = figure.iter().step_by(step).collect();
    let sums: Vec<(f64, f64)> = taken
        .par_iter()
        .map(|touch| {
            let shares = night.illuminance(touch.point, touch.normal);
            (f64::from(luma(shares.lx[station as usize])), f64::from(luma(shares.total())))
        })
        .collect();
    let (own, all) = sums.iter().fold((0.0, 0.0), |sum, v| (sum.0 + v.0, sum.1 + v.1));
    let (n, counted) = (taken.len().max(1) as f64, landed.len().max(1) as f64);
    (Banded::of(white / counted, 0.0, flux), Banded::of(own / n, (all - own) / n, flux))
}

/// What is not known of the target's own answer, by where the eye stands: the band of the fabric with all its layers on that
/// side, or the doubt of a surface's reflectance.
fn response_scale(night: &Night, landings: &[Landing]) -> impl Fn(Vec3) -> Scale {
    let touch = landings.iter().find_map(|l| l.target);
    let [lit, far] = touch.map_or([Scale::SURE; 2], |touch| {
        let Some(veil) = touch.veil else {
            let doubt = f64::from(touch.doubt);
            return [Scale { low: 1.0 - doubt, high: 1.0 + doubt }; 2];
        };
        let veil = &night.veils[veil as usize];
        let front = crossing::outline_normal(&veil.outline, touch.point).dot(touch.normal) > 0.0;
        night.optics[veil.optic as usize].answers[usize::from(!front)].map(|band| {
            let [low, typical, high] = band.map(f64::from);
            Scale::of(low, typical, high)
        })
    });
    move |eye| match touch {
        Some(touch) if (eye - touch.point).dot(touch.normal) <= 0.0 => far,
        _ => lit,
    }
}

/// Whether a picture reads the right way round from the spots: an odd number of mirrors, or a look from behind, turns it.
pub(super) fn reads_right(yard: &Yard, station: &Station, landings: &[Landing], beam: &Beam) -> bool {
    let Some(touch) = landings.iter().find_map(|l| l.target) else { return true };
    let behind = yard.spots.iter().filter(|s| (spot::eye(s) - touch.point).dot(touch.normal) < 0.0).count();
    let from_behind = touch.veil.is_some() && 2 * behind > yard.spots.len();
    let mirrored = beam.relays.len() % 2 == 1;
    // Where nobody watches, nothing is the wrong way round.
    yard.spots.is_empty() || !(from_behind ^ mirrored ^ station.content.mirrored)
}
