//! Points by tape, against a general least squares.
//!
//! `data/tapes.json` was made once by SciPy 1.17 (`optimize.least_squares`); `data/tapes.py` beside it made it and says how.

#![allow(clippy::unwrap_used, reason = "a check that cannot be set up has failed")]

use gauzelight::craft::tapes::{Known, Side, Tape, by_tapes, by_tapes_and_height};
use glam::DVec3;
use serde::Deserialize;

#[derive(Deserialize)]
struct Data {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    points: Vec<[f64; 3]>,
    tapes: Vec<f64>,
    height: Option<f64>,
    side: [f64; 3],
    at: [f64; 3],
    moves: f64,
}

#[test]
fn the_points_are_those_of_a_general_solver() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/outside/data/tapes.json");
    let data: Data = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    assert!(data.cases.len() >= 10);
    for case in data.cases {
        let tape =
            |(at, m): (&[f64; 3], &f64)| Tape { from: Known { name: format!("{at:?}"), at: (*at).into() }, m: *m };
        let tapes: Vec<Tape> = case.points.iter().zip(&case.tapes).map(tape).collect();
        let side = Side::Toward(case.side.into());
        let taped = match case.height {
            None => by_tapes(&tapes.try_into().unwrap(), &[], side),
            Some(height) => by_tapes_and_height(&tapes.try_into().unwrap(), height, &[], side),
        };
        let taped = taped.unwrap_or_else(|fault| panic!("{}: {fault}", case.name));
        let apart = taped.at.distance(DVec3::from(case.at));
        assert!(apart < 1e-8, "{}: {} is {apart} m off", case.name, taped.at);
        let ratio = taped.moves / case.moves;
        assert!((ratio - 1.0).abs() < 1e-5, "{}: {} against {}", case.name, taped.moves, case.moves);
    }
}
