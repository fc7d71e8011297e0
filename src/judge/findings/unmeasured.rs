//! How well a figure is seen hangs on a value that nobody measured.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    judge::{StationReading, Word},
    scene::limits,
    units::two_digits,
};

/// How far apart the ends of a band stand, as a ratio.
fn across(band: crate::judge::Banded) -> f64 {
    if band.low > 0.0 { band.high / band.low } else { f64::INFINITY }
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::UNMEASURED);
    case.lit().filter_map(|(_, _, reading)| of(reading, &bound)).collect()
}

fn of(reading: &StationReading, bound: &super::finding::Bound) -> Option<Finding> {
    let hangs =
        |least: Word, most: Word| most as usize >= least as usize + 2 || (least < Word::Clear && most >= Word::Clear);
    let seen = reading.spots.iter().filter(|spot| spot.in_sight > 0.5);
    let open = seen.filter_map(|spot| Some((spot, spot.sight.as_ref()?))).filter(|(_, s)| hangs(s.least, s.most));
    let (spot, sight) = open.max_by_key(|(_, s)| s.most as usize - s.least as usize)?;
    let (lumens, all) = (across(reading.lumens), across(sight.figure_lx));
    let answer = all / lumens;
    let number = all.min(1e3);
    if number <= bound.value {
        return None;
    }
    let (most, how) = if lumens >= answer {
        ("the lumens of its projector", "a phone that reads lux, laid where a white picture lands, would tell")
    } else {
        (
            "what its target does with the light",
            "a phone that reads lux, held before it and behind it in a white picture, would tell",
        )
    };
    let says = format!(
        "{} may be anything from {} to {} from {}, as the light of its figure is known only to a factor of {}: it hangs most on {most}, and {how}",
        reading.station,
        sight.least.name(),
        sight.most.name(),
        spot.spot,
        two_digits(number)
    );
    let finding = Finding::new(Matter::Unmeasured, Level::Check, &reading.station, None);
    Some(finding.against(number, bound, says).unsure(true))
}

/// Nothing but a measurement helps.
pub(super) fn propose(_: &Case, _: &Finding) -> Vec<Proposal> {
    Vec::new()
}
