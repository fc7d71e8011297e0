//! The lens itself shines through a cloth into somebody's eyes.

use super::{
    Case, Finding, Level, Matter, moves,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    geometry::Sight,
    judge::eye,
    light::{Beam, VeilSort, luma},
    scene::{Cloth, Content, Item, Station, limits},
    units::{lux, two_digits},
};
use glam::Vec3;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::LENS_BEHIND);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        let Some(beam) = case.beam(index) else { continue };
        for (spot, sight, _) in case.seen_from(reading) {
            let Some((cloth, lx)) = through(case, beam, eye(spot)) else { continue };
            let times = lx / sight.figure_lx.typical.max(1e-9);
            if times <= bound.value {
                continue;
            }
            let says = format!(
                "From “{}” the lens of “{}” shines through “{}”: up to {} at the eye, {} times the figure's light",
                spot.name.0,
                reading.station,
                case.night.names[cloth as usize],
                lux(lx),
                two_digits(times)
            );
            let finding = Finding::new(Matter::LensBehind, Level::Fix, &reading.station, Some(&spot.name.0));
            list.push(finding.against(times, &bound, says));
        }
    }
    list
}

/// The cloth through which a lens is seen from within its beam, and its light at the eye when the picture is white there, lx.
/// Of a lens that is mirrored nothing is said.
fn through(case: &Case, beam: &Beam, eye: Vec3) -> Option<(u32, f64)> {
    if !beam.relays.is_empty() {
        return None;
    }
    let (square, toward) = beam.white(eye)?;
    let distance = (beam.lens.at - eye).length();
    let touches = case.night.touches(Sight { reach: distance, ..Sight::endless(eye, toward) });
    let cloth = touches
        .iter()
        .filter(|touch| (touch.point - eye).length() < distance)
        .find(|touch| touch.veil.is_some_and(|veil| case.night.veils[veil as usize].sort == VeilSort::Cloth))?;
    let left = luma(case.night.way(eye, beam.lens.at, [u32::MAX; 2]));
    Some((cloth.owner, f64::from(square * left))).filter(|(_, lx)| *lx > 0.0)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, reading)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::round(case, station);
    if let Some(cloth) = case.yard.cloths.iter().find(|cloth| reading.lights(&cloth.name.0)) {
        list.extend(before(case, station, cloth).map(Attempt::from));
    }
    list
}

/// The station on the other side of its cloth, as far from it, its picture turned.
fn before(case: &Case, station: &Station, cloth: &Cloth) -> Option<Proposal> {
    let aim = case.night.aim(&station.aim)?;
    let turn = cloth.turn_deg.radians();
    let normal = Vec3::new(turn.sin(), 0.0, turn.cos());
    let by = -2.0 * (station.at.vec3() - aim).dot(normal) * normal;
    let by = [0, 1, 2].map(|axis| f64::from(by[axis]));
    let Edit::Change(Item::Station(moved)) = moves::moved(station, by)? else { return None };
    let content = Content { mirrored: !station.content.mirrored, ..station.content.clone() };
    Some(Proposal {
        says: format!("Set “{}” before “{}”, and turn its picture left for right", station.name.0, cloth.name.0),
        edit: Edit::Change(Item::Station(Station { content, ..moved })),
    })
}
