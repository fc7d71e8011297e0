//! Maps from a wall to its photo, against a general computer vision library and a worked example.
//!
//! `data/square_up.json` was made once by OpenCV 5.0 (`findHomography`), checked by SciPy; `data/square_up.py` beside it
//! made it and says how.

#![allow(clippy::unwrap_used, reason = "a check that cannot be set up has failed")]

use gauzelight::geometry::square_up::{Mark, SquareUp};
use glam::DVec2;
use serde::Deserialize;

#[derive(Deserialize)]
struct Data {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    /// Spread of the clicks, px.
    noise: f64,
    marks: Vec<Pair>,
    grid: Vec<Pair>,
}

#[derive(Deserialize)]
struct Pair {
    photo: [f64; 2],
    wall: [f64; 2],
}

impl Pair {
    fn mark(&self) -> Mark {
        Mark { photo: self.photo.into(), wall: self.wall.into() }
    }
}

fn cases() -> Vec<Case> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/outside/data/square_up.json");
    serde_json::from_str::<Data>(&std::fs::read_to_string(path).unwrap()).unwrap().cases
}

fn settle(case: &Case) -> SquareUp {
    let marks: Vec<Mark> = case.marks.iter().map(Pair::mark).collect();
    SquareUp::new(&marks).unwrap_or_else(|fault| panic!("{}: {fault}", case.name))
}

/// Asked for is a tenth of a pixel; what is left is the library's own 32-bit floats.
#[test]
fn the_map_is_the_library_s() {
    let cases = cases();
    assert!(cases.len() >= 8);
    for case in &cases {
        let square_up = settle(case);
        assert!(case.grid.len() >= 30);
        for place in &case.grid {
            let Mark { photo, wall } = place.mark();
            let found = square_up.photo_from_wall(wall).unwrap();
            assert!(found.distance(photo) < 0.01, "{}: {wall} comes to {found}, not {photo}", case.name);
            let back = square_up.wall_from_photo(found).unwrap();
            assert!(back.distance(wall) < 1e-8, "{}: {wall} comes back to {back}", case.name);
        }
    }
}

/// Four corners map exactly; more than four show about the noise that was put on them.
#[test]
fn the_fit_tells_the_noise() {
    for case in cases() {
        let fit = settle(&case).fit().clone();
        match fit.spread() {
            None => {
                assert_eq!(case.marks.len(), 4);
                assert!(fit.misses.iter().all(|miss| miss.photo < 1e-8 && miss.wall < 1e-9), "{}: {fit:?}", case.name);
            }
            Some(spread) => {
                // Chi-square with as many degrees as there are spare numbers: 4 at least, 99.9 % of which lie within.
                assert!((0.15..2.2).contains(&(spread / case.noise)), "{}: {spread}", case.name);
                assert!(fit.misses.iter().all(|miss| miss.photo < 4.0 * case.noise), "{}: {fit:?}", case.name);
                assert_eq!(fit.suspect, None, "{}", case.name);
            }
        }
    }
}

/// The unit square to the corners (0,0) (4,0) (3,2) (1,2): by the eight equations of which answers.opencv.org/answers/5019
/// gives the rows, H = [[4,2,0],[0,4,0],[0,1,1]]; its middle comes to where the diagonals of the corners cross. The photo
/// counts downwards, so the second coordinate is turned.
#[test]
fn a_worked_example() {
    let corners =
        [((0.0, 0.0), (0.0, 0.0)), ((1.0, 0.0), (4.0, 0.0)), ((1.0, 1.0), (3.0, -2.0)), ((0.0, 1.0), (1.0, -2.0))];
    let marks = corners.map(|(wall, photo)| Mark { photo: photo.into(), wall: wall.into() });
    let square_up = SquareUp::new(&marks).unwrap();
    for (wall, photo) in
        [((0.5, 0.5), (2.0, -4.0 / 3.0)), ((0.25, 0.5), (4.0 / 3.0, -4.0 / 3.0)), ((0.5, 0.25), (2.0, -0.8))]
    {
        let found = square_up.photo_from_wall(DVec2::from(wall)).unwrap();
        assert!(found.distance(photo.into()) < 1e-12, "{found}");
    }
    let area = square_up.pixels_per_metre(DVec2::splat(0.5)).unwrap().powi(2);
    assert!((area - 16.0 / 1.5f64.powi(3)).abs() < 1e-11, "{area}");
}
