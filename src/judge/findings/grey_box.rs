//! The grey box around the figure shows on the target itself.

use super::{Case, Finding, Level, Matter, glimpse, moves, remedy::Attempt};
use crate::{
    judge::{Landing, Landings, RASTER, eye},
    scene::limits,
    units::two_digits,
};

/// Share of the raster's rim that lies on the target from which its box has an edge there.
const RIM: f64 = 0.1;
/// How far in the rim reaches, in points of the raster.
const REACH: usize = 2;
/// What a picture sends there at most, as a share of white, where it is meant to be black.
const BLACK: f32 = 0.01;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::GREY_BOX);
    let mut list = Vec::new();
    for (index, _, reading) in case.lit() {
        let (rim, all) = rim(case.landings(index));
        if (rim.len() as f64) < RIM * all as f64 {
            continue;
        }
        let seen = case.seen_from(reading).filter_map(|(spot, sight, _)| {
            let patches = glimpse::patches(case, index, eye(spot), &rim, |landing| landing.target);
            let shown = patches.iter().filter(|patch| case.shows(spot, sight, patch.own));
            let times = shown.map(|patch| patch.times_on_target(sight)).max_by(f64::total_cmp)?;
            Some((spot, times))
        });
        let Some((spot, times)) = seen.max_by(|a, b| a.1.total_cmp(&b.1)) else { continue };
        if times <= bound.value {
            continue;
        }
        let says = format!(
            "The black of “{}” shows as a grey box around its figure: {} times as bright as “{}” beside it, from “{}”",
            reading.station,
            two_digits(times),
            reading.quoted_onto(),
            spot.name.0,
        );
        let [low, high] = [reading.lumens.low, reading.lumens.high].map(|lm| lm / reading.lumens.typical.max(1e-9));
        let finding = Finding::new(Matter::GreyBox, Level::Check, &reading.station, None);
        let at = |lumens: f64| 1.0 + (times - 1.0) * lumens;
        let unsure = at(low) <= bound.value && at(high) > bound.value;
        list.push(finding.against(times, &bound, says).unsure(unsure));
    }
    list
}

/// The black rim of a raster as it lands on the target, and how many points the whole rim has.
fn rim(landings: &Landings) -> (Vec<&Landing>, usize) {
    let (columns, rows) = RASTER;
    let edge = |at: usize, count: usize| at < REACH || at + REACH >= count;
    let is_rim = |i: usize| edge(i % columns, columns) || edge(i / columns, rows);
    let rim: Vec<_> =
        landings.cells.iter().enumerate().filter(|(i, _)| is_rim(*i)).map(|(_, landing)| landing).collect();
    let all = rim.len();
    (rim.into_iter().filter(|landing| landing.target.is_some() && landing.picture < BLACK).collect(), all)
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let mut list = moves::other_class(case, station, |class, now| {
        class.on_off_contrast.0 > now.on_off_contrast.0 && class.checker_contrast.0 > now.checker_contrast.0
    });
    // Larger and so dimmer; the figure as well.
    list.extend(moves::along(case, station, &[-2.0]));
    list
}
