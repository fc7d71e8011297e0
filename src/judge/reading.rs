//! The readings of a station.

use super::{
    Banded, Beyond, Extent, Fate, Landings, OnTarget, PhoneCheck, SpotReading, Touch,
    band::Scale,
    beyond::{beyond, whole},
    extent::{self, Plane},
    fate::fate,
    glint::thrown_back,
    landing::leave,
    landings::Part,
    mean,
    obstruction::{self, Obstruction},
    on_target::{self, sum},
    phone,
    piece::{Piece, pieces},
    pitch::pitch,
    sight::{Around, By, Limits, Sighting},
    slack::{Slack, slack},
    spot,
};
use crate::{
    geometry::{Sight as Ray, crossing},
    light::{Beam, Lost, Night, VeilSort, lumens},
    scene::{Catalogue, Spot, Station, Yard},
    units::border,
};
use glam::Vec3;
use rayon::prelude::*;
use serde::Serialize;
use std::{borrow::Cow, sync::Arc};

/// What a station gives.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StationReading {
    /// Name of the station.
    pub station: String,
    /// Whether it is on; a station that is off has no further readings.
    pub on: bool,
    /// Whether its picture could not be had: all that follows is of the test card that stands in for it.
    pub picture_missing: bool,
    /// What it is meant to light; of several things the first.
    pub target: String,
    /// Real lumens that leave its box.
    pub lumens: Banded,
    /// From the lens to where the middle of the picture lands, m, by way of any mirrors; where that misses, to the lit place next to
    /// it; `None` where nothing lands.
    #[serde(serialize_with = "border::lengths")]
    pub throw_m: Option<f64>,
    /// The same along the lens axis, m: a picture square to that is this wide over the throw ratio. `None` where nothing lands.
    #[serde(serialize_with = "border::lengths")]
    pub depth_m: Option<f64>,
    /// Where the picture's corners land, as the raster names them: left upper, right upper, left lower, right lower.
    #[serde(serialize_with = "border::lengths")]
    pub corners: [Option<[f64; 3]>; 4],
    /// The whole picture on the plane that it lands on: that of its targets where they are flat, else one square to the lens axis.
    pub picture: Extent,
    /// The part of the picture that lands on its targets.
    pub lit: Extent,
    /// The figure on its targets.
    pub figure: Extent,
    /// The middle of the figure on its targets, m; `None` where nothing of it lands there.
    #[serde(serialize_with = "border::lengths")]
    pub figure_at: Option<[f64; 3]>,
    /// How far the aim may stray.
    pub slack: Option<Slack>,
    /// Mean on the target: white by this station alone, lumens that land over the area where they land, lx.
    pub mean_on_target_lx: Banded,
    /// What a phone on the target reads in a white picture by this station alone, lx.
    pub phone_check: PhoneCheck,
    /// Mean illuminance of the targets over the area of the figure by everything, lx.
    pub figure_lx: Banded,
    /// Native pixels to the metre where the middle of the picture lands, along the way in which they are coarser.
    #[serde(serialize_with = "border::light")]
    pub pixels_per_m: f64,
    /// The same where they are coarsest.
    #[serde(serialize_with = "border::light")]
    pub least_pixels_per_m: f64,
    /// What a digital keystone takes of the raster; `None` without one.
    pub keystone: Option<Lost>,
    /// Share of the raster's light that misses its targets.
    #[serde(serialize_with = "border::light")]
    pub misses: f64,
    /// Share of the figure's light that misses its targets.
    #[serde(serialize_with = "border::light")]
    pub figure_misses: f64,
    /// Share of what reaches the targets that passes straight through.
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
    /// From each viewing spot, the figure on all targets together.
    pub spots: Vec<SpotReading>,
    /// What each of its targets gets.
    pub targets: Vec<OnTarget>,
}

impl StationReading {
    /// Whether a thing is among its targets.
    pub fn lights(&self, name: &str) -> bool {
        self.targets.iter().any(|one| one.target == name)
    }

    /// Its targets as one: `left gourd and right gourd`.
    pub fn onto(&self) -> String {
        self.joined(" and ")
    }

