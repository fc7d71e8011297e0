//! What hands can do to a station: nearer, farther, higher, lower, aside, aimed elsewhere, all in steps of a hand's breadth and
//! within what its mount allows; or another projector.

use super::{
    Case,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    scene::{Aim, Item, Mount, Point, ProjectorClass, Ref, Station, Targets},
    units::Length,
};
use glam::DVec3;

/// The least that a station is moved by, m: 5 cm, or 2 in where a yard is measured in feet.
const STEP_M: [f64; 2] = [0.05, 0.0508];

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
    placed(station, by).map(|station| Edit::Change(Item::Station(station)))
}

fn placed(station: &Station, by: [f64; 3]) -> Option<Station> {
    let at = [0, 1, 2].map(|axis| station.at.0[axis].changed(station.at.0[axis].m + by[axis]));
    let (low, high) = heights(station.mount, station.at.0[1].m);
    let held = by[1] == 0.0 || (low - 1e-6..=high + 1e-6).contains(&at[1].m);
    held.then(|| Station { at: Point(at), ..station.clone() })
}

/// A length in the yard's notation.
pub(super) fn length(case: &Case, m: f64) -> String {
    let feet = case.yard.units.style().is_feet();
    let m = if feet { m } else { (m * 100.0).round() / 100.0 };
    Length::metres(m).show(case.yard.units.style())
}

/// How far a step goes in a yard, m.
pub(super) fn step(case: &Case) -> f64 {
    STEP_M[usize::from(case.yard.units.style().is_feet())]
}

/// One of the ways that a station or its aim can go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// The lens along the ground towards what it is aimed at.
    Nearer,
    /// The lens upwards.
    Higher,
    /// The lens to its right along the ground.
    Right,
    /// The aim upwards.
    AimHigher,
    /// The aim to the right as the lens looks.
    AimRight,
}

/// How far a station and its aim go, in steps of [`step`]: each way as in [`Way`], backwards where negative.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Shift(pub [i32; 5]);

impl Shift {
    /// So many steps one way.
    pub fn one(way: Way, steps: i32) -> Self {
        Self::default().with(way, steps)
    }

    /// The same with so many steps one way.
    pub fn with(mut self, way: Way, steps: i32) -> Self {
        self.0[way as usize] = steps;
        self
    }

    /// All its steps, whichever way.
    pub fn trouble(self) -> i32 {
        self.0.iter().map(|steps| steps.abs()).sum()
    }

    /// The station so moved; `None` where its mount cannot hold it there, or where it would run into what it lights.
    pub fn of(self, case: &Case, station: &Station) -> Option<Proposal> {
        let step = step(case);
        let [nearer, higher, right, aim_higher, aim_right] = self.0.map(|steps| f64::from(steps) * step);
        let aim = case.night.aim(&station.aim)?.as_dvec3();
        let way = (aim - station.at.vec3().as_dvec3()).with_y(0.0);
        let ahead = way.normalize_or_zero();
        let across = ahead.cross(DVec3::Y);
        if (nearer != 0.0 || right != 0.0) && ahead == DVec3::ZERO || nearer > 0.0 && way.length() - nearer < 0.3 {
            return None;
        }
        let by = nearer * ahead + right * across;
        let mut moved = placed(station, [by.x, higher, by.z])?;
        if aim_higher != 0.0 || aim_right != 0.0 {
            moved = aimed(case, &moved, aim + aim_higher * DVec3::Y + aim_right * across);
        }
        Some(Proposal { says: self.says(case, station), edit: Edit::Change(Item::Station(moved)) })
    }

    fn says(self, case: &Case, station: &Station) -> String {
        let words = [
            ["nearer to what it lights", "farther from it"],
            ["higher", "lower"],
            ["to the right as it looks", "to the left as it looks"],
            ["higher", "lower"],
            ["to the right", "to the left"],
        ];
        let told = |way: usize| {
            let steps = self.0[way];
            let far = length(case, f64::from(steps.abs()) * step(case));
            (steps != 0).then(|| format!("{far} {}", words[way][usize::from(steps < 0)]))
        };
        let list = |ways: std::ops::Range<usize>| ways.filter_map(told).collect::<Vec<_>>().join(" and ");
        let (set, aim, name) = (list(0..3), list(3..5), &station.name.0);
        let mut says = match (set.is_empty(), aim.is_empty()) {
            (false, true) => format!("Set “{name}” {set}"),
            (true, _) => format!("Aim “{name}” {aim}"),
            (false, false) => format!("Set “{name}” {set}, and aim it {aim}"),
        };
        // What else was done to it before it was moved is told as well.
        if let Some(was) = case.yard.stations.iter().find(|was| was.name == station.name) {
            says += if was.keystone == station.keystone { "" } else { ", and switch its keystone off" };
            says += if was.focus == station.focus { "" } else { ", and focus it on what it lights" };
        }
        says
    }
}

/// A station moved one way, by as little as it takes.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Slide {
    /// The station.
    pub station: Station,
    /// Which way.
    pub way: Way,
    /// Backwards on that way.
    pub back: bool,
    /// The most steps.
    pub most: i32,
}

impl Slide {
    /// So many steps on its way.
    pub fn shift(&self, steps: i32) -> Shift {
        Shift::one(self.way, if self.back { -steps } else { steps })
    }
}

