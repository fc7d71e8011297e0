//! What to measure first: where a word depends on a value that nobody measured. One finding for a whole yard.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    judge::{Banded, Sight, StationReading, Word},
    scene::limits,
    units::two_digits,
};

/// How far apart the ends of a band stand, as a ratio.
fn across(band: Banded) -> f64 {
    if band.low > 0.0 { band.high / band.low } else { f64::INFINITY }
}

/// A station whose word is open, and what a measurement there would decide.
struct Open<'a> {
    reading: &'a StationReading,
    /// Steps between the least and the most that its words may be, over all spots that see it.
    steps: usize,
    /// The spot where they stand farthest apart.
    spot: &'a str,
    sight: &'a Sight,
    /// Most over least of the light of its figure there.
    factor: f64,
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::UNMEASURED);
    let mut open: Vec<Open<'_>> =
        case.lit().filter_map(|(_, _, reading)| of(reading)).filter(|open| open.factor > bound.value).collect();
    // The one that decides most comes first.
    open.sort_by(|a, b| b.steps.cmp(&a.steps).then(b.factor.total_cmp(&a.factor)));
    let Some(first) = open.first() else { return Vec::new() };
    let lumens = across(first.reading.lumens);
    let does = if lumens >= first.factor / lumens {
        "Measure its lumens: phone lux at nine places of a white picture"
    } else {
        "Measure its cloth: phone lux just before and just behind it"
    };
    let more = match open.len() - 1 {
        0 => String::new(),
        1 => "; one more station is as unsure".to_owned(),
        count => format!("; {count} more stations are as unsure"),
    };
    let says = format!(
        "The light of “{}” is known to a factor of {} only: {} to {} from “{}”{more}",
        first.reading.station,
        two_digits(first.factor),
        first.sight.least.name(),
        first.sight.most.name(),
        first.spot
    );
    let others = open.iter().map(|one| one.reading.station.clone()).collect();
    let finding = Finding::new(Matter::Unmeasured, Level::Check, &case.yard.name.0, None);
    vec![finding.against(first.factor, &bound, says).doing(does.to_owned()).with(others)]
}

fn of(reading: &StationReading) -> Option<Open<'_>> {
    let steps = |sight: &Sight| sight.most as usize - sight.least as usize;
    let is_open = |sight: &Sight| steps(sight) >= 2 || (sight.least < Word::Clear && sight.most >= Word::Clear);
    let seen = reading.spots.iter().filter(|spot| spot.in_sight > 0.5);
    let open: Vec<(&str, &Sight)> = seen
        .filter_map(|spot| Some((spot.spot.as_str(), spot.sight.as_ref()?)))
        .filter(|(_, sight)| is_open(sight))
        .collect();
    let (spot, sight) = open.iter().copied().max_by_key(|(_, sight)| steps(sight))?;
    let all = open.iter().map(|(_, sight)| steps(sight)).sum();
    Some(Open { reading, steps: all, spot, sight, factor: across(sight.figure_lx).min(1e3) })
}

/// Nothing but a measurement helps.
pub(super) fn propose(_: &Case, _: &Finding) -> Vec<Proposal> {
    Vec::new()
}
