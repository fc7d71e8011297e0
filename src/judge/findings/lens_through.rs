//! The lens itself shows through what it lights, as a bright dot: the hot spot of a thin film.

use super::{
    Case, Finding, Level, Matter, moves,
    rear::{self, Rear},
    remedy::Attempt,
};
use crate::{geometry::crossing, light::luma, scene::limits, units::two_digits};

/// Light of the lens at the eye, lx, straight through the target.
fn dot(case: &Case, rear: &Rear) -> Option<f64> {
    let crosses = crossing::outline(&rear.veil.outline, rear.eye, rear.beam.lens.at - rear.eye);
    if !crosses.iter().any(|t| *t > 0.0 && *t < 1.0) {
        return None;
    }
    let (square, toward) = rear.beam.square(rear.eye, 0.0)?;
    Some(f64::from(luma(square * rear.beam.transmittance(case.night, rear.eye, toward))))
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::LENS_THROUGH);
    let finding = |rear: Rear| {
        let number = dot(case, &rear)? / rear.sight.figure_lx.typical.max(f64::MIN_POSITIVE);
        let level = if number > 10.0 * bound.value { Level::Fix } else { Level::Check };
        let (station, target, spot) = (&rear.station.name.0, rear.target, &rear.spot.name.0);
        let says = format!(
            "The lens of “{station}” shows as a dot through “{target}” from “{spot}”: {} times the whole figure's light",
            two_digits(number)
        );
        let band = rear::through(case, target).filter(|band| band.typical > 0.0);
        let least = band.map_or(1.0, |band| band.low / band.typical);
        let finding = Finding::new(Matter::LensThrough, level, station, Some(spot)).against(number, &bound, says);
        (number > bound.value).then(|| finding.unsure(number * least <= bound.value))
    };
    rear::each(case).into_iter().filter_map(finding).collect()
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some(rear) = rear::of(case, &finding.of, finding.from()) else { return Vec::new() };
    // Out of the line from the eye through the film: the picture goes on landing where it does.
    let mut list = moves::lifted(case, rear.station, &[-1.0, 1.0]);
    list.extend(moves::sideways(case, rear.station, &[1.0, -1.0]));
    list.extend(rear::denser(case, rear.target).into_iter().map(Attempt::from));
    list
}