    /// The same to stand between quotes: `left gourd” and “right gourd`.
    pub fn quoted_onto(&self) -> String {
        self.joined("” and “")
    }

    fn joined(&self, between: &str) -> String {
        let names: Vec<&str> = self.targets.iter().map(|one| one.target.as_str()).collect();
        names.join(between)
    }
}

/// Readings of every station.
pub fn read_all(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<StationReading> {
    let around = Around::each(night, &yard.spots);
    let here = Here { night, yard, catalogue, around: &around };
    (0..yard.stations.len()).into_par_iter().filter_map(|index| read(here, index)).collect()
}

/// How far a station is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Depth {
    /// Not at all.
    Nothing,
    /// Where its raster lands, and its names.
    Landed,
    /// And what the spots see of its targets together, and of each where any of several is see-through.
    Seen,
    /// And what is measured of its white picture: all that any finding asks.
    Measured,
    /// And what the spots see of each target and what each gets, how far the aim may stray, and what a phone reads.
    Whole,
    /// And the lux of everything on its figure, by which nothing is judged and for which every point asks the whole sky.
    Lit,
}

/// A station's reading, and what it was read from; nothing of one that is off.
pub(super) struct Judged {
    pub reading: StationReading,
    /// Where its raster lands.
    pub landings: Arc<Landings>,
    /// What each spot sees: of all its targets together first, then, where there are several, of each.
    seen: Vec<Vec<Seen>>,
}

/// What a spot sees, and what stands before that.
struct Seen {
    sighting: Sighting,
    way: Obstruction,
}

/// Follows a station's raster to these targets, or knows where it lands.
pub(super) type Follow<'a> = &'a (dyn Fn(&Beam, &[u32]) -> Arc<Landings> + Sync);

/// Where stations are read: a night, its yard, and what is bright around each of that yard's spots.
#[derive(Clone, Copy)]
pub(super) struct Here<'a> {
    pub night: &'a Night,
    pub yard: &'a Yard,
    pub catalogue: &'a Catalogue,
    pub around: &'a [Around],
}

/// Names of what a station is meant to light; none of one that is off.
pub(super) fn targets(night: &Night, yard: &Yard, index: usize) -> Vec<String> {
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32);
    let targets = beam.map_or_else(Vec::new, |beam| targets_of(night, &yard.stations[index], beam));
    targets.iter().map(|owner| night.names[*owner as usize].clone()).collect()
}

/// What a station is meant to light: its targets, else the thing aimed at, else what the middle of its picture meets.
pub(super) fn targets_of(night: &Night, station: &Station, beam: &Beam) -> Vec<u32> {
    // A window whose film is lit stands for that film.
    let place = |name: &crate::scene::Ref| night.place(&name.0).map(|place| place.owner);
    let named = station.lit().iter().filter_map(place).map(|owner| film_in(night, owner).unwrap_or(owner));
    let mut targets: Vec<u32> = named.collect();
    if targets.is_empty() {
        let Some((from, along)) = leave(night, beam, beam.bent([0.5, 0.5])) else { return targets };
        let touches = night.touches(Ray::endless(from, along));
        let stays = |veil: u32| night.veils[veil as usize].sort != VeilSort::Pane;
        targets.extend(touches.iter().find(|t| t.veil.is_none_or(stays)).map(|t| t.owner));
    }
    targets
}

fn film_in(night: &Night, window: u32) -> Option<u32> {
    let face = night.places[window as usize].face?;
    night
        .veils
        .iter()
        .filter(|veil| veil.sort == VeilSort::Film)
        .find(|veil| {
            let middle = night.places[veil.owner as usize].middle;
            (middle - face.middle()).length() < 0.1
        })
        .map(|veil| veil.owner)
}

