//! Points by tape: closed forms, there and back, and what is refused.

use gauzelight::{
    craft::tapes::{Known, Side, Tape, TapeFault, Taped, by_tapes, by_tapes_and_height, tapes_to},
    units::Length,
};
use glam::DVec3;
use proptest::prelude::*;
use proptest::test_runner::Config;

fn known(name: &str, at: [f64; 3]) -> Known {
    Known { name: name.to_owned(), at: at.into() }
}

fn feet(text: &str) -> f64 {
    Length::parse(text).unwrap().m
}

fn tape(name: &str, at: [f64; 3], m: f64) -> Tape {
    Tape { from: known(name, at), m }
}

fn three(at: [[f64; 3]; 3], m: [f64; 3]) -> [Tape; 3] {
    let names = ["A", "B", "C"];
    [0, 1, 2].map(|k| tape(names[k], at[k], m[k]))
}

#[track_caller]
fn close(found: DVec3, wanted: [f64; 3], within: f64) {
    assert!(found.distance(wanted.into()) <= within, "{found} is not {wanted:?}");
}

/// 2² + 3² + 6² = 7² and 4² + 4² + 7² = 9².
#[test]
fn whole_boxes() {
    let points = [[0.0, 0.0, 0.0], [4.0, 0.0, 0.0], [0.0, 6.0, 0.0]];
    let front = by_tapes(&three(points, [7.0; 3]), &[], Side::FRONT).unwrap();
    close(front.at, [2.0, 3.0, 6.0], 1e-12);
    close(front.mirrored, [2.0, 3.0, -6.0], 1e-12);
    close(by_tapes(&three(points, [7.0; 3]), &[], Side::BACK).unwrap().at, [2.0, 3.0, -6.0], 1e-12);

    // On the ground, the points the other way round, and the upper place.
    let points = [[8.0, 0.0, 0.0], [0.0, 0.0, 0.0], [4.0, 0.0, 8.0]];
    let above = by_tapes(&three(points, [9.0, 9.0, 65f64.sqrt()]), &[], Side::AboveGround(0.0)).unwrap();
    close(above.at, [4.0, 7.0, 4.0], 1e-12);
}

/// Three tapes square to each other: the point moves as the tapes err, 1 for 1.
#[test]
fn square_tapes_move_one_for_one() {
    let points = [[3.0, 0.0, 0.0], [0.0, 4.0, 0.0], [0.0, 0.0, 5.0]];
    let taped = by_tapes(&three(points, [3.0, 4.0, 5.0]), &[], Side::Toward(DVec3::NEG_ONE)).unwrap();
    close(taped.at, [0.0; 3], 1e-12);
    assert!((taped.moves - 1.0).abs() < 1e-9, "{}", taped.moves);
}

/// A tape along x and one at an angle φ to it in the level plane, the height known: the directions have the singular
/// values √(1 ± cos φ) and 1.
#[test]
fn slanting_tapes_move_by_the_closed_form() {
    for degrees in [20.0, 45.0, 70.0, 90.0, 120.0, 160.0] {
        let phi = f64::to_radians(degrees);
        let tapes = [tape("A", [-2.0, 0.0, 0.0], 2.0), tape("B", [-3.0 * phi.cos(), 0.0, -3.0 * phi.sin()], 3.0)];
        let [a, b] = tapes.each_ref().map(|tape| tape.from.at);
        let aside = (b - a).cross(DVec3::Y);
        let taped = by_tapes_and_height(&tapes, 0.0, &[], Side::Toward(aside * -aside.dot(a))).unwrap();
        close(taped.at, [0.0; 3], 1e-12);
        let wanted = 1.0 / (1.0 - phi.cos().abs()).sqrt();
        assert!((taped.moves - wanted).abs() < 1e-9 * wanted, "{degrees}: {} is not {wanted}", taped.moves);
    }
}

/// A nail 4 ft out from the house, by two 5 ft tapes from corners 6 ft apart: twice 3, 4, 5.
#[test]
fn by_hand_in_feet() {
    let tapes = [
        tape("left corner", [0.0, 0.0, 0.0], feet("5'")),
        tape("right corner", [feet("6 ft"), 0.0, 0.0], feet("60 in")),
    ];
    let taped = by_tapes_and_height(&tapes, 0.0, &[], Side::FRONT).unwrap();
    close(taped.at, [feet("3 ft"), 0.0, feet("4 ft")], 1e-12);
    close(taped.mirrored, [feet("3 ft"), 0.0, feet("-4 ft")], 1e-12);
    // The same nail a foot up, by tapes that are longer for it: √26 ft is 5' 1 3/16" to the mark.
    let up = [tape("l", [0.0; 3], feet("5' 1 3/16\"")), tape("r", [feet("6 ft"), 0.0, 0.0], feet("5' 1 3/16\""))];
    let taped = by_tapes_and_height(&up, feet("1 ft"), &[], Side::FRONT).unwrap();
    close(taped.at, [feet("3 ft"), feet("1 ft"), feet("4 ft")], 0.001);
}

