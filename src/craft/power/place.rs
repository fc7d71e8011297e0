//! Where things are, how far a cable runs between them, and what stands in the rain.

use crate::scene::{Cable, House, Item, Name, Opening, Point, Roof, Supply, Wall, Yard};
use glam::DVec3;

/// A supply in a house is put this far from a wall, and this high, m: common practice, no source.
const FROM_WALL: f64 = 0.15;
const HEIGHT: f64 = 0.3;

fn of(point: &Point) -> DVec3 {
    DVec3::from_array([0, 1, 2].map(|axis| point.0[axis].m))
}

/// Where a station, lamp or supply stands, m; a cable, where it ends.
pub(super) fn end(yard: &Yard, name: &str) -> Option<DVec3> {
    let is = |other: &Name| other.0 == name;
    // A cable ends at a thing, never at another cable.
    let name = yard.cables.iter().find(|cable| is(&cable.name)).map_or(name, |cable| cable.to.0.as_str());
    let is = |other: &Name| other.0 == name;
    let stations = yard.stations.iter().find(|n| is(&n.name)).map(|n| &n.at);
    let lamps = || yard.lamps.iter().find(|n| is(&n.name)).map(|n| &n.at);
    let supplies = || yard.supplies.iter().find(|n| is(&n.name)).map(|n| &n.at);
    stations.or_else(lamps).or_else(supplies).map(of)
}

/// The supply that feeds a station, lamp or supply by way of cables; `None` where nothing of this arrangement does.
pub fn feeds<'a>(yard: &'a Yard, name: &str) -> Option<&'a Supply> {
    let shown = |name: &Name| !yard.is_hidden(&name.0);
    let mut at = name;
    // Each step is another cable, so that more steps than cables go round in a circle.
    for _ in 0..=yard.cables.len() {
        let cable = yard.cables.iter().find(|cable| (cable.to.0 == at || cable.name.0 == at) && shown(&cable.name))?;
        at = &cable.from.0;
        if let Some(supply) = yard.supplies.iter().find(|supply| supply.name.0 == at) {
            return Some(supply).filter(|supply| shown(&supply.name));
        }
    }
    None
}

/// Every corner of a cable's way, its ends first and last; `None` where an end is not in this arrangement.
pub fn way(yard: &Yard, cable: &Cable) -> Option<Vec<DVec3>> {
    let mut way = vec![end(yard, &cable.from.0)?];
    way.extend(cable.via.iter().map(of));
    way.push(end(yard, &cable.to.0)?);
    Some(way)
}

/// How much cable of its kind a cable takes, slack and all, m; `None` where an end of it is not in this arrangement.
pub fn cable_m(yard: &Yard, cable: &Cable) -> Option<f64> {
    way(yard, cable).map(|way| length(&way, cable))
}

/// How much cable a way takes, slack and all, m.
pub(super) fn length(way: &[DVec3], cable: &Cable) -> f64 {
    way.windows(2).map(|pair| pair[0].distance(pair[1])).sum::<f64>() * (1.0 + cable.slack.0)
}

/// How much of a way lies outdoors, m, in steps of about 10 cm.
pub(super) fn outdoors_m(yard: &Yard, way: &[DVec3]) -> f64 {
    let leg = |pair: &[DVec3]| {
        let (from, to) = (pair[0], pair[1]);
        let steps = (from.distance(to) / 0.1).ceil().clamp(1.0, 2000.0) as u32;
        let at = |step: u32| from.lerp(to, (f64::from(step) + 0.5) / f64::from(steps));
        let out = (0..steps).filter(|step| !is_indoors(yard, at(*step))).count();
        from.distance(to) * out as f64 / f64::from(steps)
    };
    way.windows(2).map(leg).sum()
}

/// A point as seen from the foot of a wall: right, up and out of it, m.
fn local(at: &Point, turn_deg: f64, point: DVec3) -> DVec3 {
    let (sin, cos) = turn_deg.to_radians().sin_cos();
    let d = point - of(at);
    DVec3::new(d.x * cos - d.z * sin, d.y, d.x * sin + d.z * cos)
}

