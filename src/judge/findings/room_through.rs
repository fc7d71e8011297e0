//! What lies behind a film or a sheet shows through it.

use super::{
    Case, Finding, Level, Matter,
    rear::{self, Rear},
    remedy::Proposal,
};
use crate::{
    edit::Edit,
    geometry::Sight as Ray,
    judge::{Touch, landing::open, spot},
    light::{EyeRay, SKIN, Source, luma},
    scene::{Item, Lamp, Opening, Room, RoomLamp, Window, limits},
};

/// Points of the picture that are looked at.
const POINTS: usize = 60;

/// Luminance by source of what lies behind, as it comes through, cd/m²: the mean of the brightest tenth.
fn behind(case: &Case, rear: &Rear) -> Vec<f64> {
    let night = case.night;
    let landings = rear.landings(case);
    let landed: Vec<_> = landings.cells.iter().filter(|l| l.target.is_some()).collect();
    let look = |point: glam::Vec3| {
        let along = (point - rear.eye).normalize_or_zero();
        let steep = rear.quad.normal().dot(along).abs();
        let before = night.through(Ray::between(rear.eye, point - 4.0 * SKIN * along), [u32::MAX; 2]);
        let left = luma(before * night.optics[rear.veil.optic as usize].sheet.through.sample(steep));
        let ray = EyeRay { from: point + SKIN * along, along, width: 0.0 };
        let lights = night.luminance_by_source(ray);
        lights.iter().map(|light| f64::from(left * light)).collect::<Vec<f64>>()
    };
    let of = |touch: Touch| (open(rear.beam, rear.eye, &touch), look(touch.point));
    let seen = spot::thinned(&landed, POINTS).into_iter().filter_map(|l| l.target).map(of).collect();
    brightest_tenth(seen, night.sources.len())
}

/// Mean by source of the brightest of these luminances, as many as make a tenth of their solid angle, with which each stands.
fn brightest_tenth(mut seen: Vec<(f64, Vec<f64>)>, sources: usize) -> Vec<f64> {
    let all = |lights: &[f64]| lights.iter().sum::<f64>();
    seen.sort_by(|a, b| all(&b.1).total_cmp(&all(&a.1)));
    let tenth = 0.1 * seen.iter().map(|(open, _)| open).sum::<f64>();
    let (mut sums, mut left) = (vec![0.0; sources], tenth);
    for (open, lights) in &seen {
        let taken = open.min(left);
        sums.iter_mut().zip(lights).for_each(|(sum, light)| *sum += taken * light);
        left -= taken;
    }
    sums.iter_mut().for_each(|sum| *sum /= tenth.max(f64::MIN_POSITIVE));
    sums
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ROOM_THROUGH);
    let finding = |rear: Rear| {
        let number = behind(case, &rear).iter().sum::<f64>() / rear.sight.mean.typical.max(f64::MIN_POSITIVE);
        let level = if number > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let (station, target, spot) = (&rear.station.name.0, rear.target, &rear.spot.name.0);
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
    list.extend(rear::denser(case, rear.target));
    list
}

/// Switches off a lamp, or the lamp of the room behind a window, by its index among the night's sources.
pub(super) fn off(case: &Case, source: u32) -> Option<Proposal> {
    let name = match case.night.sources.get(source as usize)? {
        Source::Lamp(name) => {
            let lamp = case.yard.lamps.iter().find(|lamp| lamp.name.0 == *name)?;
            let edit = Edit::Change(Item::Lamp(Lamp { on: false, ..lamp.clone() }));
            return Some(Proposal { says: format!("Switch off “{name}” while it plays"), edit });
        }
        Source::Room { opening, .. } => opening,
        _ => return None,
    };
    let (host, window) = rear::window(case, name)?;
    let lamp = window.room.lamp.as_ref().filter(|lamp| lamp.on)?;
    let room = Room { lamp: Some(RoomLamp { on: false, ..lamp.clone() }), ..window.room.clone() };
    let edit = Edit::Change(Item::Opening(host.to_owned(), Opening::Window(Window { room, ..window.clone() })));
    Some(Proposal { says: format!("Switch off the lamp behind “{name}” while it plays"), edit })
}

#[cfg(test)]
mod tests {
    use super::brightest_tenth;

    #[test]
    fn a_tenth_is_one_of_the_solid_angle() {
        // Ten small places of 5 and 1 by two sources make a hundredth, the next of 1 and 3 the rest of a tenth.
        let small = (0..10).map(|_| (0.1, vec![5.0, 1.0]));
        let seen = small.chain([(99.0, vec![1.0, 3.0])]).collect();
        let found = brightest_tenth(seen, 2);
        for (found, wanted) in found.iter().zip([0.1 * 5.0 + 0.9 * 1.0, 0.1 * 1.0 + 0.9 * 3.0]) {
            assert!((found - wanted).abs() < 1e-9, "{found} for {wanted}");
        }
        assert_eq!(brightest_tenth(Vec::new(), 2), vec![0.0; 2]);
    }
}
