//! A comparison as a drawing.

use crate::command::Failure;
use gauzelight::{
    files::{self, Kept},
    judge::{
        Banded,
        compare::{Comparison, Of, Row},
    },
    picture::plot::{Axis, Mark, Point, Points},
};
use std::path::Path;

/// Whether a drawing can come to be written there.
pub fn can_write(path: &Path, kept: &Kept) -> Result<(), Failure> {
    if path.extension().is_none_or(|ending| !ending.eq_ignore_ascii_case("svg")) {
        return Err(Failure::options(format!("a plot is an .svg, not {}", path.display())));
    }
    files::check(path, kept).map_err(|error| Failure::unwritten("the plot", &error))
}

/// Draws it as seen from a spot.
pub fn write(comparison: &Comparison, spot: usize, path: &Path, kept: &Kept) -> Result<(), Failure> {
    let svg = plot(comparison, spot).svg();
    files::write(path, svg.as_bytes(), kept).map_err(|error| Failure::unwritten("the plot", &error))
}

fn plot(comparison: &Comparison, spot: usize) -> Points {
    let projectors = comparison.of == Of::Projectors;
    let three = |b: Banded, factor: f64| [b.low, b.typical, b.high].map(|value| factor * value);
    let point = |row: &Row| {
        let seen = row.spots.get(spot).filter(|spot| spot.word.is_some())?;
        let x = if projectors { three(row.lumens, 1.0) } else { three(row.straight?, 100.0) };
        let mark = if row.now { Mark::Ringed } else { Mark::Dot };
        Some(Point { label: row.name(), x, y: three(seen.mean, 1.0), mark })
    };
    let from = comparison.spots.get(spot).map_or_else(String::new, |name| format!(" from {name}"));
    Points {
        title: format!("{} on {}, seen{from}", comparison.station, comparison.target),
        note: "Lines: the range that each may have. Ringed: as it is now.".to_owned(),
        x: if projectors { Axis::log("light out, lm") } else { Axis::linear("passes straight through, %") },
        y: Axis::log("mean luminance of the figure, cd/m²"),
        points: comparison.rows.iter().filter_map(point).collect(),
    }
}
