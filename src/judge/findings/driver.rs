//! A lens blinds who drives past.

use super::{
    Case, Finding, Level, Matter, dazzle, moves, people,
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::Edit,
    light::{Beam, eye as laws},
    scene::{Spot, Station, limits},
};
use glam::Vec3;

/// How far apart a driver is looked at along the way, m.
const APART_M: f32 = 1.0;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::DRIVER);
    let road = case.limit_around([limits::ROAD_COUNTRY, limits::ROAD_SUBURB, limits::ROAD_TOWN]).value;
    let driving = |spot: &&Spot| spot.drives && !case.yard.is_hidden(&spot.name.0);
    let mut list = Vec::new();
    for (index, station, beams) in people::shining(case) {
        let [low, high] = people::doubt(case, index);
        for spot in case.yard.spots.iter().filter(driving) {
            let Some((veil, beside)) = worst_veil(case, &beams, spot) else { continue };
            // The threshold increment of road lighting, %: CIE 31, EN 13201-3; from memory.
            let more = 65.0 * veil / road.powf(0.8);
            if more * high <= bound.value {
                continue;
            }
            let level = if more > bound.value { Level::Fix } else { Level::Check };
            let (of, from) = (&station.name.0, &spot.name.0);
            let says = format!(
                "The lens of “{of}” blinds drivers at “{from}”, {beside:.0}° beside their way: they need {more:.0} % more contrast"
            );
            let finding = Finding::new(Matter::Driver, level, of, Some(from));
            list.push(finding.against(more, &bound, says).unsure(more * low <= bound.value));
        }
    }
    list
}

/// The greatest veil that a lens draws over a driver's road, cd/m², and how far beside the way it stands there, degrees. Who drives
/// nowhere in particular looks where the spot looks.
fn worst_veil(case: &Case, beams: &[&Beam], spot: &Spot) -> Option<(f64, f64)> {
    let places = people::way(spot, APART_M);
    let goal = if places.len() > 1 { places.last().copied() } else { case.night.aim(&spot.look) }?;
    let ahead = (goal - spot.at.vec3()).with_y(0.0).try_normalize()?;
    let eyes = places.iter().map(|feet| *feet + spot.eye.f32() * Vec3::Y);
    let seen = eyes.flat_map(|eye| beams.iter().filter_map(move |beam| people::glimpse(case.night, beam, eye)));
    let veils = seen.filter(|seen| seen.lx > 0.0).map(|seen| {
        let degrees = f64::from(seen.toward.dot(ahead).clamp(-1.0, 1.0).acos().to_degrees());
        let veil = laws::driving_veil(degrees, f64::from(spot.age.0)) * seen.lx * degrees.to_radians().cos().max(0.0);
        (veil, degrees)
    });
    veils.filter(|(veil, _)| *veil > 0.0).max_by(|a, b| a.0.total_cmp(&b.0))
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    let mut list = moves::aimed_higher(case, station, &[-0.6]);
    list.extend(other_side(case, station).map(Attempt::from));
    list.extend(dazzle::out_of_the_beam(case, station));
    list
}

/// To the other side of what it lights: across its face where that is flat, else straight through.
fn other_side(case: &Case, station: &Station) -> Option<Proposal> {
    let aim = case.night.aim(&station.aim)?;
    let off = (aim - station.at.vec3()).with_y(0.0);
    let place = station.target.0.first().and_then(|target| case.night.place(&target.0));
    let across = place.and_then(|place| place.face).map_or(off, |face| {
        let normal = face.normal().with_y(0.0).normalize_or_zero();
        off - off.dot(normal) * normal
    });
    if across.length() < 0.3 {
        return None;
    }
    let by = 2.0 * across.as_dvec3();
    let edit: Edit = moves::moved(station, [by.x, 0.0, by.z])?;
    Some(Proposal { says: format!("Set “{}” on the other side of what it lights", station.name.0), edit })
}