/// Readings of one station; `None` for an index that the yard doesn't have.
pub fn read_station(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<StationReading> {
    let around = Around::each(night, &yard.spots);
    read(Here { night, yard, catalogue, around: &around }, index)
}

fn read(here: Here<'_>, index: usize) -> Option<StationReading> {
    let follow = |beam: &Beam, targets: &[u32]| Arc::new(Landings::of(here.night, beam, targets));
    judged(here, index, Depth::Lit, &follow).map(|judged| judged.reading)
}

/// A station's reading as far as `depth` says, and what it was read from.
pub(super) fn judged(here: Here<'_>, index: usize, depth: Depth, follow: Follow) -> Option<Judged> {
    let Here { night, yard, catalogue, .. } = here;
    let station = yard.stations.get(index)?;
    let class = yard.projector(catalogue, &station.projector.0)?;
    let own = lumens(yard, catalogue, station)?;
    let mut reading = dark(station, Banded { low: own.low, typical: own.typical, high: own.high });
    reading.picture_missing = night.lacks_picture(index);
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32);
    let Some(beam) = beam else { return Some(Judged { reading, landings: Arc::default(), seen: Vec::new() }) };
    let targets = targets_of(night, station, beam);
    let landings = follow(beam, &targets);
    reading.target = targets.first().map(|t| night.names[*t as usize].clone()).unwrap_or_default();
    reading.targets = targets.iter().map(|target| OnTarget::of(night, *target)).collect();
    reading.figure_at = on_target::middle(landings.figure_on_target());
    reading.keystone = Some(beam.lost()).filter(|lost| lost.pixels > 0.0);
    let (flux, mut seen) = (Scale::of(own.low, own.typical, own.high), Vec::new());
    if depth >= Depth::Seen {
        reading.thrown_back = thrown_back(night, index as u32, &landings);
        reading.reads_right = reads_right(yard, station, &landings, beam);
        seen = see(here, index, &lists(night, &landings, &targets, depth), reading.lumens);
    }
    if depth >= Depth::Measured {
        let white = landings.white(night, beam, &targets);
        let pieces = pieces(night, beam, &white);
        shares(&mut reading, night, &landings, &pieces);
        let middle = extent::middle(night, beam, &targets, &pieces);
        if let (Some(plane), Some(middle)) = (Plane::of(beam, &pieces), middle) {
            [reading.throw_m, reading.depth_m] = extent::throw(beam, &middle).map(Some);
            reading.picture = extent::picture(beam, &plane, &pieces);
            reading.lit = extent::on_target(beam, &plane, pieces.iter());
            reading.figure = extent::figure(beam, &plane, landings.figure_on_target());
            reading.corners = extent::corners(beam, &plane).map(|at| at.map(|p| p.as_dvec3().to_array()));
            [reading.pixels_per_m, reading.least_pixels_per_m] = pitch(beam, class.pixels, &plane, &middle, &pieces);
        }
        reading.mean_on_target_lx = mean::white(beam, pieces.iter(), flux);
        reading.fate = fate(night, yard, &landings);
        reading.beyond = beyond(night, beam, &targets, &white);
        if depth >= Depth::Whole {
            reading.targets = on_target::each(night, beam, &targets, (&landings, &pieces), flux);
            reading.slack = slack(night, beam, &targets, &landings);
            let new = station.lumens.unwrap_or(class.lumens).typical;
            reading.phone_check = phone::check(night, beam, &targets, flux, new);
        }
        if depth >= Depth::Lit {
            reading.figure_lx = mean::over_figure(night, beam, (&landings, &pieces), flux);
        }
    }
    tell(&mut reading, here, &seen);
    Some(Judged { reading, landings, seen })
}

/// A station's reading where the light of some other stations is another, all else as it was: only that is looked for anew, of each of
/// several targets where `depth` is whole.
pub(super) fn again(here: Here<'_>, index: usize, depth: Depth, known: &Judged, changed: &[u32]) -> Judged {
    let Here { night, yard, catalogue, around } = here;
    let (mut reading, landings) = (known.reading.clone(), Arc::clone(&known.landings));
    let targets = targets(night, yard, index);
    let targets: Vec<u32> = targets.iter().filter_map(|name| night.place(name)).map(|place| place.owner).collect();
    let limits = Limits::of(yard, catalogue);
    let lists = lists(night, &landings, &targets, depth);
    let of_list = |(list, seen): (&Cow<'_, Landings>, &Vec<Seen>)| {
        let look = |(seen, around): (&Seen, &Around)| {
            let by = By { night, station: index as u32, landings: list, around, limits: &limits };
            Seen { sighting: seen.sighting.with_stations(by, changed), way: seen.way.clone() }
        };
        seen.iter().zip(around).map(look).collect()
    };
    let seen: Vec<Vec<Seen>> = lists.iter().zip(&known.seen).map(of_list).collect();
    tell(&mut reading, here, &seen);
    Judged { reading, landings, seen }
}