/// Slides one way and the other, as far as the farthest of these lengths of either sign, m.
fn slides(case: &Case, station: &Station, way: Way, reach: &[f64]) -> Vec<Attempt> {
    let mut list: Vec<Slide> = Vec::new();
    for by in reach {
        let (back, most) = (*by < 0.0, (by.abs() / step(case) + 1e-6) as i32);
        match list.iter_mut().find(|slide| slide.back == back) {
            Some(slide) => slide.most = slide.most.max(most),
            None => list.push(Slide { station: station.clone(), way, back, most }),
        }
    }
    list.into_iter().map(Attempt::Slide).collect()
}

/// Nearer to what it lights, or farther where negative, as far as that, m.
pub(super) fn along(case: &Case, station: &Station, reach: &[f64]) -> Vec<Attempt> {
    slides(case, station, Way::Nearer, reach)
}

/// To the right as the projector looks, to the left where negative, as far as that, m, what it is aimed at staying.
pub(super) fn sideways(case: &Case, station: &Station, reach: &[f64]) -> Vec<Attempt> {
    slides(case, station, Way::Right, reach)
}

/// Higher, or lower where negative, as far as that, m, what it is aimed at staying.
pub(super) fn lifted(case: &Case, station: &Station, reach: &[f64]) -> Vec<Attempt> {
    slides(case, station, Way::Higher, reach)
}

/// Aimed higher, or lower where negative, as far as that, m at what it is aimed at.
pub(super) fn aimed_higher(case: &Case, station: &Station, reach: &[f64]) -> Vec<Attempt> {
    slides(case, station, Way::AimHigher, reach)
}

/// Aimed to the right, or to the left where negative, as far as that, m at what it is aimed at.
pub(super) fn aimed_right(case: &Case, station: &Station, reach: &[f64]) -> Vec<Attempt> {
    slides(case, station, Way::AimRight, reach)
}

/// Lower, higher or aside, what it is aimed at staying; what is least trouble first.
pub(super) fn round(case: &Case, station: &Station) -> Vec<Attempt> {
    let mut list = lifted(case, station, &[-0.8, 0.8]);
    list.extend(sideways(case, station, &[-1.0, 1.0]));
    list
}

/// Another projector class of the catalogue, the dimmest that gives at least `times` the light first.
pub(super) fn brighter(case: &Case, station: &Station, times: f64) -> Vec<Attempt> {
    let now = case.yard.projector(case.catalogue, &station.projector.0).map_or(0.0, |class| class.lumens.typical);
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.lumens.typical >= now * times.max(1.05)).collect();
    classes.sort_by(|a, b| a.lumens.typical.total_cmp(&b.lumens.typical));
    classes.iter().take(3).map(|class| of_class(station, class).into()).collect()
}

/// Another projector class of the catalogue that gives at most `times` the light, the brightest first.
pub(super) fn dimmer(case: &Case, station: &Station, times: f64) -> Vec<Attempt> {
    let now = case.yard.projector(case.catalogue, &station.projector.0).map_or(0.0, |class| class.lumens.typical);
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.lumens.typical <= now * times.min(0.95)).collect();
    classes.sort_by(|a, b| b.lumens.typical.total_cmp(&a.lumens.typical));
    classes.iter().take(3).map(|class| of_class(station, class).into()).collect()
}

fn of_class(station: &Station, class: &ProjectorClass) -> Proposal {
    Proposal {
        says: format!("Use a {} in “{}”, about {:.0} lm", class.name.0, station.name.0, class.lumens.typical),
        edit: Edit::Change(Item::Station(station.with_projector(class))),
    }
}

/// Aimed at a point beside where it is aimed now, m.
pub(super) fn aimed_off(case: &Case, station: &Station, by: [f64; 3]) -> Option<Edit> {
    let aim = case.night.aim(&station.aim)?.as_dvec3();
    Some(Edit::Change(Item::Station(aimed(case, station, aim + DVec3::from_array(by)))))
}

/// Aimed at a point, to the millimetre; what it lights stays what it is meant to light.
fn aimed(case: &Case, station: &Station, at: DVec3) -> Station {
    let [x, y, z] = at.to_array().map(|m| (m * 1000.0).round() / 1000.0);
    let target = match station.lit() {
        [] => Targets(case.targets_of(&station.name.0).iter().map(|name| Ref::to(name)).collect()),
        lit => Targets(lit.to_vec()),
    };
    Station { aim: Aim::At(Point::metres(x, y, z)), target, ..station.clone() }
}

/// Another projector class of the catalogue, the one nearest in lumens first; `better` says which are worth a try.
pub(super) fn other_class(
    case: &Case,
    station: &Station,
    better: impl Fn(&ProjectorClass, &ProjectorClass) -> bool,
) -> Vec<Attempt> {
    let Some(now) = case.yard.projector(case.catalogue, &station.projector.0) else { return Vec::new() };
    let own = case.yard.all_projectors(case.catalogue);
    let mut classes: Vec<_> = own.filter(|class| class.name.0 != now.name.0 && better(class, now)).collect();
    let off = |class: &ProjectorClass| (class.lumens.typical / now.lumens.typical).ln().abs();
    classes.sort_by(|a, b| off(a).total_cmp(&off(b)));
    classes.iter().take(3).map(|class| of_class(station, class).into()).collect()
}
