//! A picture that lands as a trapezoid, as its projector does not face what it lights squarely and nothing is done about it.

use super::{
    Case, Finding, Level, Matter, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::extent::Plane,
    scene::{Angle, Item, Keystone, Pose, Station, limits},
    units::two_digits,
};
use glam::Vec3;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::TRAPEZOID);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        let Some(times) = far_to_near(case, index).filter(|times| *times > bound.value) else { continue };
        // Past the limit by as much again it is no rectangle to anybody.
        let level = if times > 2.0 * bound.value - 1.0 { Level::Fix } else { Level::Check };
        let says = format!(
            "“{}” lands on “{}” as a trapezoid, {} times as long on its far side",
            reading.station,
            reading.quoted_onto(),
            two_digits(times)
        );
        list.push(Finding::new(Matter::Trapezoid, level, &reading.station, None).against(times, &bound, says));
    }
    list
}

/// The longer of two opposite sides of the picture's own box over the shorter, the worse pair, where its target is flat.
fn far_to_near(case: &Case, index: usize) -> Option<f64> {
    let beam = case.beam(index)?;
    let plane = plane(case, index)?;
    let corner = |st: [f32; 2]| plane.met(beam, beam.raster_of(st)?);
    let [a, b] = [corner([0.0, 0.0])?, corner([1.0, 0.0])?];
    let [c, d] = [corner([0.0, 1.0])?, corner([1.0, 1.0])?];
    let times = |one: Vec3, other: Vec3| {
        let (one, other) = (f64::from(one.length()), f64::from(other.length()));
        one.max(other) / one.min(other).max(1e-6)
    };
    Some(times(c - a, d - b).max(times(b - a, d - c)))
}

/// The plane in which all lies that is lit of the targets; `None` where they are not flat.
fn plane(case: &Case, index: usize) -> Option<Plane> {
    let mut touches = case.landings(index).cells.iter().filter_map(|landing| landing.target);
    let first = touches.next()?;
    Some(Plane::through(&first, touches)).filter(|plane| plane.flat)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((index, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::lifted(case, station, &[1.0, -0.6]);
    list.extend(moves::sideways(case, station, &[1.0, -1.0]));
    list.extend(corrected(case, index, station).map(Attempt::from));
    list
}

/// The station with a digital keystone for the plane that it lights: of that plane's normal, away from the lens, the parts to the right,
/// upwards and along the axis are `(−sin H, −cos H sin V, cos H cos V)`.
fn corrected(case: &Case, index: usize, station: &Station) -> Option<Proposal> {
    let normal = plane(case, index)?.normal;
    let lens = case.beam(index)?.lens;
    let (right, up) = match station.pose {
        Pose::Table => (lens.right, lens.up),
        Pose::Ceiling => (-lens.right, -lens.up),
        Pose::Upright => (lens.up, -lens.right),
    };
    let away = normal * normal.dot(lens.forward).signum();
    let horizontal = f64::from((-away.dot(right)).clamp(-1.0, 1.0).asin().to_degrees()).round();
    let vertical = f64::from((-away.dot(up)).atan2(away.dot(lens.forward)).to_degrees()).round();
    let most = vertical.abs().max(horizontal.abs());
    let keystone = Keystone { vertical_deg: Angle(vertical), horizontal_deg: Angle(horizontal) };
    let parts = [(vertical, "vertical"), (horizontal, "horizontal")].into_iter().filter(|(degrees, _)| *degrees != 0.0);
    let parts: Vec<String> = parts.map(|(degrees, name)| format!("{degrees}° {name}")).collect();
    let says = format!("Set the keystone of “{}” to {}", station.name.0, parts.join(" and "));
    let edit = Edit::Change(Item::Station(Station { keystone, ..station.clone() }));
    (most > 0.0 && most <= Keystone::MOST_DEG).then_some(Proposal { says, edit })
}
