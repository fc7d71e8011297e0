//! A point by two tapes and a height, from marks that lie well for it.

use super::{Datum, Mark, marks::Reach};
use crate::{
    craft::tapes::{Known, Side, by_tapes_and_height, tapes_to},
    geometry::Sight,
    light::Night,
};
use glam::DVec3;

/// A point as tapes place it.
#[derive(Clone, Debug, PartialEq)]
pub struct TapedPoint {
    /// From which two marks, by index, and what the tapes read, m.
    pub tapes: [(usize, f64); 2],
    /// Its height above the ground's level, m.
    pub height: f64,
    /// Which of the two places that fit, in words.
    pub side: &'static str,
    /// How far the point moves for each unit of tape error, at most.
    pub moves: f64,
}

/// Marks that are tried, the nearest.
const TRIED: usize = 18;
/// Longer than this a tape sags, m: each metre more costs.
const LONG: f64 = 8.0;
/// Shorter than this a tape cannot be read well, m.
const SHORT: f64 = 0.15;
/// Tapes that cross no worse than this cross well.
const WELL: f64 = 1.6;
/// So near to a mark the thing that it is on stands in no tape's way, m.
const AT_MARK: f32 = 0.3;
/// A tape that has to go through something counts as so much worse.
const BLOCKED: f64 = 4.0;
/// A mark that is reached from a ladder counts as so much worse than one that a hand reaches.
const CLIMBED: f64 = 2.0;

/// The ways that tell two places apart, with what stands on paper.
pub(super) const SIDES: [(&str, [f64; 2]); 4] = [
    ("nearer the street", [0.0, 1.0]),
    ("farther from the street", [0.0, -1.0]),
    ("farther right, seen from the street", [1.0, 0.0]),
    ("farther left, seen from the street", [-1.0, 0.0]),
];

/// All of these points by the one pair of marks that serves them best; `None` where no pair places each of them.
pub(super) fn by_best_pair(night: &Night, known: &[Mark], datum: &Datum, points: &[DVec3]) -> Option<Vec<TapedPoint>> {
    let first = *points.first()?;
    let reached = |mark: usize| points.iter().map(|point| known[mark].reach(*point)).max().flatten();
    let mut near: Vec<usize> =
        (0..known.len()).filter(|mark| points.iter().all(|point| known[*mark].reach(*point).is_some())).collect();
    let way = |mark: &usize| known[*mark].at.distance_squared(first);
    near.sort_by(|a, b| way(a).total_cmp(&way(b)).then(a.cmp(b)));
    near.truncate(TRIED);
    let blocked: Vec<bool> =
        near.iter().map(|mark| points.iter().any(|point| is_blocked(night, known[*mark].at, *point))).collect();
    let pairs = (0..near.len()).flat_map(|a| (a + 1..near.len()).map(move |b| (a, b)));
    let each = pairs.filter_map(|(a, b)| {
        let list: Option<Vec<TapedPoint>> =
            points.iter().map(|point| by_pair(known, datum, [near[a], near[b]], *point)).collect();
        let list = list?;
        let hidden = [a, b].into_iter().filter(|at| blocked[*at]).count() as i32;
        let climbed = [a, b].into_iter().filter(|at| reached(near[*at]) == Some(Reach::Ladder)).count() as i32;
        let worst = list.iter().map(cost).fold(0.0, f64::max);
        let cost = worst * BLOCKED.powi(hidden) * CLIMBED.powi(climbed);
        Some((cost, list))
    });
    each.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, list)| list)
}

fn cost(taped: &TapedPoint) -> f64 {
    let longest = taped.tapes.iter().map(|(_, m)| *m).fold(0.0, f64::max);
    // Up to what tapes cross at well, a short one is worth more than a better crossing.
    taped.moves.max(WELL).powi(2) * (1.0 + longest + (longest - LONG).max(0.0))
}

/// A point by two marks.
fn by_pair(known: &[Mark], datum: &Datum, pair: [usize; 2], point: DVec3) -> Option<TapedPoint> {
    let held = pair.map(|mark| Known { name: known[mark].name(), at: known[mark].at });
    let tapes = tapes_to(point, &held);
    let [a, b] = <[_; 2]>::try_from(tapes).ok()?;
    if a.m < SHORT || b.m < SHORT {
        return None;
    }
    let readings = [a.m, b.m];
    let pair_at = [held[0].at, held[1].at].map(|at| at.with_y(0.0));
    let line = pair_at[1] - pair_at[0];
    // Across the line between the marks, on the side of the point.
    let across = (point - pair_at[0]).with_y(0.0).reject_from(line.try_normalize()?);
    let way = datum.turned(across.try_normalize()?);
    let side = SIDES.into_iter().max_by(|a, b| {
        let along = |side: &[f64; 2]| side[0] * way.x + side[1] * way.z;
        along(&a.1).total_cmp(&along(&b.1))
    })?;
    let taped = by_tapes_and_height(&[a, b], point.y, &[], Side::Toward(toward(datum, side.1))).ok()?;
    let found = taped.at.distance(point) < 1e-3;
    found.then(|| TapedPoint {
        tapes: [(pair[0], readings[0]), (pair[1], readings[1])],
        height: point.y,
        side: side.0,
        moves: taped.moves,
    })
}

fn toward(datum: &Datum, side: [f64; 2]) -> DVec3 {
    side[0] * datum.along + side[1] * datum.out
}

/// Whether something opaque stands between a mark and a point; right at either nothing does.
fn is_blocked(night: &Night, mark: DVec3, point: DVec3) -> bool {
    let (from, to) = (point.as_vec3(), mark.as_vec3());
    let way = to - from;
    let length = way.length();
    if length < 0.5 {
        return false;
    }
    let along = way / length;
    let sight = Sight::endless(from + 0.04 * along, along);
    night.nearest_solid(Sight { reach: length - AT_MARK, ..sight }).is_some()
}
