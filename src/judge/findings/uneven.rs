//! The picture is uneven: a hot spot where a film shows the lens, or light that falls off towards the raster's corners.

use super::{
    Case, Finding, Level, Matter, glimpse, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::{
        Part, RASTER, Touch, eye,
        landing::{fineness, open},
        spot::thinned,
    },
    light::{Beam, luma},
    scene::{FabricKind, Item, RearFilm, Ref, limits},
    units::two_digits,
};
use glam::Vec3;

/// Points of a figure that are looked at.
const POINTS: usize = 64;
/// Straight transmittance from which more is seen than what lands on the target itself.
const SEE_THROUGH: f32 = 0.1;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::UNEVEN);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        let Some(beam) = case.beam(index) else { continue };
        let figure = case.landings(index).figure_on_target();
        let place = |part: &Part| Some((part.landing.target?, f64::from(part.share)));
        let places: Vec<(Touch, f64)> = thinned(&figure.filter_map(place).collect::<Vec<_>>(), POINTS);
        // A body is meant to have a bright side and a dark one, and through a net something else is seen as well.
        if places.iter().any(|(touch, _)| touch.normal.dot(places[0].0.normal) < 0.99 || touch.through > SEE_THROUGH) {
            continue;
        }
        let level = |times: f64| if times > 2.0 * bound.value { Level::Fix } else { Level::Check };
        let falls =
            times(places.iter().filter_map(|(at, share)| Some((arrives(beam, at)?, share * area(beam, at)))).collect());
        if let Some(times) = falls.filter(|times| *times > bound.value) {
            let says = format!(
                "“{}” lights “{}” unevenly: its brightest tenth is {} times as bright as its dimmest",
                reading.station,
                reading.quoted_onto(),
                two_digits(times)
            );
            list.push(Finding::new(Matter::Uneven, level(times), &reading.station, None).against(times, &bound, says));
            continue;
        }
        for (spot, ..) in case.seen_from(reading) {
            let of = |(touch, share): &(Touch, f64)| {
                Some((glows(case, beam, eye(spot), touch)?, share * open(beam, eye(spot), touch)))
            };
            let seen = times(places.iter().filter_map(of).collect());
            let Some(times) = seen.filter(|times| *times > bound.value) else { continue };
            let says = format!(
                "“{}” has a hot spot from “{}”: there the picture of “{}” is {} times as bright as at its dimmest",
                reading.quoted_onto(),
                spot.name.0,
                reading.station,
                two_digits(times)
            );
            let finding = Finding::new(Matter::Uneven, level(times), &reading.station, Some(&spot.name.0));
            list.push(finding.against(times, &bound, says));
        }
    }
    list
}

/// Illuminance of a place were the picture white, lx.
fn arrives(beam: &Beam, touch: &Touch) -> Option<f64> {
    let (square, toward) = beam.white(touch.point)?;
    Some(f64::from(square * touch.normal.dot(toward).max(0.0)))
}

/// Luminance of a place towards an eye were the picture white, cd/m².
fn glows(case: &Case, beam: &Beam, eye: Vec3, touch: &Touch) -> Option<f64> {
    let (ray, _) = glimpse::ray(case, beam, eye, touch)?;
    let depth = (touch.point - beam.lens.at).dot(beam.lens.forward).max(1e-3);
    let shown = luma(beam.square(touch.point, fineness(beam, depth))?.0);
    let white = beam.white(touch.point)?.0;
    let seen = luma(case.night.surfaces_of(ray, beam.station));
    (shown > 0.0).then(|| f64::from(seen * white / shown))
}

/// Area that a cell of the raster covers at a place, m².
fn area(beam: &Beam, touch: &Touch) -> f64 {
    f64::from(beam.patch(touch.point, touch.normal, RASTER.0 * RASTER.1))
}

/// Mean of the brightest tenth over that of the dimmest, of values with the size that each stands for; `None` of too few.
fn times(mut values: Vec<(f64, f64)>) -> Option<f64> {
    values.sort_by(|a, b| a.0.total_cmp(&b.0));
    let tenth = values.iter().map(|(_, size)| size).sum::<f64>() / 10.0;
    let dim = mean_of(tenth, values.iter());
    (values.len() >= 10 && dim > 0.0).then(|| mean_of(tenth, values.iter().rev()) / dim)
}

/// Mean of the first values, as many as make up a size.
fn mean_of<'a>(size: f64, values: impl Iterator<Item = &'a (f64, f64)>) -> f64 {
    let (mut left, mut sum) = (size, 0.0);
    for (value, own) in values {
        let taken = own.min(left);
        sum += value * taken;
        left -= taken;
        if left <= 0.0 {
            break;
        }
    }
    sum / size.max(f64::MIN_POSITIVE)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::along(case, station, &[-1.0]);
    if finding.places.is_empty() {
        list.extend(moves::other_class(case, station, |class, now| class.corner.typical > now.corner.typical));
    } else if let Some(film) = case.yard.films.iter().find(|film| film.name.0 == reading.target) {
        list.extend(wider(case, film).into_iter().map(Attempt::from));
    }
    list.extend(moves::round(case, station));
    list
}

/// Films that spread more, the one that spreads least of them first.
fn wider(case: &Case, film: &RearFilm) -> Vec<Proposal> {
    let half = |kind: &FabricKind| match kind {
        FabricKind::Film { half_gain_deg, .. } => Some(half_gain_deg.0),
        _ => None,
    };
    let now = case.yard.fabric(case.catalogue, &film.fabric.0).and_then(|fabric| half(&fabric.kind)).unwrap_or(90.0);
    let all = case.yard.all_fabrics(case.catalogue);
    let mut list: Vec<_> =
        all.filter_map(|fabric| Some((half(&fabric.kind)?, fabric))).filter(|(h, _)| *h > now).collect();
    list.sort_by(|a, b| a.0.total_cmp(&b.0));
    let proposal = |(_, fabric): &(f64, &crate::scene::Fabric)| Proposal {
        says: format!("Make “{}” of {}, which spreads its light wider", film.name.0, fabric.name.0),
        edit: Edit::Change(Item::Film(RearFilm { fabric: Ref::to(&fabric.name.0), ..film.clone() })),
    };
    list.iter().take(3).map(proposal).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tenths_are_tenths_of_the_area() {
        // Half of the area has 3, of the rest a part too small for a tenth has 1, the rest 2.
        let values = || (0..10).map(|i| if i < 5 { (3.0, 1.0) } else { (2.0, 1.0) });
        let all: Vec<(f64, f64)> = values().chain([(1.0, 0.5)]).collect();
        let tenth = 1.05;
        let wanted = 3.0 / ((0.5 * 1.0 + (tenth - 0.5) * 2.0) / tenth);
        assert!((times(all).unwrap() - wanted).abs() < 1e-12);
        assert_eq!(times(vec![(1.0, 1.0); 9]), None);
    }
}