/// What lands on all targets together, and where there are several, on each: of what is see-through findings ask that.
fn lists<'a>(night: &Night, landings: &'a Landings, targets: &[u32], depth: Depth) -> Vec<Cow<'a, Landings>> {
    let is_through = |target: &u32| night.veils.iter().any(|veil| veil.owner == *target);
    let apart = targets.len() > 1 && (depth >= Depth::Whole || targets.iter().any(is_through));
    let each = targets.iter().filter(|_| apart).map(|target| Cow::Owned(landings.only(*target)));
    std::iter::once(Cow::Borrowed(landings)).chain(each).collect()
}

/// What the spots see of each of some lists of a station's landings.
fn see(here: Here<'_>, index: usize, lists: &[Cow<'_, Landings>], own: Banded) -> Vec<Vec<Seen>> {
    let (night, limits) = (here.night, Limits::of(here.yard, here.catalogue));
    let flux = Scale::of(own.low, own.typical, own.high);
    let of_list = |landings: &Cow<'_, Landings>| {
        let seen = look(here, landings, flux, &limits, index as u32).into_iter().zip(&here.yard.spots);
        let way = |spot: &Spot| obstruction::between(night, landings, spot::eye(spot));
        seen.map(|(sighting, spot)| Seen { sighting, way: way(spot) }).collect()
    };
    lists.iter().map(of_list).collect()
}

/// Puts what the spots see into a reading.
fn tell(reading: &mut StationReading, here: Here<'_>, seen: &[Vec<Seen>]) {
    let limits = Limits::of(here.yard, here.catalogue);
    let told = |list: &Vec<Seen>| -> Vec<SpotReading> {
        let at = |(spot, seen): (&Spot, &Seen)| spot::read(spot, &seen.sighting, seen.way.clone(), &limits);
        here.yard.spots.iter().zip(list).map(at).collect()
    };
    let mut told = seen.iter().map(told);
    reading.spots = told.next().unwrap_or_default();
    reading.targets.iter_mut().for_each(|one| one.spots = Vec::new());
    if let [one] = reading.targets.as_mut_slice() {
        one.spots = reading.spots.clone();
    }
    for (one, spots) in reading.targets.iter_mut().zip(told) {
        one.spots = spots;
    }
}

/// The readings of a station that is off.
fn dark(station: &Station, lumens: Banded) -> StationReading {
    StationReading {
        station: station.name.0.clone(),
        on: station.on,
        picture_missing: false,
        target: String::new(),
        lumens,
        throw_m: None,
        depth_m: None,
        corners: [None; 4],
        picture: Extent::default(),
        lit: Extent::default(),
        figure: Extent::default(),
        figure_at: None,
        slack: None,
        mean_on_target_lx: Banded::default(),
        phone_check: PhoneCheck::default(),
        figure_lx: Banded::default(),
        pixels_per_m: 0.0,
        least_pixels_per_m: 0.0,
        keystone: None,
        misses: 0.0,
        figure_misses: 0.0,
        passes: 0.0,
        fate: None,
        beyond: Vec::new(),
        thrown_back: Vec::new(),
        reads_right: true,
        spots: Vec::new(),
        targets: Vec::new(),
    }
}