/// A lens before a front: 11' from the sill's left end (2, 6, 9), 7' from a post (−2, 3, 6 beside it), 9' from a step.
#[test]
fn by_hand_in_feet_and_inches() {
    let ft = |v: [f64; 3]| v.map(|v| v * 0.3048);
    let points =
        [("sill", [-2.0, 11.0, 0.0], "11'"), ("post", [2.0, 2.0, 3.0], "7' 0\""), ("step", [-7.0, 1.0, 5.0], "108 in")];
    let tapes = points.map(|(name, at, read)| tape(name, ft(at), feet(read)));
    let taped = by_tapes(&tapes, &[], Side::FRONT).unwrap();
    close(taped.at, ft([0.0, 5.0, 9.0]), 1e-12);
    let fourth = tape("gate", ft([0.0, 5.0, 12.0]), feet("3' 1/2\""));
    let misses = by_tapes(&tapes, &[fourth], Side::FRONT).unwrap().misses;
    assert!((misses[0] - 0.0127).abs() < 1e-12, "{misses:?}");
}

#[test]
fn what_cannot_be_is_refused_with_a_remedy() {
    let corner = [[0.0, 0.0, 0.0], [4.0, 0.0, 0.0], [0.0, 3.0, 0.0]];
    // On a circle of 5 m, its middle within.
    let ring = [[-3.0, -4.0, 0.0], [5.0, 0.0, 0.0], [-3.0, 4.0, 0.0]];
    let table: [(&str, Result<Taped, TapeFault>); 18] = [
        ("reads 0 m", by_tapes(&three(corner, [0.0, 1.0, 1.0]), &[], Side::FRONT)),
        ("reads -2 m", by_tapes(&three(corner, [4.0, -2.0, 1.0]), &[], Side::FRONT)),
        ("reads NaN m", by_tapes(&three(corner, [4.0, 4.0, f64::NAN]), &[], Side::FRONT)),
        ("reads inf m", by_tapes(&three(corner, [4.0, 4.0, f64::INFINITY]), &[], Side::FRONT)),
        ("too short to meet, by 0.5 m", by_tapes(&three(corner, [1.5, 2.0, 3.0]), &[], Side::FRONT)),
        (
            "from B goes past all that the tape from A reaches, by 1 m",
            by_tapes(&three(corner, [1.0, 6.0, 3.0]), &[], Side::FRONT),
        ),
        ("each would have to be 0.2 m longer", by_tapes(&three(ring, [4.8; 3]), &[], Side::FRONT)),
        ("lie on one line", by_tapes(&three([[0.0; 3], [1.0, 1.0, 1.0], [3.0, 3.0, 3.0]], [4.0; 3]), &[], Side::FRONT)),
        (
            "lie on one line",
            by_tapes(&three([[0.0; 3], [4.0, 0.0, 0.0], [2.0, 0.01, 0.0]], [4.0; 3]), &[], Side::FRONT),
        ),
        (
            "are the same point",
            by_tapes(&three([[0.0; 3], [0.001, 0.0, 0.0], [2.0, 0.0, 0.0]], [4.0; 3]), &[], Side::FRONT),
        ),
        ("tape error would move the point by", by_tapes(&three(ring, [5.005; 3]), &[], Side::FRONT)),
        ("leave one direction open", by_tapes(&three(ring, [5.0; 3]), &[], Side::FRONT)),
        ("Neither of the two places", by_tapes(&three(corner, [4.0; 3]), &[], Side::LEFT)),
        ("above the ground: (2.00, 1.50, 3.12) m", by_tapes(&three(corner, [4.0; 3]), &[], Side::AboveGround(0.0))),
        ("below the ground", by_tapes(&three(corner, [4.0; 3]), &[], Side::AboveGround(9.0))),
        (
            "too short to reach that height, by 0.5 m",
            by_tapes_and_height(&[tape("A", [0.0; 3], 2.0), tape("B", [1.0, 0.0, 0.0], 2.0)], 2.5, &[], Side::FRONT),
        ),
        (
            "one right above the other",
            by_tapes_and_height(&[tape("A", [0.0; 3], 2.0), tape("B", [0.0, 1.0, 0.0], 2.0)], 1.0, &[], Side::FRONT),
        ),
        (
            "The height reads NaN m",
            by_tapes_and_height(
                &[tape("A", [0.0; 3], 2.0), tape("B", [1.0, 0.0, 0.0], 2.0)],
                f64::NAN,
                &[],
                Side::FRONT,
            ),
        ),
    ];
    for (says, result) in table {
        let fault = result.expect_err(says);
        assert!(fault.to_string().contains(says), "{fault}, not {says}");
        assert!(fault.remedy().ends_with('.') && fault.remedy().len() > 20);
    }
}

