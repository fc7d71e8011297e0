//! Pixels show to who stands nearest.

use super::{Case, Finding, Level, Matter, moves, remedy::Attempt};
use crate::{light::eye::finest, scene::limits, units::two_digits};

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::PIXELS);
    let mut list = Vec::new();
    for (_, _, reading) in case.lit() {
        let nearest = case.seen_from(reading).min_by(|a, b| a.2.total_cmp(&b.2));
        let Some((spot, sight, distance)) = nearest else { continue };
        let pixel = 1.0 / reading.pixels_per_m.max(1e-6);
        let times = (pixel / distance).to_degrees() * 60.0 / finest(sight.mean.typical);
        if times <= bound.value {
            continue;
        }
        let says = format!(
            "The pixels of “{}” show from “{}”: {:.1} mm wide, {} times the finest seen from {}",
            reading.station,
            spot.name.0,
            1000.0 * pixel,
            two_digits(times),
            moves::length(case, distance)
        );
        let level = if times > 4.0 * bound.value { Level::Fix } else { Level::Check };
        let finding = Finding::new(Matter::Pixels, level, &reading.station, Some(&spot.name.0));
        list.push(finding.against(times, &bound, says));
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::along(case, station, &[1.5]);
    list.extend(moves::other_class(case, station, |class, now| class.pixels.0 > now.pixels.0));
    list
}
