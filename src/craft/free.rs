//! Room for another opening in a wall.

use crate::{
    edit::usual,
    scene::{Item, Opening, Side, Yard},
};

/// Space kept to the wall's ends and to other openings, m.
const MARGIN: f64 = 0.15;

/// Where a new window or door of the usual size fits into the front of a wall or house: from its left end and up from its
/// foot, m; the place nearest to the middle. `None` where there is no room.
pub fn free_place(yard: &Yard, host: &str, kind: &str) -> Option<(f64, f64)> {
    let wall = yard.walls.iter().find(|w| w.name.0 == host).map(|w| (w.width.0.m, w.height.0.m, &w.openings));
    let house = yard.houses.iter().find(|h| h.name.0 == host).map(|h| (h.width.0.m, h.height.0.m, &h.openings));
    let (width, height, openings) = wall.or(house)?;
    let (wide, high, up) = match usual(kind)? {
        Item::Opening(_, Opening::Window(n)) => (n.width.0.m, n.height.0.m, n.sill.m),
        Item::Opening(_, Opening::Door(n)) => (n.width.0.m, n.height.0.m, n.sill.m),
        _ => return None,
    };
    if up + high + MARGIN > height {
        return None;
    }
    let taken: Vec<(f64, f64)> = openings
        .iter()
        .filter_map(|opening| match opening {
            Opening::Window(n) if n.side == Side::Front => Some((n.left.m, n.left.m + n.width.0.m)),
            Opening::Door(n) if n.side == Side::Front => Some((n.left.m, n.left.m + n.width.0.m)),
            _ => None,
        })
        .collect();
    let clear = |left: f64| taken.iter().all(|(a, b)| left + wide + MARGIN <= *a || left >= b + MARGIN);
    let middle = 0.5 * (width - wide);
    let steps = (width / 0.1) as i32;
    let places = (0..=steps).flat_map(|n| [middle + 0.1 * f64::from(n), middle - 0.1 * f64::from(n)]);
    let fits = |left: &f64| *left >= MARGIN && left + wide + MARGIN <= width && clear(*left);
    places.map(|left| (left * 100.0).round() / 100.0).find(fits).map(|left| (left, up))
}
