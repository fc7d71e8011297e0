//! The readings of a station.

use super::{
    Banded, Landing, SpotReading,
    band::Scale,
    landing::{follow, leave},
    spot,
};
use crate::{
    geometry::{Sight, crossing},
    light::{Beam, Night, luma, lumens},
    scene::{Aim, Catalogue, Station, Yard},
};
use glam::Vec3;
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;

/// A size on the target and the heights it spans above the ground, m.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Extent {
    /// Across.
    pub width_m: f64,
    /// Along the target upwards.
    pub height_m: f64,
    /// Lowest point above the ground.
    pub bottom_m: f64,
    /// Highest point above the ground.
    pub top_m: f64,
}

/// Light that does not stay on the target: what it lands on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Beyond {
    /// Name of the thing; "sky" for light that leaves the yard.
    pub thing: String,
    /// Share of the whole raster's light, when it is white, that arrives there.
    pub share: f64,
    /// Greatest illuminance by this station there, lx.
    pub peak_lx: f64,
    /// Greatest luminance by this station there, cd/m², where it is opaque and matt.
    pub peak_luminance: f64,
}

/// What becomes of the light that meets the target, at the middle of the picture; the four make 1.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fate {
    /// Thrown back, toward the projector's side.
    pub back: f64,
    /// Scattered out of the far side.
    pub onward: f64,
    /// Straight through.
    pub through: f64,
    /// Lost in the cloth.
    pub lost: f64,
    /// For each viewing spot whether it sees the side that the projector lights.
    pub seen_from_lit_side: Vec<bool>,
}

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
    pub throw_m: f64,
    /// Where the picture's corners land, as the raster names them: left upper, right upper, left lower, right lower.
    pub corners: [Option<[f64; 3]>; 4],
    /// The lit picture on the target.
    pub picture: Extent,
    /// The figure on the target.
    pub figure: Extent,
    /// Mean illuminance of the target by this station when it throws white, lx.
    pub white_lx: Banded,
    /// Mean illuminance of the target over the figure by everything, lx.
    pub figure_lx: Banded,
    /// Native pixels over a metre of the target.
    pub pixels_per_m: f64,
    /// Share of the raster's light that misses the target.
    pub misses: f64,
    /// Share of the figure's light that misses the target.
    pub figure_misses: f64,
    /// Share of what reaches the target that passes straight through.
    pub passes: f64,
    /// What becomes of the light that meets the target.
    pub fate: Option<Fate>,
    /// What the rest lands on, largest share first.
    pub beyond: Vec<Beyond>,
    /// Whether the picture reads the right way round from where most spots stand.
    pub reads_right: bool,
    /// From each viewing spot.
    pub spots: Vec<SpotReading>,
}

/// Readings of every station.
pub fn read_all(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<StationReading> {
    (0..yard.stations.len()).filter_map(|i| read_station(night, yard, catalogue, i)).collect()
}

/// What a station is meant to light: its target, else the thing aimed at, else what the middle of its picture meets.
fn target_of(night: &Night, station: &Station, beam: &Beam) -> Option<u32> {
    let named = station.target.as_ref().or(match &station.aim {
        Aim::Thing(name) => Some(name),
        Aim::At(_) => None,
    });
    // A window whose film is lit stands for that film.
    if let Some(place) = named.and_then(|name| night.place(&name.0)) {
        return Some(film_in(night, place.owner).unwrap_or(place.owner));
    }
    let (from, along) = leave(night, beam, [0.5, 0.5])?;
    let touches = night.touches(Sight::endless(from, along));
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
        white_lx: Banded::default(),
        figure_lx: Banded::default(),
        pixels_per_m: 0.0,
        misses: 0.0,
        figure_misses: 0.0,
        passes: 0.0,
        fate: None,
        beyond: Vec::new(),
        reads_right: true,
        spots: Vec::new(),
    };
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32);
    let Some(beam) = beam else { return Some(reading) };
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
    reading.pixels_per_m = f64::from(class.pixels.0) / f64::from(beam.lens.w1) / reading.throw_m.max(1e-6);
    for (corner, uv) in [[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]].into_iter().enumerate() {
        reading.corners[corner] = corner_point(night, beam, uv, &landings).map(|p| p.as_dvec3().to_array());
    }
    let flux = Scale::of(own.low, own.typical, own.high);
    (reading.white_lx, reading.figure_lx) = illuminance(night, index as u32, beam, &landings, flux);
    reading.fate = fate(night, yard, &landings);
    reading.beyond = beyond(night, beam, &landings);
    let cloth = response_scale(night, &landings);
    reading.reads_right = reads_right(yard, station, &landings, beam);
    reading.spots = yard
        .spots
        .iter()
        .map(|spot| spot::look(night, index as u32, &landings, spot, flux.and(cloth(spot::eye(spot)))))
        .collect();
    Some(reading)
}

/// Mean distance from the lens along the light to the target, by way of the mirrors.
fn throw(beam: &Beam, landings: &[Landing]) -> f64 {
    // A mirrored lens is as far from what it lights as the light has come.
    let middle = landings
        .iter()
        .filter_map(|l| l.target.map(|t| ((l.uv[0] - 0.5).powi(2) + (l.uv[1] - 0.5).powi(2), t.point)))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    middle.map_or(0.0, |(_, point)| f64::from((point - beam.lens.at).dot(beam.lens.forward)))
}

