//! Cloths, films, mirrors and panes: where they hang and which way they face.

use super::yards::*;
use gauzelight::geometry::{Built, Outline, Quad, VeilKind, build};
use gauzelight::scene::{Opening, Ridge, Side, Window, Yard};
use glam::Vec3;

fn close(a: Vec3, b: Vec3) {
    assert!(a.distance(b) < 1e-4, "{a} is not {b}");
}

fn flat(built: &Built, wanted: impl Fn(&VeilKind) -> bool) -> Quad {
    let veil = built.veils.iter().find(|v| wanted(&v.kind)).expect("there is one");
    match veil.outline {
        Outline::Flat(quad) => quad,
        other => panic!("{other:?} is not flat"),
    }
}

#[test]
fn a_cloth_faces_the_street_and_turns_counter_clockwise() {
    for (turn, front) in [(0.0, Vec3::Z), (90.0, Vec3::X), (180.0, Vec3::NEG_Z), (-90.0, Vec3::NEG_X)] {
        let built = build(&Yard { cloths: vec![cloth(turn, 0.0)], ..empty() });
        let quad = flat(&built, |k| *k == VeilKind::Cloth(0));
        close(quad.normal(), front);
        close(quad.point(0.5, 1.0), Vec3::new(1.0, 2.4, 3.0));
        close(quad.v, 1.5 * Vec3::Y);
        assert!((quad.area() - 3.0).abs() < 1e-4);
    }
}

#[test]
fn a_cloth_leans_with_its_top_towards_the_side_it_faces() {
    let built = build(&Yard { cloths: vec![cloth(0.0, 30.0)], ..empty() });
    let quad = flat(&built, |k| *k == VeilKind::Cloth(0));
    close(quad.point(0.5, 1.0), Vec3::new(1.0, 2.4, 3.0));
    assert!(quad.point(0.5, 0.0).z < 3.0 && quad.normal().y < -0.49);
}

#[test]
fn a_mirror_shows_its_silvered_side_and_tilts_downwards() {
    let built = build(&Yard { mirrors: vec![mirror(90.0, 0.0), mirror(0.0, 45.0)], ..empty() });
    close(built.mirrors[0].1.normal(), Vec3::X);
    close(built.mirrors[1].1.normal(), Vec3::new(0.0, -1.0, 1.0).normalize());
    close(built.mirrors[1].1.middle(), Vec3::new(0.0, 1.0, 5.0));
}

#[test]
fn glass_and_film_look_outwards_on_every_side() {
    let sides = [(Side::Front, Vec3::Z), (Side::Back, Vec3::NEG_Z), (Side::Left, Vec3::NEG_X), (Side::Right, Vec3::X)];
    for (side, out) in sides {
        let opening = Opening::Window(window("w", side, [1.0, 1.0, 1.2, 0.9]));
        let house = house("h", at(0.0, 0.0, 0.0), [6.0, 4.0, 3.0], gable(Ridge::Along), vec![opening]);
        let built = build(&Yard { houses: vec![house], films: vec![film(Some("w"))], ..empty() });
        let pane = flat(&built, |k| matches!(k, VeilKind::Pane(..)));
        let film = flat(&built, |k| *k == VeilKind::Film(0));
        close(pane.normal(), out);
        close(film.normal(), out);
        close(film.middle(), pane.middle() - 0.03 * out);
        let face = built.place("w").and_then(|p| p.face).expect("a window has a face");
        assert_eq!(face, pane);
        assert!((pane.area() - 1.2 * 0.9).abs() < 1e-4);
        // Four centimetres behind the wall.
        let wall = match side {
            Side::Front => 0.0,
            Side::Back => 4.0,
            Side::Left | Side::Right => 3.0,
        };
        assert!((pane.middle().dot(out) - (wall - 0.04)).abs() < 1e-4);
        // `left` counts from the left end as seen from outside.
        let right = pane.u.normalize();
        let left_end = match side {
            Side::Front | Side::Back => -3.0,
            Side::Left => -4.0,
            Side::Right => 0.0,
        };
        assert!((pane.corner.dot(right) - (left_end + 1.0)).abs() < 1e-4, "{side:?}");
    }
}

#[test]
fn a_free_film_hangs_from_the_middle_of_its_top_edge() {
    let built = build(&Yard { films: vec![film(None)], ..empty() });
    let quad = flat(&built, |k| *k == VeilKind::Film(0));
    close(quad.normal(), Vec3::X);
    close(quad.point(0.5, 1.0), Vec3::new(0.0, 2.0, 0.0));
}

#[test]
fn a_film_without_a_window_keeps_its_name_only() {
    let built = build(&Yard { films: vec![film(Some("nowhere"))], ..empty() });
    assert!(built.place("film").is_some() && built.veils.is_empty());
}

#[test]
fn an_insect_screen_stands_without_glass_too() {
    let bare =
        Window { glazing: gauzelight::scene::Glazing::Unglazed, ..window("w", Side::Front, [1.0, 1.0, 1.0, 1.0]) };
    let screened = Window { screen: Some(gauzelight::scene::Ref::to("screen")), ..bare.clone() };
    for (opening, panes) in [(bare, 0), (screened, 1)] {
        let house = house("h", at(0.0, 0.0, 0.0), [6.0, 4.0, 3.0], gable(Ridge::Along), vec![Opening::Window(opening)]);
        assert_eq!(build(&Yard { houses: vec![house], ..empty() }).veils.len(), panes);
    }
}
