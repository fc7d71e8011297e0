//! Light that gets out beside a film: the raster's own, and that of a lamp in the room.

use super::{
    Case, Finding, Level, Matter, moves,
    rear::{self, Rear},
    remedy::{Attempt, Proposal},
    room_through::off,
};
use crate::{
    edit::Edit,
    light::{EyeRay, VeilSort},
    scene::{Item, Point, RearFilm, Size, limits},
    units::Length,
};

/// What lands so far beyond the film, m, on the side of the viewers, has left the window.
const OUT: f32 = 0.3;
/// How far round a film is looked, over its width and height, and the points each way.
const AROUND: f32 = 0.3;
const POINTS: usize = 12;

/// Share of the raster's light that goes out beside the film.
fn escapes(case: &Case, rear: &Rear) -> f64 {
    let middle = rear.quad.middle();
    let outward = rear.quad.normal() * rear.quad.normal().dot(rear.eye - middle).signum();
    // What lands on another of its targets has not gone out.
    let landings = case.landings(rear.beam.station as usize);
    let all: f64 = landings.cells.iter().map(|l| f64::from(l.white)).sum();
    let out = landings.cells.iter().filter(|l| l.target.is_none() && l.left > 0.01);
    let out = out.filter(|l| l.beyond.is_none_or(|touch| (touch.point - middle).dot(outward) > OUT));
    out.map(|l| f64::from(l.white * l.left)).sum::<f64>() / all.max(1e-12)
}

/// Luminance round the film by each lamp that hangs in a room, cd/m²: the mean of the brightest tenth.
fn round(case: &Case, rear: &Rear) -> Vec<(u32, f64)> {
    let night = case.night;
    let lamps: Vec<u32> = night.lamps.iter().filter(|lamp| lamp.behind.is_some()).map(|lamp| lamp.source).collect();
    if lamps.is_empty() {
        return Vec::new();
    }
    let at = |i: usize| -AROUND + (1.0 + 2.0 * AROUND) * (i as f32 + 0.5) / POINTS as f32;
    let beside = |i: usize| !(0.0..=1.0).contains(&at(i % POINTS)) || !(0.0..=1.0).contains(&at(i / POINTS));
    let look = |i: usize| {
        let along = (rear.quad.point(at(i % POINTS), at(i / POINTS)) - rear.eye).normalize_or_zero();
        night.luminance_by_source(EyeRay { from: rear.eye, along, width: 0.0 })
    };
    let rays: Vec<Vec<f32>> = (0..POINTS * POINTS).filter(|i| beside(*i)).map(look).collect();
    let of = |source: &u32| {
        let mut list: Vec<f32> = rays.iter().map(|lights| lights[*source as usize]).collect();
        list.sort_by(|a, b| b.total_cmp(a));
        list.truncate(list.len().div_ceil(10));
        (*source, f64::from(list.iter().sum::<f32>()) / list.len().max(1) as f64)
    };
    lamps.iter().map(of).collect()
}

fn brightest(case: &Case, rear: &Rear) -> Option<(u32, f64)> {
    round(case, rear).into_iter().max_by(|a, b| a.1.total_cmp(&b.1))
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let (escape, beside) = (case.limit(limits::LIGHT_ESCAPES), case.limit(limits::LIGHT_ROUND));
    let mut list: Vec<Finding> = Vec::new();
    for rear in rear::each(case).iter().filter(|rear| rear.veil.sort == VeilSort::Film) {
        let (station, target, spot) = (&rear.station.name.0, rear.target, &rear.spot.name.0);
        // Where the raster goes does not hang on who looks.
        if !list.iter().any(|one| one.of == *station && one.places.is_empty()) {
            let number = escapes(case, rear);
            if number > escape.value {
                let says = format!("{:.0} % of the light of “{station}” goes out beside “{target}”", 100.0 * number);
                list.push(Finding::new(Matter::Leak, Level::Fix, station, None).against(number, &escape, says));
            }
        }
        let Some((source, luminance)) = brightest(case, rear) else { continue };
        let number = luminance / rear.sight.mean.typical.max(f64::MIN_POSITIVE);
        if number > beside.value {
            let says = format!(
                "The lamp “{}” shines out beside “{target}” to “{spot}”: {:.0} % as bright as the figure of “{station}”",
                case.night.source_name(source),
                100.0 * number
            );
            let finding = Finding::new(Matter::Leak, Level::Check, station, Some(spot)).against(number, &beside, says);
            list.push(finding.doing("Switch that lamp off while it plays, or let the film reach farther".to_owned()));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some(rear) = rear::of(case, &finding.of, finding.from()) else { return Vec::new() };
    let mut list = Vec::new();
    if !finding.places.is_empty()
        && let Some((source, _)) = brightest(case, &rear)
    {
        list.extend(off(case, source).map(Attempt::from));
    }
    if let Some(film) = rear::film(case, rear.target) {
        let wider = [0.05, 0.1, 0.2, 0.35, 0.5].iter().filter_map(|by| larger(case, film, *by));
        list.extend(wider.map(Attempt::from));
    }
    list.extend(moves::along(case, rear.station, &[1.0]));
    list
}

/// A free film that reaches farther by so many metres on each side.
fn larger(case: &Case, film: &RearFilm, by: f64) -> Option<Proposal> {
    let (at, (width, height)) = (film.at.as_ref()?, film.size.as_ref()?);
    let [x, y, z] = &at.0;
    let grown = |size: &Size| Size(size.0.changed(((size.0.m + 2.0 * by) * 1000.0).round() / 1000.0));
    let up: Length = y.changed(((y.m + by) * 1000.0).round() / 1000.0);
    let film = RearFilm {
        at: Some(Point([x.clone(), up, z.clone()])),
        size: Some((grown(width), grown(height))),
        ..film.clone()
    };
    let says = format!("Let “{}” reach {} farther on every side", film.name.0, moves::length(case, by));
    Some(Proposal { says, edit: Edit::Change(Item::Film(film)) })
}
