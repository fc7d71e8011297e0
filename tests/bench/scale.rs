//! What a yard costs against how much is in it: the night, a small still and the readings, over triangles, figures, trees, cloths, lamps and
//! stations. Printed as a table, not asserted. With `GAUZELIGHT_CROWDS=FOLDER` the yards are written there as well, for the commands to
//! be tried on, and two plots.

mod crowd;

use crowd::Crowd;
use gauzelight::{
    frames::Shelf,
    judge,
    light::Night,
    picture::{
        Camera, expose,
        plot::{Axis, Mark, Point, Points},
    },
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{hint::black_box, path::Path, time::Instant};

const STEPS: [usize; 7] = [1, 3, 10, 30, 100, 300, 1000];

/// A yard and what it costs.
struct Row {
    /// What it has much of, and how much.
    kind: &'static str,
    count: usize,
    triangles: u32,
    seconds: f64,
}

fn main() {
    let folder = std::env::var_os("GAUZELIGHT_CROWDS");
    let folder = folder.as_ref().map(Path::new);
    let none = Crowd::default();
    let mut rows: Vec<(&str, usize, Crowd)> = Vec::new();
    let mut add = |kind, most: usize, crowd: &dyn Fn(usize) -> Crowd| {
        rows.extend(STEPS.into_iter().filter(|n| *n <= most).map(|n| (kind, n, crowd(n))));
    };
    // No two of a size; on a ground so small that it has few triangles of its own.
    add("unlike", 100, &|n| Crowd { figures: n, unlike: true, ground: 20.0, ..none });
    add("houses", 100, &|n| Crowd { houses: n, ..none });
    add("figures", 1000, &|n| Crowd { figures: n, ..none });
    add("trees", 1000, &|n| Crowd { trees: n, ..none });
    add("cloths", 1000, &|n| Crowd { cloths: n, ..none });
    add("lamps", 1000, &|n| Crowd { lamps: n, bulbs: 500, ..none });
    add("stations", 1000, &|n| Crowd { stations: n, cloths: n, ..none });
    let much = Crowd { houses: 100, figures: 500, trees: 1000, cloths: 1000, lamps: 1000, bulbs: 500, ..none };
    rows.push(("everything", 1, Crowd { stations: 500, ..much }));
    println!("{:<16} {:>10} {:>10} {:>12} {:>12}", "", "triangles", "night, s", "160 × 90, s", "readings, s");
    let rows: Vec<Row> = rows.into_iter().map(|(kind, count, crowd)| cost(kind, count, crowd, folder)).collect();
    if let Some(folder) = folder {
        write(&folder.join("triangles.svg"), &by_triangles(&rows).svg());
        write(&folder.join("things.svg"), &by_things(&rows).svg());
    }
}

fn write(file: &Path, text: &str) {
    std::fs::write(file, text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
}

fn cost(kind: &'static str, count: usize, crowd: Crowd, folder: Option<&Path>) -> Row {
    let (name, catalogue) = (format!("{kind} {count}"), Catalogue::builtin());
    let text = crowd::yard(crowd);
    if let Some(folder) = folder {
        write(&folder.join(format!("{kind}_{count}.ron")), &text);
    }
    let yard = Yard::parse(&text, &name, &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let mut shelf = Shelf::beside(Path::new(""));
    shelf.fetch_for(&yard);
    let begun = Instant::now();
    let night = Night::build(&yard, &catalogue, &shelf).unwrap_or_else(|fault| panic!("{fault}"));
    let built = begun.elapsed().as_secs_f64();
    let camera = Camera::looking(Vec3::new(0.0, 1.6, 90.0), Vec3::new(0.0, 1.4, 0.0), 0.6);
    let begun = Instant::now();
    black_box(expose(&night, &camera, (160, 90), 1, |_| ()));
    let still = begun.elapsed().as_secs_f64();
    let begun = Instant::now();
    black_box(judge::read_all(&night, &yard, &catalogue));
    let read = begun.elapsed().as_secs_f64();
    let triangles = night.triangles();
    println!("{name:<16} {triangles:>10} {built:>10.2} {still:>12.2} {read:>12.2}");
    Row { kind, count, triangles, seconds: built + still + read }
}

fn point(row: &Row, x: f64, label: String) -> Point {
    Point { label, x: [x; 3], y: [row.seconds; 3], mark: Mark::Dot }
}

fn plot(title: &str, x: &str, points: Vec<Point>) -> Points {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    Points {
        title: title.to_owned(),
        note: format!("the night, a still of 160 × 90 and all readings, on {threads} threads"),
        x: Axis::log(x),
        y: Axis::log("time, s"),
        points,
    }
}

/// Bodies of which no two are alike, against those that are.
fn by_triangles(rows: &[Row]) -> Points {
    let all = rows.iter().filter(|row| ["unlike", "figures"].contains(&row.kind));
    let alike = |row: &Row| if row.kind == "figures" { "alike" } else { "unlike" };
    let named = |row: &Row| point(row, f64::from(row.triangles), format!("{} {}", alike(row), row.count));
    plot(
        "Cost against triangles of figures",
        "opaque triangles that stand in the yard, ground included",
        all.map(named).collect(),
    )
}

fn by_things(rows: &[Row]) -> Points {
    let all = rows.iter().filter(|row| ["stations", "cloths", "lamps"].contains(&row.kind));
    let named = |row: &Row| point(row, row.count as f64, format!("{} {}", row.kind, row.count));
    plot("Cost against things", "stations with a cloth each, cloths, lamps of 500 bulbs", all.map(named).collect())
}
