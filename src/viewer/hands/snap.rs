//! Snapping: to what a tape reads, and to the lines that other things stand on.

use gauzelight::scene::{Item, Units, Yard};

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

/// Snaps a way that an item is moved by: along each axis to the line of another thing within `near` metres, else to the
/// steps of a tape.
pub fn snapped(yard: &Yard, item: &Item, by: [f64; 3], near: f64) -> ([f64; 3], Vec<Guide>) {
    let step = step_m(yard.units);
    let Some(from) = item.points().first().copied() else { return (by.map(|v| (v / step).round() * step), Vec::new()) };
    let mut guides = Vec::new();
    let mut snapped = by;
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
        let nearest = lines.min_by(|a, b| (a.0 - wanted).abs().total_cmp(&(b.0 - wanted).abs()));
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

#[cfg(test)]
mod tests {
    use super::*;
    use gauzelight::edit::Starter;

    #[test]
    fn a_thing_comes_to_stand_on_the_lines_of_others_and_else_on_the_tape() {
        let yard = Starter::Window.yard();
        let film = yard.item("Window").unwrap();
        // The lens is at (0, 1.5, −2.2); the lamp hangs at x = 6.
        let (by, guides) = snapped(&yard, &film, [5.97, 0.0034, 0.0], 0.05);
        assert_eq!(by[0], 6.0);
        assert_eq!(guides, [Guide { axis: 0, with: "street lamp".to_owned() }]);
        assert!((by[1]).abs() < 1e-9 && by[2] == 0.0);
        let (by, guides) = snapped(&yard, &film, [1.2345, 0.0, 0.0], 0.05);
        assert!((by[0] - 1.23).abs() < 1e-9 && guides.is_empty());
    }
}