/// With tapes as much longer as is said, they just meet.
#[test]
fn what_lacks_is_what_it_takes() {
    let points = [[0.0, 0.0, 0.0], [4.0, 0.5, 0.0], [1.0, 3.0, 1.0]];
    let short = [2.1, 2.15, 2.05];
    let Err(TapeFault::NoMeeting { by }) = by_tapes(&three(points, short), &[], Side::FRONT) else { panic!() };
    assert!(by > 0.0);
    let meets = |more: f64| by_tapes(&three(points, short.map(|m| m + by + more)), &[], Side::FRONT);
    assert!(matches!(meets(-1e-6), Err(TapeFault::NoMeeting { by }) if (by - 1e-6).abs() < 1e-9));
    assert!(matches!(meets(1e-6), Err(TapeFault::Loose { .. })));
    assert!(meets(0.2).is_ok());
}

fn any_point() -> impl Strategy<Value = [f64; 3]> {
    [-10.0..10.0f64, 0.0..6.0, -10.0..10.0]
}

proptest! {
    #![proptest_config(Config { cases: 1000, max_global_rejects: 4000, ..Config::default() })]

    #[test]
    fn a_point_comes_back_by_three_tapes(points in [any_point(), any_point(), any_point()], at in any_point()) {
        let at = DVec3::from(at);
        let pegs = [0, 1, 2].map(|k| known(["A", "B", "C"][k], points[k]));
        let tapes: [Tape; 3] = tapes_to(at, &pegs).try_into().unwrap();
        let [a, b, c] = points.map(DVec3::from);
        let normal = (b - a).cross(c - a);
        let side = Side::Toward(normal * normal.dot(at - a).signum());
        match by_tapes(&tapes, &[], side) {
            Ok(taped) => {
                prop_assert!(taped.at.distance(at) < 1e-9, "{at} came to {}", taped.at);
                for tape in &tapes {
                    prop_assert!((tape.from.at.distance(taped.mirrored) - tape.m).abs() < 1e-9);
                }
                // A little error on the tapes moves the point as is said, at most.
                let mut erring = tapes.clone();
                for (tape, error) in erring.iter_mut().zip([1e-6, -2e-6, 2e-6]) {
                    tape.m += error;
                }
                let moved = by_tapes(&erring, &[], side).map_or(0.0, |taped| taped.at.distance(at));
                prop_assert!(moved < 3e-6 * taped.moves * 1.01 + 1e-9, "moved {moved}, said {}", taped.moves);
                prop_assert!(taped.moves >= 1.0 - 1e-9);
            }
            Err(TapeFault::Loose { .. } | TapeFault::OnALine { .. } | TapeFault::NoMeeting { .. }) => {
                // Only where the volume of the three directions is small indeed.
                let ways = tapes.each_ref().map(|tape| (at - tape.from.at).normalize());
                let volume = ways[0].dot(ways[1].cross(ways[2])).abs();
                prop_assert!(volume < 0.2, "refused with a volume of {volume}");
                return Err(TestCaseError::reject("tapes too nearly in one plane"));
            }
            Err(fault) => prop_assert!(false, "{fault}"),
        }
    }

    #[test]
    fn a_point_comes_back_by_two_tapes_and_its_height(points in [any_point(), any_point()], at in any_point()) {
        let at = DVec3::from(at);
        let tapes: [Tape; 2] = tapes_to(at, &[known("A", points[0]), known("B", points[1])]).try_into().unwrap();
        let along = DVec3::from(points[1]) - DVec3::from(points[0]);
        let aside = along.with_y(0.0).cross(DVec3::Y);
        let side = Side::Toward(aside * aside.dot(at - DVec3::from(points[0])).signum());
        match by_tapes_and_height(&tapes, at.y, &[], side) {
            Ok(taped) => prop_assert!(taped.at.distance(at) < 1e-9, "{at} came to {}", taped.at),
            Err(TapeFault::Loose { .. }) => return Err(TestCaseError::reject("tapes too nearly in line")),
            Err(fault) => prop_assert!(false, "{fault}"),
        }
    }
}
