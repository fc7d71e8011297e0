//! What hands can do to a station, as proposals: nearer, farther, higher, another projector; within what its mount allows.

use super::{Case, remedy::Proposal};
use crate::{
    edit::Edit,
    scene::{Aim, Item, Mount, Point, ProjectorClass, Ref, Station},
    units::Length,
};
use glam::Vec3;

/// Heights of the lens that a mount can hold, m above the ground: common practice, no source. A bracket, a beam or a branch is
/// where it is.
fn heights(mount: Mount, now: f64) -> (f64, f64) {
    match mount {
        Mount::Ground => (0.05, 0.7),
        Mount::Stand => (0.4, 2.6),
        Mount::Shelf | Mount::Wall | Mount::Hung | Mount::Tree => (now - 0.3, now + 0.3),
    }
}

/// The station with its lens moved, m, what it is aimed at staying; `None` where its mount cannot hold it there.
pub(super) fn moved(station: &Station, by: [f64; 3]) -> Option<Edit> {
    let at =
        [0, 1, 2].map(|axis| station.at.0[axis].changed(((station.at.0[axis].m + by[axis]) * 100.0).round() / 100.0));
    let (low, high) = heights(station.mount, station.at.0[1].m);
    let held = by[1] == 0.0 || (low..=high).contains(&at[1].m);
    held.then(|| Edit::Change(Item::Station(Station { at: Point(at), ..station.clone() })))
}

/// A length in the yard's notation.
pub(super) fn length(case: &Case, m: f64) -> String {
    Length::metres((m * 100.0).round() / 100.0).show(case.yard.units.style())
}

/// Nearer to what it lights, or farther, by some steps; the least first.
pub(super) fn along(case: &Case, station: &Station, steps: &[f64]) -> Vec<Proposal> {
    let Some(aim) = case.night.aim(&station.aim) else { return Vec::new() };
    let way = (aim - station.at.vec3()).with_y(0.0);
    let (far, way) = (f64::from(way.length()), way.normalize_or_zero());
    let proposal = |step: &f64| {
        let by = (f64::from(way.x) * step, f64::from(way.z) * step);
        let edit = moved(station, [by.0, 0.0, by.1]).filter(|_| far - step > 0.3)?;
        let word = if *step > 0.0 { "nearer to what it lights" } else { "farther from it" };
        Some(Proposal { says: format!("Set {} {} {word}", station.name.0, length(case, step.abs())), edit })
    };
    steps.iter().filter_map(proposal).collect()
}

/// Another projector class of the catalogue, the dimmest that gives at least `times` the light first.
pub(super) fn brighter(case: &Case, station: &Station, times: f64) -> Vec<Proposal> {
    let now = case.yard.projector(case.catalogue, &station.projector.0).map_or(0.0, |class| class.lumens.typical);
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.lumens.typical >= now * times.max(1.05)).collect();
    classes.sort_by(|a, b| a.lumens.typical.total_cmp(&b.lumens.typical));
    classes.iter().take(3).map(|class| of_class(station, class)).collect()
}

/// Another projector class of the catalogue that gives at most `times` the light, the brightest first.
pub(super) fn dimmer(case: &Case, station: &Station, times: f64) -> Vec<Proposal> {
    let now = case.yard.projector(case.catalogue, &station.projector.0).map_or(0.0, |class| class.lumens.typical);
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.lumens.typical <= now * times.min(0.95)).collect();
    classes.sort_by(|a, b| b.lumens.typical.total_cmp(&a.lumens.typical));
    classes.iter().take(3).map(|class| of_class(station, class)).collect()
}

fn of_class(station: &Station, class: &ProjectorClass) -> Proposal {
    Proposal {
        says: format!("Use a {} in {}, about {:.0} lm", class.name.0, station.name.0, class.lumens.typical),
        edit: with_class(station, class),
    }
}

/// Aimed at a point beside where it is aimed now, m.
pub(super) fn aimed_off(case: &Case, station: &Station, by: [f64; 3]) -> Option<Edit> {
    let aim = case.night.aim(&station.aim)?.as_dvec3().to_array();
    let [x, y, z] = [0, 1, 2].map(|axis| ((aim[axis] + by[axis]) * 100.0).round() / 100.0);
    Some(Edit::Change(Item::Station(Station { aim: Aim::At(Point::metres(x, y, z)), ..station.clone() })))
}

/// To the side as the projector looks, the left negative, m, what it is aimed at staying.
pub(super) fn sideways(case: &Case, station: &Station, steps: &[f64]) -> Vec<Proposal> {
    let Some(aim) = case.night.aim(&station.aim) else { return Vec::new() };
    let right = (aim - station.at.vec3()).cross(Vec3::Y).normalize_or_zero();
    let proposal = |step: &f64| {
        let edit = moved(station, [f64::from(right.x) * step, 0.0, f64::from(right.z) * step])?;
        let word = if *step > 0.0 { "to the right" } else { "to the left" };
        let says = format!("Set {} {} {word} as it looks", station.name.0, length(case, step.abs()));
        Some(Proposal { says, edit })
    };
    steps.iter().filter_map(proposal).collect()
}

/// Higher or lower, m, what it is aimed at staying.
pub(super) fn lifted(case: &Case, station: &Station, steps: &[f64]) -> Vec<Proposal> {
    let proposal = |step: &f64| {
        let word = if *step > 0.0 { "higher" } else { "lower" };
        let says = format!("Set {} {} {word}", station.name.0, length(case, step.abs()));
        Some(Proposal { says, edit: moved(station, [0.0, *step, 0.0])? })
    };
    steps.iter().filter_map(proposal).collect()
}

/// Aimed lower, m at what it is aimed at.
pub(super) fn aimed_lower(case: &Case, station: &Station, steps: &[f64]) -> Vec<Proposal> {
    let proposal = |step: &f64| {
        let says = format!("Aim {} {} lower", station.name.0, length(case, *step));
        Some(Proposal { says, edit: aimed_off(case, station, [0.0, -step, 0.0])? })
    };
    steps.iter().filter_map(proposal).collect()
}

/// Lower, higher or aside, what it is aimed at staying; the least first.
pub(super) fn round(case: &Case, station: &Station) -> Vec<Proposal> {
    let mut list = lifted(case, station, &[-0.3, 0.3]);
    list.extend(sideways(case, station, &[-0.5, 0.5, -1.0, 1.0]));
    list.extend(lifted(case, station, &[0.8]));
    list
}

/// Another projector class of the catalogue, the one nearest in lumens first; `better` says which are worth a try.
pub(super) fn other_class(
    case: &Case,
    station: &Station,
    better: impl Fn(&ProjectorClass, &ProjectorClass) -> bool,
) -> Vec<Proposal> {
    let Some(now) = case.yard.projector(case.catalogue, &station.projector.0) else { return Vec::new() };
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.name.0 != now.name.0 && better(class, now)).collect();
    let off = |class: &ProjectorClass| (class.lumens.typical / now.lumens.typical).ln().abs();
    classes.sort_by(|a, b| off(a).total_cmp(&off(b)));
    classes.iter().take(3).map(|class| of_class(station, class)).collect()
}

/// The station with a projector of another class, what was said of the old one forgotten.
fn with_class(station: &Station, class: &ProjectorClass) -> Edit {
    Edit::Change(Item::Station(Station {
        projector: Ref::to(&class.name.0),
        lumens: None,
        throw_ratio: None,
        shift: None,
        gamma: None,
        ..station.clone()
    }))
}
