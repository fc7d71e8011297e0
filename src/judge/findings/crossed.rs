//! People walk through a beam near its lens.

use super::{Case, Finding, Level, Matter, dazzle, moves, people, remedy::Attempt};
use crate::{
    light::{Beam, luma},
    scene::{Area, UsedBy, limits},
};
use glam::Vec3;

/// Heights of faces above the feet, m: from a child's to a tall person's; common practice, no source.
const FACES_M: [f32; 2] = [0.9, 1.8];
/// How fine a way is searched, m: a raster is that wide a hand's breadth before most lenses.
const STEP_M: f32 = 0.15;

/// Where people walk.
struct Walk {
    name: String,
    feet: Vec<Vec3>,
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let (bound, face) = (case.limit(limits::CROSSED), case.limit(limits::FACE));
    let mut list = Vec::new();
    for (_, station, beams) in people::shining(case) {
        let lens = station.at.vec3();
        let walks = walks(case, lens, bound.value as f32);
        let met = walks.iter().filter_map(|walk| Some((walk, nearest(case, &beams, walk, bound.value as f32)?)));
        let Some((walk, (far, beam))) = met.min_by(|a, b| a.1.0.total_cmp(&b.1.0)) else { continue };
        let (far, of) = (f64::from(far), &station.name.0);
        let level = if far < face.value { Level::Fix } else { Level::Check };
        let says = format!(
            "On {} people walk through the beam of “{of}”, faces too, {} before its lens: {} at 1 m",
            walk.name,
            moves::length(case, far),
            people::lux(case, people::at_a_metre(beam)),
        );
        list.push(Finding::new(Matter::Crossed, level, of, None).against(far, &bound, says));
    }
    list
}

/// Ways near a lens: from spots onwards, and over areas that are walked on.
fn walks(case: &Case, lens: Vec3, reach: f32) -> Vec<Walk> {
    let spots = people::on_foot(case).filter(|spot| spot.to.is_some());
    let spots =
        spots.map(|spot| Walk { name: format!("the way from “{}”", spot.name.0), feet: people::way(spot, STEP_M) });
    let walked_on = |area: &&Area| area.used_by != UsedBy::Nobody && !case.yard.is_hidden(&area.name.0);
    let areas = case.yard.areas.iter().filter(walked_on).map(|area| {
        // Only as far as the lens reaches.
        let within = |(low, high): (f64, f64), at: f32| {
            let low = (low as f32).max(at - reach);
            let steps = ((high as f32).min(at + reach) - low) / STEP_M;
            (0..=steps.max(-1.0) as i32).filter(move |_| steps >= 0.0).map(move |i| low + i as f32 * STEP_M)
        };
        let top = area.rise.f32();
        let row = |z: f32| within((area.x.0.m, area.x.1.m), lens.x).map(move |x| Vec3::new(x, top, z));
        Walk {
            name: format!("“{}”", area.name.0),
            feet: within((area.z.0.m, area.z.1.m), lens.z).flat_map(row).collect(),
        }
    });
    spots.chain(areas).collect()
}

/// How near to its lens a beam is met at the height of faces, m of its way, and which of the beams.
fn nearest<'a>(case: &Case, beams: &[&'a Beam], walk: &Walk, reach: f32) -> Option<(f32, &'a Beam)> {
    let heights = ((FACES_M[1] - FACES_M[0]) / STEP_M).round() as u16;
    let mut best: Option<(f32, &Beam)> = None;
    for beam in beams {
        for feet in &walk.feet {
            for i in 0..=heights {
                let face = *feet + (FACES_M[0] + f32::from(i) * STEP_M) * Vec3::Y;
                let far = (face - beam.lens.at).length();
                let nearer = far < best.map_or(reach, |(far, _)| far);
                if nearer
                    && beam.white(face).is_some()
                    && luma(beam.transmittance(case.night, face, Vec3::ZERO)) > people::STILL_A_BEAM
                {
                    best = Some((far, beam));
                }
            }
        }
    }
    best
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    let mut list = moves::along(case, station, &[2.5, -2.0]);
    list.extend(dazzle::out_of_the_beam(case, station));
    list
}