/// Extent of points on the target: across and along it, and the heights they span; half a raster step is added at each
/// edge, as points stand in the middle of their cells.
fn extent(points: impl Iterator<Item = Vec3>, beam: &Beam, landings: &[Landing]) -> Extent {
    let points: Vec<Vec3> = points.collect();
    let Some(first) = points.first() else { return Extent::default() };
    let normal = landings.iter().find_map(|l| l.target).map_or(Vec3::Z, |t| t.normal);
    let across = normal.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
    let along = across.cross(normal);
    let span = |axis: Vec3| {
        let (low, high) =
            points.iter().map(|p| p.dot(axis)).fold((f32::MAX, f32::MIN), |(a, b), v| (a.min(v), b.max(v)));
        f64::from(high - low)
    };
    let depth = (*first - beam.lens.at).dot(beam.lens.forward);
    // A cell of the raster as it lies on the target.
    let (wide, tall) = (beam.lens.w1 * depth / super::RASTER.0 as f32, beam.lens.h1 * depth / super::RASTER.1 as f32);
    let cell = |axis: Vec3| f64::from(wide * beam.lens.right.dot(axis).abs() + tall * beam.lens.up.dot(axis).abs());
    let (low, high) = points.iter().map(|p| p.y).fold((f32::MAX, f32::MIN), |(a, b), v| (a.min(v), b.max(v)));
    Extent {
        width_m: span(across) + cell(across),
        height_m: span(along) + cell(along),
        bottom_m: f64::from(low) - 0.5 * cell(Vec3::Y),
        top_m: f64::from(high) + 0.5 * cell(Vec3::Y),
    }
}

/// Where a corner of the raster would land on the plane of the target.
fn corner_point(night: &Night, beam: &Beam, uv: [f32; 2], landings: &[Landing]) -> Option<Vec3> {
    let touch = landings.iter().filter_map(|l| l.target).min_by(|a, b| {
        let off = |t: &super::Touch| (t.along - beam.lens.forward).length_squared();
        off(a).total_cmp(&off(b))
    })?;
    let (from, along) = leave(night, beam, uv).or_else(|| Some((beam.lens.at, beam.lens.direction(uv[0], uv[1]))))?;
    let steep = along.dot(touch.normal);
    let t = (touch.point - from).dot(touch.normal) / steep;
    (steep < 0.0 && t > 0.0 && t < 1e3).then(|| from + t * along)
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

fn fate(night: &Night, yard: &Yard, landings: &[Landing]) -> Option<Fate> {
    let middle = |l: &&Landing| (l.uv[0] - 0.5).powi(2) + (l.uv[1] - 0.5).powi(2);
    let landed = landings.iter().filter(|l| l.target.is_some());
    let touch = landed.min_by(|a, b| middle(a).total_cmp(&middle(b)))?.target?;
    let (back, onward) = match touch.veil {
        None => (touch.reflectance, crate::light::Rgb::ZERO),
        Some(veil) => {
            let veil = &night.veils[veil as usize];
            let front = crossing::outline_normal(&veil.outline, touch.point).dot(touch.along) < 0.0;
            let face = &night.optics[veil.optic as usize].sheet.faces[usize::from(!front)];
            let cos = touch.normal.dot(touch.along).abs();
            (face.reflect.sample(cos), face.diffuse.sample(cos))
        }
    };
    let (back, onward, through) = (f64::from(luma(back)), f64::from(luma(onward)), f64::from(touch.through));
    let lit = |s: &crate::scene::Spot| (spot::eye(s) - touch.point).dot(touch.normal) > 0.0;
    let seen_from_lit_side = yard.spots.iter().map(lit).collect();
    Some(Fate { back, onward, through, lost: (1.0 - back - onward - through).max(0.0), seen_from_lit_side })
}

/// What light that does not stay on the target lands on.
fn beyond(night: &Night, beam: &Beam, landings: &[Landing]) -> Vec<Beyond> {
    let mut things: BTreeMap<String, Beyond> = BTreeMap::new();
    let white: f64 = landings.iter().map(|l| f64::from(l.white)).sum();
    for landing in landings {
        if landing.target.is_some_and(|t| t.through == 0.0) {
            continue;
        }
        let name = landing.beyond.map_or("sky".to_owned(), |t| night.names[t.owner as usize].clone());
        let entry =
            things.entry(name.clone()).or_insert(Beyond { thing: name, share: 0.0, peak_lx: 0.0, peak_luminance: 0.0 });
        entry.share += f64::from(landing.white) * f64::from(landing.left) / white.max(1e-12);
        let Some(touch) = landing.beyond else { continue };
        if let Some((square, toward)) = beam.square(touch.point, 0.0) {
            let cos = touch.normal.dot(toward).max(0.0);
            let lx = f64::from(luma(square) * cos * landing.left);
            entry.peak_lx = entry.peak_lx.max(lx);
            entry.peak_luminance =
                entry.peak_luminance.max(lx * f64::from(luma(touch.reflectance)) / std::f64::consts::PI);
        }
    }
    let mut list: Vec<Beyond> = things.into_values().filter(|b| b.share > 1e-4).collect();
    list.sort_by(|a, b| b.share.total_cmp(&a.share));
    list
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
fn reads_right(yard: &Yard, station: &Station, landings: &[Landing], beam: &Beam) -> bool {
    let Some(touch) = landings.iter().find_map(|l| l.target) else { return true };
    let behind = yard.spots.iter().filter(|s| (spot::eye(s) - touch.point).dot(touch.normal) < 0.0).count();
    let from_behind = touch.veil.is_some() && 2 * behind > yard.spots.len();
    let mirrored = beam.relays.len() % 2 == 1;
    !(from_behind ^ mirrored ^ station.content.mirrored)
}
