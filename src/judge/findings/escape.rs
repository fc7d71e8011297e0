//! Something covers a window that is a way out in a fire.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::{Outline, Sight, crossing},
    scene::{Item, Opening, Station, Window, limits},
};
use glam::Vec3;
use std::collections::BTreeSet;

/// What stands so near before or behind a window stands in its way, m: room to climb out; common practice, no source.
const NEAR_M: f32 = 0.9;
/// Points across and up a window that are looked at.
const POINTS: usize = 12;

/// Of what covers a window so many are named.
const NAMED: usize = 2;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ESCAPE);
    let mut list = Vec::new();
    for (host, window) in windows(case) {
        let covered = covered(case, window, host).filter(|covered| covered.share > bound.value);
        let Some(Covered { share, by }) = covered else { continue };
        let of = &window.name.0;
        let says = format!("{} {:.0} % of “{of}”, a window to escape by", told(&by), 100.0 * share);
        let others = by.into_iter().map(|(name, _)| name).collect();
        list.push(Finding::new(Matter::Escape, Level::Fix, of, None).against(share, &bound, says).with(others));
    }
    list
}

/// What covers it, as the beginning of a sentence: those that cover most by their names.
fn told(by: &[(String, f64)]) -> String {
    let names: Vec<String> = by.iter().take(NAMED).map(|(name, _)| format!("“{name}”")).collect();
    let list = match by.len().saturating_sub(NAMED) {
        0 => names.join(" and "),
        more => format!("{} and {more} more", names.join(", ")),
    };
    format!("{list} {}", if by.len() == 1 { "covers" } else { "cover" })
}

/// The windows that are marked as ways out, each with the name of its wall or house.
fn windows<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a str, &'a Window)> {
    let yard = case.yard;
    let houses = yard.houses.iter().map(|house| (house.name.0.as_str(), &house.openings));
    let all = houses.chain(yard.walls.iter().map(|wall| (wall.name.0.as_str(), &wall.openings)));
    all.flat_map(|(host, openings)| openings.iter().map(move |opening| (host, opening))).filter_map(
        |(host, opening)| match opening {
            Opening::Window(window) if window.escape => Some((host, window)),
            _ => None,
        },
    )
}

/// How a window is covered.
struct Covered {
    /// Share of it that anything covers.
    share: f64,
    /// What does, that which covers most first, with the share that each covers.
    by: Vec<(String, f64)>,
}

/// What covers a window: whatever rays straight through it meet close before or behind it, its own wall or house left out. `None` where
/// that is nothing.
fn covered(case: &Case, window: &Window, host: &str) -> Option<Covered> {
    let night = case.night;
    let pane = night.place(&window.name.0)?.face?;
    let counts: Vec<bool> = night.names.iter().map(|name| name != host && can_cover(case.yard.item(name))).collect();
    let bodies: Vec<(&str, Outline)> = case.yard.stations.iter().filter_map(|station| body(case, station)).collect();
    let at = |i: usize| (i as f32 + 0.5) / POINTS as f32;
    let way = 2.0 * NEAR_M * pane.normal();
    let (mut any, mut by): (usize, Vec<(String, f64)>) = (0, Vec::new());
    for i in 0..POINTS * POINTS {
        let origin = pane.point(at(i % POINTS), at(i / POINTS)) - 0.5 * way;
        let mut met = met_by(case, &counts, Sight { origin, direction: way, reach: 1.0 });
        let meets = |outline: &Outline| crossing::outline(outline, origin, way).iter().any(|t| (0.0..=1.0).contains(t));
        met.extend(bodies.iter().filter(|(_, outline)| meets(outline)).map(|(name, _)| *name));
        any += usize::from(!met.is_empty());
        for name in met {
            match by.iter_mut().find(|(known, _)| known == name) {
                Some((_, share)) => *share += 1.0,
                None => by.push((name.to_owned(), 1.0)),
            }
        }
    }
    let all = (POINTS * POINTS) as f64;
    by.iter_mut().for_each(|(_, share)| *share /= all);
    by.sort_by(|a, b| b.1.total_cmp(&a.1));
    (any > 0).then_some(Covered { share: any as f64 / all, by })
}

/// Whether a thing can stand in the way: not the ground and what lies on it, nor other windows and doors.
fn can_cover(item: Option<Item>) -> bool {
    item.is_some_and(|item| !matches!(item, Item::Area(_) | Item::Opening(..)))
}

/// Names of what a ray meets, each once.
fn met_by<'a>(case: &'a Case, counts: &[bool], sight: Sight) -> BTreeSet<&'a str> {
    let night = case.night;
    let mut met = BTreeSet::new();
    let mut add = |owner: u32, t: f32| {
        if counts[owner as usize] && (0.0..=1.0).contains(&t) {
            met.insert(night.names[owner as usize].as_str());
        }
    };
    night.each_solid(sight, &mut add);
    night.veil_tree.each(sight, |id| {
        let veil = &night.veils[id as usize];
        crossing::outline(&veil.outline, sight.origin, sight.direction).into_iter().for_each(|t| add(veil.owner, t));
    });
    met
}

/// The box or the bare body of a station as it stands, the lens in the middle of its front.
fn body<'a>(case: &Case<'a>, station: &'a Station) -> Option<(&'a str, Outline)> {
    if case.yard.is_hidden(&station.name.0) {
        return None;
    }
    let class = case.yard.projector(case.catalogue, &station.projector.0)?;
    let boxed = station.shelter.as_ref().map(|one| [&one.width, &one.height, &one.depth].map(|size| size.0.m));
    let half = 0.5 * Vec3::from(boxed.unwrap_or_else(|| station.body(class)).map(|m| m as f32));
    let toward = match station.mirrors.first() {
        Some(mirror) => case.night.place(&mirror.0)?.middle,
        None => case.night.aim(&station.aim)?,
    };
    let ahead = (toward - station.at.vec3()).with_y(0.0).normalize_or(Vec3::Z);
    let middle = station.at.vec3() - half.z * ahead;
    Some((&station.name.0, Outline::Crate { middle, half, turn: [ahead.z, ahead.x] }))
}

/// Without what covers it.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((host, window)) = windows(case).find(|(_, window)| window.name.0 == finding.of) else { return Vec::new() };
    let movable = |name: &str| {
        let item = case.yard.item(name);
        item.is_some_and(|item| !matches!(item, Item::House(_) | Item::Wall(_)))
    };
    let by = covered(case, window, host).map_or_else(Vec::new, |covered| covered.by);
    let names: Vec<&str> = by.iter().map(|(name, _)| name.as_str()).filter(|name| movable(name)).collect();
    if names.is_empty() {
        return Vec::new();
    }
    let edits = names.iter().map(|name| Edit::Hide((*name).to_owned(), true)).collect();
    vec![Proposal { says: format!("Take “{}” away from it", names.join("” and “")), edit: Edit::All(edits) }]
}
