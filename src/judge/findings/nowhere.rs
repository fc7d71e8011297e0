//! A station none of whose light lands on what it is meant to light: it misses a mirror, ends on something before, or goes past.

use super::{
    Case, Finding, Level, Matter, moves, people,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    judge::leave,
    light::Beam,
    scene::{Aim, Angle, FoldMirror, Item, Ref, Station, limits},
};
use glam::Vec3;
use std::collections::BTreeMap;

/// Rays across and down by which a mirror is looked for.
const RAYS: [u16; 2] = [24, 14];

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::FIGURE_MISSES);
    let mut list = Vec::new();
    for (index, station, beams) in people::shining(case) {
        if !is_lost(case, index) {
            continue;
        }
        let (of, targets) = (&station.name.0, case.targets_of(&station.name.0));
        let onto =
            if targets.is_empty() { String::new() } else { format!(" of “{}”", targets.join("” and “")) };
        let (why, does) = match (missed(case, &beams), ends_on(case, index)) {
            (Some(mirror), _) => (
                format!("its picture misses the mirror “{mirror}”"),
                format!("Turn “{mirror}” so that it faces halfway between lens and target"),
            ),
            (None, Some(thing)) => {
                (format!("most of it ends on “{thing}”"), "Aim it at its target, and keep the way clear".to_owned())
            }
            (None, None) => ("it leaves the yard".to_owned(), Matter::Nowhere.advice().to_owned()),
        };
        let says = format!("The light of “{of}” reaches nothing{onto}: {why}");
        list.push(Finding::new(Matter::Nowhere, Level::Fix, of, None).against(1.0, &bound, says).doing(does));
    }
    list
}

/// Whether a station that was followed lights nothing that it is meant to light.
pub(super) fn is_lost(case: &Case, station: usize) -> bool {
    let cells = &case.landings(station).cells;
    !cells.is_empty() && cells.iter().all(|landing| landing.target.is_none())
}

/// The first of its mirrors that its picture misses altogether.
fn missed<'a>(case: &Case<'a>, beams: &[&Beam]) -> Option<&'a str> {
    let [columns, rows] = RAYS.map(f32::from);
    let places = |i: u16| [f32::from(i % RAYS[0]) + 0.5, f32::from(i / RAYS[0]) + 0.5];
    let met = |beam: &&Beam| {
        (0..RAYS[0] * RAYS[1]).map(places).any(|[x, y]| leave(case.night, beam, [x / columns, y / rows]).is_some())
    };
    let last = beams.iter().find(|beam| !met(beam))?.relays.first()?;
    case.night.names.get(case.night.veils[last.veil as usize].owner as usize).map(String::as_str)
}

/// What most of its light meets instead.
fn ends_on<'a>(case: &Case<'a>, station: usize) -> Option<&'a str> {
    let mut by_thing: BTreeMap<u32, f32> = BTreeMap::new();
    for landing in &case.landings(station).cells {
        if let Some(touch) = landing.beyond {
            *by_thing.entry(touch.owner).or_default() += landing.white * landing.left;
        }
    }
    let (owner, share) = by_thing.into_iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    (share > 0.0).then(|| case.night.names[owner as usize].as_str())
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, beams)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    if let Some(mirror) = missed(case, &beams) {
        return turned(case, station, mirror).map(Attempt::Once).into_iter().collect();
    }
    let mut list = Vec::new();
    if let Some(target) = case.targets_of(&station.name.0).first().filter(|_| station.mirrors.is_empty()) {
        let aim = Aim::Thing(Ref::to(target));
        if station.aim != aim {
            let edit = Edit::Change(Item::Station(Station { aim, ..station.clone() }));
            list.push(Attempt::Once(Proposal {
                says: format!("Aim “{}” at “{target}”", station.name.0), edit
            }));
        }
    }
    list.extend(moves::round(case, station));
    list.extend(moves::along(case, station, &[1.5]));
    list
}

/// The only mirror of a station turned so that it throws the middle of the picture onto what is aimed at.
fn turned(case: &Case, station: &Station, name: &str) -> Option<Proposal> {
    let mirror = case.yard.mirrors.iter().find(|mirror| mirror.name.0 == name)?;
    if station.mirrors.len() != 1 {
        return None;
    }
    let at = mirror.at.vec3();
    let toward = |to: Vec3| (to - at).try_normalize();
    let normal = (toward(station.at.vec3())? + toward(case.night.aim(&station.aim)?)?).try_normalize()?;
    let tenth = |rad: f32| (f64::from(rad).to_degrees() * 10.0).round() / 10.0;
    let (turn, tilt) = (tenth(normal.x.atan2(normal.z)), tenth(-normal.y.asin()));
    let changed = FoldMirror { turn_deg: Angle(turn), tilt_deg: Angle(tilt), ..mirror.clone() };
    let says = format!("Turn the mirror “{name}” to {turn}°, and tilt it {tilt}°");
    Some(Proposal { says, edit: Edit::Change(Item::Mirror(changed)) })
}
