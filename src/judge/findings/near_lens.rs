//! A face comes close before a lens where somebody stands or walks.

use super::{Case, Finding, Level, Matter, dazzle, moves, people, remedy::Attempt};
use crate::{
    light::{Beam, luma},
    scene::{Spot, limits},
};
use glam::Vec3;

/// Heights of faces above the feet, m: from a child's to a tall person's; common practice, no source.
const FACES_M: [f32; 2] = [0.9, 1.8];

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::FACE);
    let mut list = Vec::new();
    for (_, station, beams) in people::shining(case) {
        let Some(beam) = beams.first() else { continue };
        for spot in people::on_foot(case) {
            let Some(far) = nearest(case, beam, spot).filter(|far| *far < bound.value) else { continue };
            let (of, from) = (&station.name.0, &spot.name.0);
            let says = format!(
                "A face at “{from}” is {} before the lens of “{of}”, which throws {} at 1 m",
                moves::length(case, far),
                people::lux(case, people::at_a_metre(beam)),
            );
            list.push(Finding::new(Matter::NearLens, Level::Fix, of, Some(from)).against(far, &bound, says));
        }
    }
    list
}

/// How near to the front of a lens a face comes, m.
fn nearest(case: &Case, beam: &Beam, spot: &Spot) -> Option<f64> {
    let lens = beam.lens.at;
    let faces = people::way(spot, 0.2).into_iter().filter_map(|feet| {
        let height = (lens.y - feet.y).clamp(FACES_M[0], FACES_M[1]);
        let face = feet + height * Vec3::Y;
        let before = beam.lens.forward.dot(face - lens) > 0.0;
        let open = || luma(case.night.way(face, lens, [u32::MAX; 2])) > people::STILL_A_BEAM;
        (before && open()).then(|| f64::from((face - lens).length()))
    });
    faces.min_by(f64::total_cmp)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    let mut list = moves::along(case, station, &[1.5, -1.5]);
    list.extend(dazzle::out_of_the_beam(case, station));
    list
}
