//! What lies behind a film or a sheet shows through it.

use super::{
    Case, Finding, Level, Matter,
    rear::{self, Rear},
    remedy::Proposal,
};
use crate::{
    edit::Edit,
    geometry::Sight as Ray,
    judge::spot,
    light::{EyeRay, SKIN, Source, luma},
    scene::{Item, Lamp, Opening, Room, RoomLamp, Window, limits},
};

/// Points of the picture that are looked at.
const POINTS: usize = 60;

/// Luminance by source of what lies behind, as it comes through, cd/m²: the mean of the brightest tenth.
fn behind(case: &Case, rear: &Rear) -> Vec<f64> {
    let night = case.night;
    let landings = rear.landings(case);
    let landed: Vec<_> = landings.iter().filter(|l| l.target.is_some()).collect();
    let look = |point: glam::Vec3| {
        let along = (point - rear.eye).normalize_or_zero();
        let steep = rear.quad.normal().dot(along).abs();
        let before = night.through(Ray::between(rear.eye, point - 4.0 * SKIN * along), [u32::MAX; 2]);
        let left = luma(before * night.optics[rear.veil.optic as usize].sheet.through.sample(steep));
        let ray = EyeRay { from: point + SKIN * along, along, width: 0.0 };
        let lights = night.luminance_by_source(ray);
        lights.iter().map(|light| f64::from(left * light)).collect::<Vec<f64>>()
    };
    let points = spot::thinned(&landed, POINTS);
    let mut seen: Vec<Vec<f64>> = points.iter().filter_map(|l| l.target).map(|touch| look(touch.point)).collect();
    seen.sort_by(|a, b| b.iter().sum::<f64>().total_cmp(&a.iter().sum()));
    let brightest = &seen[..seen.len().div_ceil(10)];
    let of = |source: usize| brightest.iter().map(|lights| lights[source]).sum::<f64>() / brightest.len().max(1) as f64;
    (0..night.sources.len()).map(of).collect()
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ROOM_THROUGH);
    let finding = |rear: Rear| {
        let number = behind(case, &rear).iter().sum::<f64>() / rear.sight.mean.typical.max(f64::MIN_POSITIVE);
        let level = if number > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let (station, target, spot) = (&rear.station.name.0, &rear.reading.target, &rear.spot.name.0);
        let share = 100.0 * number;
        let says = format!(
            "What is behind “{target}” shows through from “{spot}”: up to {share:.0} % as bright as the figure of “{station}”"
        );
        let band = rear::through(case, target).filter(|band| band.typical > 0.0);
        let least = band.map_or(1.0, |band| band.low / band.typical);
        let finding = Finding::new(Matter::RoomThrough, level, station, Some(spot)).against(number, &bound, says);
        (number > bound.value).then(|| finding.unsure(number * least <= bound.value))
    };
    rear::each(case).into_iter().filter_map(finding).collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(rear) = rear::of(case, &finding.of, finding.from()) else { return Vec::new() };
    let lights = behind(case, &rear);
    let brightest = (0..lights.len()).max_by(|a, b| lights[*a].total_cmp(&lights[*b]));
    let mut list: Vec<Proposal> = brightest.and_then(|source| off(case, source as u32)).into_iter().collect();
    list.extend(rear::denser(case, &rear.reading.target));
    list
}

/// Switches off a lamp, or the lamp of the room behind a window, by its index among the night's sources.
pub(super) fn off(case: &Case, source: u32) -> Option<Proposal> {
    let name = match case.night.sources.get(source as usize)? {
        Source::Lamp(name) => {
            let lamp = case.yard.lamps.iter().find(|lamp| lamp.name.0 == *name)?;
            let edit = Edit::Change(Item::Lamp(Lamp { on: false, ..lamp.clone() }));
            return Some(Proposal { says: format!("Switch off {name} while it plays"), edit });
        }
        Source::Room { opening, .. } => opening,
        _ => return None,
    };
    let (host, window) = rear::window(case, name)?;
    let lamp = window.room.lamp.as_ref().filter(|lamp| lamp.on)?;
    let room = Room { lamp: Some(RoomLamp { on: false, ..lamp.clone() }), ..window.room.clone() };
    let edit = Edit::Change(Item::Opening(host.to_owned(), Opening::Window(Window { room, ..window.clone() })));
    Some(Proposal { says: format!("Switch off the lamp behind {name} while it plays"), edit })
}
