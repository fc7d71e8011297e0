//! What a yard costs against how much is in it: the night, a small still and the readings, over triangles, cloths, lamps and stations.
//! Printed as a table, not asserted. With `GAUZELIGHT_CROWDS=FOLDER` the
//! yards are written there as well, for the commands to be tried on.

mod crowd;

use crowd::Crowd;
use gauzelight::{
    frames::Shelf,
    judge,
    light::Night,
    picture::{Camera, expose},
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{hint::black_box, path::Path, time::Instant};

fn main() {
    let folder = std::env::var_os("GAUZELIGHT_CROWDS");
    let catalogue = Catalogue::builtin();
    let steps = [1, 10, 30, 100, 300, 1000];
    let few = |most: usize| steps.into_iter().filter(move |n| *n <= most);
    let mut rows: Vec<(String, Crowd)> = Vec::new();
    rows.extend(few(100).map(|n| (format!("houses {n}"), Crowd { houses: n, ..Crowd::default() })));
    rows.extend(few(100).map(|n| (format!("figures {n}"), Crowd { figures: n, ..Crowd::default() })));
    rows.extend(few(1000).map(|n| (format!("trees {n}"), Crowd { trees: n, ..Crowd::default() })));
    rows.extend(few(1000).map(|n| (format!("cloths {n}"), Crowd { cloths: n, ..Crowd::default() })));
    rows.extend(few(1000).map(|n| (format!("lamps {n}"), Crowd { lamps: n, bulbs: 500, ..Crowd::default() })));
    rows.extend(few(300).map(|n| (format!("stations {n}"), Crowd { stations: n, cloths: n, ..Crowd::default() })));
    println!("{:<16} {:>10} {:>10} {:>12} {:>12}", "", "triangles", "night, s", "160 × 90, s", "readings, s");
    for (name, crowd) in rows {
        let text = crowd::yard(crowd);
        if let Some(folder) = &folder {
            let file = Path::new(folder).join(format!("{}.ron", name.replace(' ', "_")));
            std::fs::write(&file, &text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
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
        println!("{name:<16} {:>10} {built:>10.2} {still:>12.2} {read:>12.2}", night.solids.len());
    }
}
