//! The figure is out of focus.

use super::{
    Case, Finding, Level, Matter, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::{Landings, Part},
    light::Beam,
    scene::{Item, Station, limits},
    units::{Length, two_digits},
};

/// The finest that an eye sees by day, rad: a minute of arc.
const FINEST: f64 = std::f64::consts::PI / 180.0 / 60.0;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::BLUR);
    let mut list = Vec::new();
    for (index, station, reading) in case.lit() {
        let (Some(beam), Some(class)) = (case.beam(index), case.yard.projector(case.catalogue, &station.projector.0))
        else {
            continue;
        };
        let columns = f64::from(class.pixels.0);
        let Some((blur, depth)) = worst(beam, case.landings(index)) else { continue };
        let pixel = f64::from(beam.lens.w1) * depth / columns;
        let nearest = case.seen_from(reading).map(|(_, _, distance)| distance).min_by(f64::total_cmp);
        // What nobody stands near enough to see does no harm.
        if blur / pixel <= bound.value || nearest.is_some_and(|distance| blur / distance < FINEST) {
            continue;
        }
        let level = if blur / pixel > 3.0 * bound.value { Level::Fix } else { Level::Check };
        let pixels = two_digits(blur / pixel);
        let says = if depth < class.nearest.0.m {
            let (depth, least) = (moves::length(case, depth), moves::length(case, class.nearest.0.m));
            let projector = &station.projector.0;
            format!(
                "“{}” is blurred by {pixels} of its pixels: “{}” is {depth} away, and a “{projector}” is sharp from {least} on",
                reading.station,
                reading.quoted_onto()
            )
        } else {
            let sharp = moves::length(case, f64::from(beam.focus));
            format!(
                "“{}” is blurred by up to {pixels} of its pixels on “{}”: it is sharp at {sharp}, and part of that is at {}",
                reading.station,
                reading.quoted_onto(),
                moves::length(case, depth)
            )
        };
        let finding = Finding::new(Matter::Blur, level, &reading.station, None);
        list.push(finding.against(blur / pixel, &bound, says));
    }
    list
}

/// The nearest and farthest depth of the figure on its target, m, the outermost twentieth left out at each end.
fn depths(beam: &Beam, landings: &Landings) -> Option<[f64; 2]> {
    let depth = |part: &Part| {
        let way = part.landing.target?.point - beam.lens.at;
        Some((f64::from(way.dot(beam.lens.forward)), part.share))
    };
    let mut depths: Vec<(f64, f32)> = landings.figure.iter().filter_map(depth).collect();
    depths.sort_by(|a, b| a.0.total_cmp(&b.0));
    let edge = depths.iter().map(|(_, share)| share).sum::<f32>() / 20.0;
    Some([past(depths.iter(), edge)?, past(depths.iter().rev(), edge)?])
}

/// The first of these values past so much of what they stand for.
fn past<'a>(mut list: impl Iterator<Item = &'a (f64, f32)>, edge: f32) -> Option<f64> {
    let mut passed = 0.0;
    let inside = list.find(|(_, share)| {
        passed += share;
        passed > edge
    });
    inside.map(|(value, _)| *value)
}

/// The widest blur on a figure and the depth that it is at, m: `D |z − zf| / zf`, in pixels of `w1 z / columns` there.
fn worst(beam: &Beam, landings: &Landings) -> Option<(f64, f64)> {
    let (opening, focus) = (f64::from(beam.aperture), f64::from(beam.focus));
    let ends = depths(beam, landings)?.map(|depth| (opening * (depth - focus).abs() / focus, depth));
    ends.into_iter().max_by(|a, b| (a.0 / a.1).total_cmp(&(b.0 / b.1)))
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((index, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let Some((beam, class)) = case.beam(index).zip(case.yard.projector(case.catalogue, &station.projector.0)) else {
        return Vec::new();
    };
    let mut list = Vec::new();
    if let Some([near, far]) = depths(beam, case.landings(index)) {
        // Alike at both ends, as blur goes with the difference of 1 / depth.
        let best = (2.0 / (1.0 / near + 1.0 / far)).max(class.nearest.0.m);
        let focus = Length::metres((best * 100.0).round() / 100.0);
        list.push(Attempt::Once(Proposal {
            says: format!("Focus “{}” at {}", station.name.0, moves::length(case, best)),
            edit: Edit::Change(Item::Station(Station { focus: Some(focus), ..station.clone() })),
        }));
        if near < class.nearest.0.m {
            let refocused = Station { focus: None, ..station.clone() };
            list.extend(moves::along(case, &refocused, &[-2.0]));
        }
    }
    let finer = |a: f64, b: f64| a < b;
    list.extend(moves::other_class(case, station, |class, now| {
        finer(class.aperture.0.m, now.aperture.0.m) || finer(class.nearest.0.m, now.nearest.0.m)
    }));
    list.extend(moves::along(case, station, &[-1.0]));
    list
}
