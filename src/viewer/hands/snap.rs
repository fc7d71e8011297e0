//! Snapping: to what a tape reads, to the lines that other things stand on, and to edges of walls, windows and cloths.

use gauzelight::{
    light::Night,
    scene::{Item, Opening, Units, Yard},
};

use glam::Vec3;

/// The smallest step that a hand sets and a tape shows, m: a centimetre, or half an inch.
pub fn step_m(units: Units) -> f64 {
    match units {
        Units::Metric => 0.01,
        Units::Feet => 0.0127,
    }
}

/// A line that the held thing has come to stand on.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// Along x, y or z.
    pub axis: usize,
    /// Whose line it is.
    pub with: String,
}

/// Snaps a way that an item is moved by: along each axis to the line of another thing, an edge of a flat one or the ground
/// within `near` metres, else to the steps of a tape.
pub fn snapped(yard: &Yard, night: &Night, item: &Item, by: [f64; 3], near: f64) -> ([f64; 3], Vec<Guide>) {
    let step = step_m(yard.units);
    let Some(from) = item.points().first().copied() else { return (by.map(|v| (v / step).round() * step), Vec::new()) };
    let mut guides = Vec::new();
    let mut snapped = by;
    let edges = edges(night, item.name());
    for axis in 0..3 {
        if by[axis] == 0.0 {
            continue;
        }
        let wanted = from[axis] + by[axis];
        let others = yard.items().filter(|other| other.name() != item.name());
        let lines = others.flat_map(|other| {
            let name = other.name().to_owned();
            other.points().into_iter().map(move |p| (p[axis], name.clone())).collect::<Vec<_>>()
        });
        let edges = edges.iter().map(|(at, name)| (f64::from(at[axis]), name.clone()));
        let ground = (axis == 1).then(|| (0.0, "the ground".to_owned()));
        let nearest =
            lines.chain(edges).chain(ground).min_by(|a, b| (a.0 - wanted).abs().total_cmp(&(b.0 - wanted).abs()));
        match nearest {
            Some((line, with)) if (line - wanted).abs() < near => {
                snapped[axis] = line - from[axis];
                guides.push(Guide { axis, with });
            }
            _ => snapped[axis] = (wanted / step).round() * step - from[axis],
        }
    }
    (snapped, guides)
}

/// Corners of all flat things but this one.
fn edges(night: &Night, but: &str) -> Vec<(Vec3, String)> {
    let others = night.places.iter().map(|place| (place, &night.names[place.owner as usize]));
    let corners = [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)];
    others
        .filter(|(_, name)| *name != but)
        .filter_map(|(place, name)| Some((place.face?, name)))
        .flat_map(|(face, name)| corners.map(|(s, t)| (face.point(s, t), format!("an edge of {name}"))))
        .collect()
}

/// Snaps the way that an opening is slid along and up its wall: to the edges of the other openings of that wall, else to the
/// steps of a tape.
pub fn slid_snapped(yard: &Yard, item: &Item, by: [f64; 2], near: f64) -> ([f64; 2], Vec<Guide>) {
    let step = step_m(yard.units);
    let Item::Opening(host, opening) = item else { return (by, Vec::new()) };
    let (from, size) = (opening.corner(), opening.size());
    let others = yard.items().filter_map(|other| match other {
        Item::Opening(wall, other)
            if wall == *host && other.name() != opening.name() && other.side() == opening.side() =>
        {
            Some(other)
        }
        _ => None,
    });
    let others: Vec<Opening> = others.collect();
    let mut guides = Vec::new();
    let mut along = |axis: usize, from: f64, size: f64, by: f64| {
        let wanted = from + by;
        // Either edge of this to either edge of another.
        let lines = others.iter().flat_map(|other| {
            let (at, wide) = (other.corner(), other.size());
            let (at, wide) = if axis == 0 { (at.0, wide.0) } else { (at.1, wide.1) };
            let name = format!("an edge of {}", other.name().0);
            [at, at + wide].into_iter().flat_map(|line| [line, line - size]).map(move |line| (line, name.clone()))
        });
        match lines.min_by(|a, b| (a.0 - wanted).abs().total_cmp(&(b.0 - wanted).abs())) {
            Some((line, with)) if (line - wanted).abs() < near && by != 0.0 => {
                guides.push(Guide { axis, with });
                line - from
            }
            _ => (wanted / step).round() * step - from,
        }
    };
    let slid = [along(0, from.0, size.0, by[0]), along(1, from.1, size.1, by[1])];
    (slid, guides)
}

#[cfg(test)]
mod tests {
    use super::*;
    use gauzelight::{edit::Starter, frames::Shelf, scene::Catalogue};
    use std::path::Path;

    fn night(yard: &Yard) -> Night {
        let bare = Yard { stations: Vec::new(), ..yard.clone() };
        Night::build(&bare, &Catalogue::builtin(), &Shelf::beside(Path::new(""))).unwrap()
    }

    #[test]
    fn a_thing_comes_to_stand_on_the_lines_of_others_and_else_on_the_tape() {
        let yard = Starter::Window.yard();
        let film = yard.item("Window").unwrap();
        // The lens is at (0, 1.5, −2.2); the lamp hangs at x = 6.
        let night = night(&yard);
        let (by, guides) = snapped(&yard, &night, &film, [5.97, 0.0034, 0.0], 0.05);
        assert_eq!(by[0], 6.0);
        assert_eq!(guides, [Guide { axis: 0, with: "street lamp".to_owned() }]);
        assert!((by[1]).abs() < 1e-9 && by[2] == 0.0);
        let (by, guides) = snapped(&yard, &night, &film, [1.2345, 0.0, 0.0], 0.05);
        assert!((by[0] - 1.23).abs() < 1e-9 && guides.is_empty());
    }
}
