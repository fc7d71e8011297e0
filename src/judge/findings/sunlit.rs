//! The sun by day: into a lens, where it burns the little picture inside, or off a mirror into eyes and onto cloth.

use super::{Case, Finding, Level, Matter, dazzle, people, remedy::Attempt};
use crate::{
    geometry::{Outline, Quad, Sight},
    judge::spot,
    light::{
        Beam, VeilSort,
        ambient::season::{STEP_MINUTES, SunTime},
        luma,
    },
    scene::limits,
};
use glam::Vec3;

/// Farther than anything of a yard, m.
const FAR_M: f32 = 150.0;

/// What the sun does at some times.
struct Hit<'a> {
    first: &'a SunTime,
    /// Minutes on the first of the days.
    minutes: f64,
}

/// When something is so for the first time, and for how long on that day.
fn first(times: &[SunTime], mut so: impl FnMut(&SunTime) -> bool) -> Option<Hit<'_>> {
    let at = times.iter().position(&mut so)?;
    let first = &times[at];
    let rest = times[at + 1..].iter().take_while(|time| time.date == first.date).filter(|time| so(time)).count();
    Some(Hit { first, minutes: (rest + 1) as f64 * f64::from(STEP_MINUTES) })
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let mut list = into_lenses(case, case.suns());
    list.extend(off_mirrors(case, case.suns()));
    list
}

fn into_lenses(case: &Case, times: &[SunTime]) -> Vec<Finding> {
    let bound = case.limit(limits::SUN_MINUTES);
    let mut list = Vec::new();
    for (_, station, beams) in people::shining(case) {
        // As it would light the sun, so the sun shines in.
        let shines_in = |beam: &&Beam, time: &SunTime| {
            let sun = beam.lens.at + FAR_M * time.toward;
            beam.white(sun).is_some() && luma(beam.transmittance(case.night, sun, Vec3::ZERO)) > 0.02
        };
        let hit = first(times, |time| beams.iter().any(|beam| shines_in(beam, time)));
        let Some(Hit { first, minutes }) = hit.filter(|hit| hit.minutes > bound.value) else { continue };
        let of = &station.name.0;
        let says = format!(
            "About {} from {} on the sun shines into the lens of “{of}” for some {minutes:.0} min",
            first.date, first.clock,
        );
        list.push(Finding::new(Matter::Sunlit, Level::Fix, of, None).against(minutes, &bound, says));
    }
    list
}

fn off_mirrors(case: &Case, times: &[SunTime]) -> Vec<Finding> {
    let bound = case.limit(limits::SUN_MINUTES);
    let mut list = Vec::new();
    for veil in case.night.veils.iter().filter(|veil| veil.sort == VeilSort::Mirror) {
        let Outline::Flat(quad) = &veil.outline else { continue };
        let mut onto = None;
        let hit = first(times, |time| {
            let now = falls_on(case, quad, time.toward);
            let some = now.is_some();
            onto = onto.take().or(now);
            some
        });
        let (Some(Hit { first, minutes }), Some(onto)) = (hit.filter(|hit| hit.minutes > bound.value), onto) else {
            continue;
        };
        let of = &case.night.names[veil.owner as usize];
        let says = format!(
            "About {} from {} on the sun off “{of}” shines {onto} for some {minutes:.0} min",
            first.date, first.clock,
        );
        let finding = Finding::new(Matter::Sunlit, Level::Check, of, None).against(minutes, &bound, says);
        list.push(finding.doing("Cover the mirror by day".to_owned()));
    }
    list
}

/// What the sun off a mirror falls on, where that is an eye, cloth, film or a plant.
fn falls_on(case: &Case, quad: &Quad, sun: Vec3) -> Option<String> {
    let (normal, middle) = (quad.normal().normalize_or_zero(), quad.middle());
    let start = middle + 0.01 * normal;
    if normal.dot(sun) <= 0.0 || case.night.blocked(Sight::endless(start, sun)) {
        return None;
    }
    let along = 2.0 * normal.dot(sun) * normal - sun;
    let wide = 0.5 * quad.u.length().min(quad.v.length()) + 0.05;
    let into_eyes = case.yard.spots.iter().find(|spot| {
        let eye = spot::eye(spot);
        let far = (eye - middle).dot(along);
        far > 0.0 && (eye - middle - far * along).length() < wide && !case.night.blocked(Sight::between(start, eye))
    });
    if let Some(spot) = into_eyes {
        return Some(format!("into the eyes at “{}”", spot.name.0));
    }
    let yard = case.yard;
    let touches = case.night.touches(Sight::endless(start, along));
    let name = &case.night.names[touches.first()?.owner as usize];
    let burns = yard.cloths.iter().any(|cloth| cloth.name.0 == *name)
        || yard.films.iter().any(|film| film.name.0 == *name)
        || yard.item(name).is_some_and(|item| matches!(item, crate::scene::Item::Plant(_)));
    burns.then(|| format!("onto “{name}”"))
}

/// A lens may be set elsewhere; a mirror stands as its picture asks.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let found = people::shining(case).find(|(_, station, _)| station.name.0 == finding.of);
    found.map_or_else(Vec::new, |(_, station, _)| dazzle::out_of_the_beam(case, station))
}