/// Within the walls of a house that has a roof, however high.
fn under_roof(house: &House, point: DVec3) -> bool {
    let p = local(&house.at, house.turn_deg.0, point);
    house.roof != Roof::Open
        && p.x.abs() < 0.5 * house.width.0.m
        && (-house.depth.0.m..0.0).contains(&p.z)
        && p.y >= -0.05
}

fn within(house: &House, point: DVec3) -> bool {
    under_roof(house, point) && point.y - house.at.0[1].m < house.height.0.m
}

/// The rooms behind the openings of a wall that stands alone, taken as one box along all of it.
fn behind(wall: &Wall, point: DVec3) -> bool {
    let depth = wall.openings.iter().map(|opening| match opening {
        Opening::Window(n) => n.room.depth.0.m,
        Opening::Door(n) => n.room.depth.0.m,
    });
    let Some(depth) = depth.reduce(f64::max) else { return false };
    let p = local(&wall.at, wall.turn_deg.0, point);
    p.x.abs() < 0.5 * wall.width.0.m
        && (-depth - wall.thickness.0.m..0.0).contains(&p.z)
        && (-0.05..wall.height.0.m).contains(&p.y)
}

/// Whether a point is inside a house, or in the room behind a wall: where no rain falls. A porch is outdoors.
pub fn is_indoors(yard: &Yard, at: DVec3) -> bool {
    let stands = |name: &Name| !yard.is_hidden(&name.0);
    yard.houses.iter().any(|house| stands(&house.name) && within(house, at))
        || yard.walls.iter().any(|wall| stands(&wall.name) && behind(wall, at))
}

/// Whether a point is on the room side of the window of that name: within the walls of its house, up to the attic, or
/// behind the wall that stands for one, whose room may be deeper than is drawn.
pub fn behind_window(yard: &Yard, window: &str, at: DVec3) -> bool {
    let stands = |name: &Name| !yard.is_hidden(&name.0);
    let in_it = |openings: &[Opening]| openings.iter().any(|opening| opening.name().0 == window);
    let houses = yard.houses.iter().filter(|house| stands(&house.name) && in_it(&house.openings));
    let walls = yard.walls.iter().filter(|wall| stands(&wall.name) && in_it(&wall.openings));
    houses.into_iter().any(|house| under_roof(house, at))
        || walls.into_iter().any(|wall| local(&wall.at, wall.turn_deg.0, at).z < 0.0)
}

/// The house that is nearest to an item, if within `reach` m, and the item moved into it, beside its wall.
pub fn brought_in(yard: &Yard, item: &Item, reach: f64) -> Option<(String, Item)> {
    let at = DVec3::from_array(*item.points().first()?);
    let inside = |house: &House| {
        let p = local(&house.at, house.turn_deg.0, at);
        let margin = house.wall.0.m + FROM_WALL;
        let half = (0.5 * house.width.0.m - margin).max(0.0);
        let deep = (house.depth.0.m - margin).max(margin);
        let to = DVec3::new(p.x.clamp(-half, half), HEIGHT.min(0.5 * house.height.0.m), p.z.clamp(-deep, -margin));
        let (sin, cos) = house.turn_deg.0.to_radians().sin_cos();
        let by = to - p;
        DVec3::new(by.x * cos + by.z * sin, by.y, -by.x * sin + by.z * cos)
    };
    let houses = yard.houses.iter().filter(|house| house.roof != Roof::Open && !yard.is_hidden(&house.name.0));
    let ways = houses.map(|house| (house, inside(house))).filter(|(_, by)| by.length() <= reach);
    let (house, by) = ways.min_by(|a, b| a.1.length().total_cmp(&b.1.length()))?;
    let item = item.clone().moved(by.to_array());
    is_indoors(yard, DVec3::from_array(*item.points().first()?)).then(|| (house.name.0.clone(), item))
}
