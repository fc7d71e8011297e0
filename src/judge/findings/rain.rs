//! A projector that stands out in the rain without a box.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    craft::{is_outdoors, shelter},
    edit::Edit,
    geometry::Sight,
    light::Night,
    scene::{Fed, Fraction, Item, Station, limits},
};
use glam::Vec3;

/// Directions that rain may come from.
const DIRECTIONS: u16 = 48;
/// How far off straight up the wind slants it, degrees: common practice, no source.
const SLANT_DEG: f32 = 30.0;
/// Share of those directions from which on rain and mains meet for sure: common practice, no source.
const SOAKED: f64 = 0.5;

/// Share of the directions within a cone about straight up from which nothing keeps rain off a place. Leaves and cloth drip.
fn rained_on(night: &Night, place: Vec3) -> f64 {
    let turn = std::f32::consts::PI * (3.0 - 5.0_f32.sqrt());
    let least = SLANT_DEG.to_radians().cos();
    let open = (0..DIRECTIONS).filter(|i| {
        // Alike over the cone: heights evenly, bearings by the golden angle.
        let up = 1.0 - (f32::from(*i) + 0.5) / f32::from(DIRECTIONS) * (1.0 - least);
        let (sin, cos) = (turn * f32::from(*i)).sin_cos();
        let aside = (1.0 - up * up).sqrt();
        !night.blocked(Sight::endless(place, Vec3::new(aside * cos, up, aside * sin)))
    });
    open.count() as f64 / f64::from(DIRECTIONS)
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::RAIN);
    let mut list = Vec::new();
    let out =
        |s: &&Station| s.on && s.shelter.is_none() && !case.yard.is_hidden(&s.name.0) && is_outdoors(case.yard, s);
    let mains = |station: &Station| {
        case.yard.projector(case.catalogue, &station.projector.0).is_some_and(|class| class.volts == Fed::Mains)
    };
    for station in case.yard.stations.iter().filter(out) {
        let share = rained_on(case.night, station.at.vec3());
        if share <= bound.value {
            continue;
        }
        let says = if share > 0.95 {
            format!("“{}” stands out in the rain without a weather box", station.name.0)
        } else {
            format!(
                "Slanting rain reaches “{}”, which has no weather box, from {:.0} % of where it may come",
                station.name.0,
                100.0 * share
            )
        };
        let level = if share >= SOAKED && mains(station) { Level::Fix } else { Level::Check };
        list.push(Finding::new(Matter::Rain, level, &station.name.0, None).against(share, &bound, says));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let station = case.yard.stations.iter().find(|station| station.name.0 == finding.of);
    let fitted = |station: &Station| {
        let shelter = shelter::fitting(case.yard, case.catalogue, station)?;
        let class = case.yard.projector(case.catalogue, &station.projector.0)?;
        let passes = shelter::window_loss(station, class, &shelter.window).passes;
        let box_window = Fraction(station.box_window.0.min((passes * 100.0).round() / 100.0));
        let says = format!(
            "Put “{}” into a weather box of {:.0} × {:.0} × {:.0} cm inside{}",
            station.name.0,
            100.0 * shelter.width.0.m,
            100.0 * shelter.height.0.m,
            100.0 * shelter.depth.0.m,
            if shelter.fan.is_some() { " with a fan" } else { "" }
        );
        let boxed = Station { shelter: Some(shelter), box_window, ..station.clone() };
        Some(Proposal { says, edit: Edit::Change(Item::Station(boxed)) })
    };
    station.and_then(fitted).into_iter().collect()
}