/// What of a station's light misses its targets, and what of the rest passes through them.
fn shares(reading: &mut StationReading, night: &Night, landings: &Landings, pieces: &[Piece]) {
    let white = whole(landings);
    let figure = sum(landings.figure.iter().map(Part::lumens));
    let on_target = sum(landings.figure_on_target().map(Part::lumens));
    let hits = sum(pieces.iter().map(|piece| f64::from(piece.white)));
    // A sum that comes to nothing may come to a hair less.
    let rest = |hits: f64, all: f64| if all > 0.0 { 1.0 - hits / all } else { 0.0 };
    let tidy = |share: f64| if share < 1e-6 { 0.0 } else { share };
    reading.misses = tidy(rest(hits, white));
    reading.figure_misses = tidy(rest(on_target, figure));
    let reached = sum(pieces.iter().map(Piece::lands));
    let passed = sum(pieces.iter().map(|piece| piece.lands() * f64::from(piece.touch.passes(night))));
    reading.passes = passed / reached.max(1e-12);
}

/// What every viewing spot of the yard sees of a station, by source: for an evening, see [`Sighting::under`]. `None` for an
/// index that the yard doesn't have; of a station that is off nothing is seen.
pub fn sightings(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<Vec<Sighting>> {
    let station = yard.stations.get(index)?;
    let own = lumens(yard, catalogue, station)?;
    let Some(landings) = landings(night, yard, index) else { return Some(Vec::new()) };
    let flux = Scale::of(own.low, own.typical, own.high);
    let around = Around::each(night, &yard.spots);
    let here = Here { night, yard, catalogue, around: &around };
    Some(look(here, &landings, flux, &Limits::of(yard, catalogue), index as u32))
}

/// Where the raster of a station that is on lands.
pub(super) fn landings(night: &Night, yard: &Yard, index: usize) -> Option<Landings> {
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32)?;
    Some(Landings::of(night, beam, &targets_of(night, yard.stations.get(index)?, beam)))
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

fn look(here: Here<'_>, landings: &Landings, flux: Scale, limits: &Limits, station: u32) -> Vec<Sighting> {
    let Here { night, yard, around, .. } = here;
    let cloth = response_scale(night, landings);
    let at = |(spot, around): (&Spot, &Around)| {
        let by = By { night, station, landings, around, limits };
        Sighting::by(by, spot, flux.and(cloth(spot::eye(spot))))
    };
    yard.spots.iter().zip(around).map(at).collect()
}

/// What is not known of the targets' own answers, by where the eye stands: the band of the fabric with all its layers on that
/// side, or the doubt of a surface's reflectance; of several targets the outer ends.
fn response_scale(night: &Night, landings: &Landings) -> impl Fn(Vec3) -> Scale {
    let mut firsts: Vec<Touch> = Vec::new();
    for touch in landings.cells.iter().filter_map(|landing| landing.target) {
        if !firsts.iter().any(|first| first.owner == touch.owner) {
            firsts.push(touch);
        }
    }
    let answers: Vec<(Touch, [Scale; 2])> =
        firsts.into_iter().map(|touch| (touch, answer_scale(night, &touch))).collect();
    move |eye| {
        let seen = answers.iter().map(
            |(touch, [lit, far])| {
                if (eye - touch.point).dot(touch.normal) <= 0.0 { *far } else { *lit }
            },
        );
        let wider = |a: Scale, b: Scale| Scale { low: a.low.min(b.low), high: a.high.max(b.high) };
        seen.reduce(wider).unwrap_or(Scale::SURE)
    }
}

/// The same of one target, on its lit side and on the far one.
fn answer_scale(night: &Night, touch: &Touch) -> [Scale; 2] {
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
}

/// Whether a picture reads the right way round from the spots: an odd number of mirrors, or a look from behind, turns it.
pub(super) fn reads_right(yard: &Yard, station: &Station, landings: &Landings, beam: &Beam) -> bool {
    let Some(touch) = landings.cells.iter().find_map(|l| l.target) else { return true };
    let behind = yard.spots.iter().filter(|s| (spot::eye(s) - touch.point).dot(touch.normal) < 0.0).count();
    let from_behind = touch.veil.is_some() && 2 * behind > yard.spots.len();
    let mirrored = beam.relays.len() % 2 == 1;
    // Where nobody watches, nothing is the wrong way round.
    yard.spots.is_empty() || !(from_behind ^ mirrored ^ station.content.mirrored)
}
