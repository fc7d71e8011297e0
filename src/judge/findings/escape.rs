//! Something covers a window that is a way out in a fire.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::{Quad, crossing},
    scene::{Item, Opening, Thing, Window, limits},
};
use glam::Vec3;

/// What stands so near before or behind a window stands in its way, m: room to climb out; common practice, no source.
const NEAR_M: f32 = 0.9;
/// Points across and up a window that are looked at.
const POINTS: usize = 12;

/// What covers a window, and how much of it.
struct Cover {
    name: String,
    share: f64,
}

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::ESCAPE);
    let mut list = Vec::new();
    for window in windows(case) {
        let covers = covers(case, window);
        let Some(most) = covers.iter().max_by(|a, b| a.share.total_cmp(&b.share)) else { continue };
        if most.share <= bound.value {
            continue;
        }
        let of = &window.name.0;
        let says = format!("“{}” covers {:.0} % of “{of}”, a window to escape by", most.name, 100.0 * most.share);
        let others = covers.iter().map(|cover| cover.name.clone()).collect();
        list.push(Finding::new(Matter::Escape, Level::Fix, of, None).against(most.share, &bound, says).with(others));
    }
    list
}

/// The windows that are marked as ways out.
fn windows<'a>(case: &Case<'a>) -> impl Iterator<Item = &'a Window> {
    let yard = case.yard;
    let openings = yard.houses.iter().flat_map(|house| &house.openings);
    openings.chain(yard.walls.iter().flat_map(|wall| &wall.openings)).filter_map(|opening| match opening {
        Opening::Window(window) if window.escape => Some(window),
        _ => None,
    })
}

/// What covers a window: a film in it, a cloth, film or mirror close before or behind it, a box or a chest that stands there.
fn covers(case: &Case, window: &Window) -> Vec<Cover> {
    let (yard, night) = (case.yard, case.night);
    let shown = |name: &str| !yard.is_hidden(name);
    let Some(pane) = night.place(&window.name.0).and_then(|place| place.face) else { return Vec::new() };
    let mut list: Vec<Cover> = Vec::new();
    let mut add = |name: &str, share: f64| {
        if share > 0.0 && shown(name) {
            list.push(Cover { name: name.to_owned(), share });
        }
    };
    for film in &yard.films {
        if film.window.as_ref().is_some_and(|of| of.0 == window.name.0) {
            add(&film.name.0, 1.0);
        }
    }
    let free = yard.films.iter().filter(|film| film.window.is_none()).map(|film| &film.name);
    let hung = free.chain(yard.cloths.iter().map(|cloth| &cloth.name)).chain(yard.mirrors.iter().map(|one| &one.name));
    for name in hung {
        let face = night.place(&name.0).and_then(|place| place.face);
        add(&name.0, face.map_or(0.0, |face| by_face(&pane, &face)));
    }
    for station in &yard.stations {
        let class = yard.projector(case.catalogue, &station.projector.0);
        let body = class.map(|class| station.body(class)).map(|[wide, high, _]| [wide, high]);
        let boxed = station.shelter.as_ref().map(|shelter| [shelter.width.0.m, shelter.height.0.m]);
        if let Some(size) = boxed.or(body) {
            add(&station.name.0, by_body(&pane, station.at.vec3(), size));
        }
    }
    for thing in &yard.things {
        if let Thing::Block(block) = thing {
            let middle = block.at.vec3() + 0.5 * block.height.f32() * Vec3::Y;
            let wide = block.width.0.m.max(block.depth.0.m);
            add(&block.name.0, by_body(&pane, middle, [wide, block.height.0.m]));
        }
    }
    list
}

/// Share of a window that a flat thing close to it covers, as somebody looks straight at it.
fn by_face(pane: &Quad, face: &Quad) -> f64 {
    let normal = pane.normal();
    let at = |i: usize| (i as f32 + 0.5) / POINTS as f32;
    let points = (0..POINTS * POINTS).map(|i| pane.point(at(i % POINTS), at(i / POINTS)));
    let covered = points.filter(|point| {
        let (from, way) = (*point - NEAR_M * normal, 2.0 * NEAR_M * normal);
        crossing::quad(face, from, way).is_some_and(|(t, _)| (0.0..=1.0).contains(&t))
    });
    covered.count() as f64 / (POINTS * POINTS) as f64
}

/// The same of something that stands there, as wide as it is whichever way it is turned.
fn by_body(pane: &Quad, middle: Vec3, [wide, high]: [f64; 2]) -> f64 {
    let (right, up) = (pane.u.normalize_or_zero(), pane.v.normalize_or_zero());
    let (wide, high) = (wide as f32, high as f32);
    let corner = middle - 0.5 * wide * right - 0.5 * high * up;
    by_face(pane, &Quad { corner, u: wide * right, v: high * up })
}

/// Without what covers it.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(window) = windows(case).find(|window| window.name.0 == finding.of) else { return Vec::new() };
    let movable = |name: &str| {
        let item = case.yard.item(name);
        item.is_some_and(|item| !matches!(item, Item::House(_) | Item::Wall(_)))
    };
    let covers = covers(case, window);
    let names: Vec<&str> = covers.iter().map(|cover| cover.name.as_str()).filter(|name| movable(name)).collect();
    if names.is_empty() {
        return Vec::new();
    }
    let edits = names.iter().map(|name| Edit::Hide((*name).to_owned(), true)).collect();
    vec![Proposal { says: format!("Take “{}” away from it", names.join("” and “")), edit: Edit::All(edits) }]
}
