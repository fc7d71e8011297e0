//! Glass throws light back to the street: some of the picture, and the lens as it shows in the pane.

use super::{Case, Finding, Level, Matter, moves, remedy::Attempt};
use crate::{
    geometry::{Outline, crossing},
    judge::spot,
    light::{Beam, SKIN, VeilLight, VeilSort, luma},
    scene::limits,
    units::two_digits,
};
use glam::Vec3;

/// Light of the lens at the eye by way of a pane, lx.
fn image(case: &Case, beam: &Beam, pane: &VeilLight, eye: Vec3) -> Option<f64> {
    let Outline::Flat(quad) = &pane.outline else { return None };
    let normal = quad.normal();
    let [of_eye, of_lens] = [eye, beam.lens.at].map(|at| (at - quad.corner).dot(normal));
    if of_eye * of_lens <= 0.0 {
        return None;
    }
    let mirrored = eye - 2.0 * of_eye * normal;
    let way = mirrored - beam.lens.at;
    let (t, _) = crossing::quad(quad, beam.lens.at, way)?;
    let on = beam.lens.at + t * way;
    let (square, _) = beam.square(mirrored, 0.0)?;
    let side = normal * of_eye.signum();
    let optic = &case.night.optics[pane.optic as usize];
    let back = optic.mirror[usize::from(of_eye < 0.0)].sample(way.normalize_or_zero().dot(normal).abs());
    let there = beam.transmittance(case.night, on + SKIN * side, side);
    let onward = case.night.way(on + 2.0 * SKIN * side, eye, [u32::MAX; 2]);
    Some(f64::from(luma(square * back * there * onward)))
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let (lens, share) = (case.limit(limits::GLASS_LENS), case.limit(limits::GLASS_SHARE));
    let night = case.night;
    let panes: Vec<&VeilLight> = night.veils.iter().filter(|veil| veil.sort == VeilSort::Pane).collect();
    let mut list = Vec::new();
    for (index, station, reading) in case.lit() {
        let name = &station.name.0;
        let Some(beam) = night.beams.iter().rfind(|beam| beam.station as usize == index) else { continue };
        // What a film's own window throws back stays in its room.
        let is_film = case.yard.films.iter().any(|film| reading.lights(&film.name.0));
        let back: f64 = reading.thrown_back.iter().map(|part| part.share).sum();
        if let Some(first) = reading.thrown_back.first().filter(|_| !is_film && back > share.value) {
            let onto =
                if first.owner.is_some() { format!("onto “{}”", first.thing) } else { "into the sky".to_owned() };
            let says = format!("Glass throws {:.0} % of the light of “{name}” back, most of it {onto}", 100.0 * back);
            list.push(Finding::new(Matter::Glass, Level::Check, name, None).against(back, &share, says));
        }
        for (spot, seen) in case.yard.spots.iter().zip(&reading.spots) {
            let Some(sight) = seen.sight.as_ref().filter(|_| seen.in_sight > 0.5) else { continue };
            let images = panes.iter().filter_map(|pane| Some((pane, image(case, beam, pane, spot::eye(spot))?)));
            let Some((pane, lx)) = images.max_by(|a, b| a.1.total_cmp(&b.1)) else { continue };
            let number = lx / sight.figure_lx.typical.max(f64::MIN_POSITIVE);
            if number > lens.value {
                let level = if number > 10.0 * lens.value { Level::Fix } else { Level::Check };
                let says = format!(
                    "The lens of “{name}” shows in the glass of “{}” from “{}”: {} times the whole figure's light",
                    night.names[pane.owner as usize],
                    spot.name.0,
                    two_digits(number)
                );
                list.push(Finding::new(Matter::Glass, level, name, Some(&spot.name.0)).against(number, &lens, says));
            }
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::sideways(case, station, &[1.2, -1.2]);
    list.extend(moves::aimed_right(case, station, &[1.2, -1.2]));
    list
}
