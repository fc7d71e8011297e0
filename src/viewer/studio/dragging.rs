//! Drags, two hundred steps each: the picture and the numbers of every frame are of one state of the yard.

use super::{Act, Studio};
use crate::{
    command::Stage,
    viewer::hands::{Grip, Step},
};
use gauzelight::light::EyeRay;
use glam::Vec3;
use std::{sync::Arc, time::Duration};

const STEPS: usize = 200;
/// A guard against waiting for ever, however busy the machine is: so many waits.
const HANGS: usize = 100_000;

fn studio() -> Studio {
    let mut studio = Studio::new(Stage::demo().unwrap(), false).unwrap();
    while studio.readings.all.is_empty() {
        studio.keep_step().unwrap();
        std::thread::sleep(Duration::from_millis(5));
    }
    studio
}

/// Straight down onto a place, so that a drag along the ground goes where it is pointed.
fn above(x: f32, z: f32) -> Step {
    let ray = EyeRay { from: Vec3::new(x, 30.0, z), along: Vec3::NEG_Y, width: 0.0 };
    Step { ray, upright: false, through: false, free: true }
}

/// Drags a thing to and fro until the yard has been built so often; how many frames showed an older state than the document's, and
/// how often it was built.
fn drag(name: &str, until: u64) -> (usize, u64) {
    let mut studio = studio();
    studio.act(Act::Choose(Some(name.to_owned()))).unwrap();
    let start = studio.item().unwrap().points()[0];
    let from = Vec3::new(start[0] as f32, start[1] as f32, start[2] as f32);
    studio.act(Act::Grip(Grip::Body(from))).unwrap();
    let mut behind = 0;
    let station = studio.station();
    let mut moved = 0.0f32;
    for step in 0..HANGS {
        if step >= STEPS && studio.lighting.revision.built > until {
            break;
        }
        moved += if step % 50 < 25 { 0.02 } else { -0.02 };
        studio.act(Act::Drag(Some(above(from.x + moved, from.z)))).unwrap();
        studio.keep_step().unwrap();
        let shown = &studio.lighting.yard;
        let state = Arc::ptr_eq(shown, studio.history.yard());
        behind += usize::from(!state);
        // The numbers on the card are those of the picture: of the same change of the light, or the one before.
        if station.is_some() {
            let (of, light) = (studio.readings.newest(), studio.lighting.revision.light);
            assert!(light - of <= 1, "{name}, step {step}: numbers of {of}, picture of {light}");
        }
        // A frame of the window.
        std::thread::sleep(Duration::from_millis(15));
    }
    let built = studio.lighting.revision.built - 1;
    studio.act(Act::Drag(None)).unwrap();
    // One drag is one step back, and after it all is quiet again as it was.
    studio.act(Act::Undo).unwrap();
    assert_eq!(studio.item().unwrap().points()[0], start, "{name}");
    assert!(studio.history.can_undo().is_none(), "{name}: one drag is one step");
    for _ in 0..HANGS {
        studio.keep_step().unwrap();
        if studio.lighting.night.thorough && Arc::ptr_eq(&studio.lighting.yard, studio.history.yard()) {
            return (behind, built);
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    panic!("{name}: the yard was not built thoroughly once all was quiet");
}

#[test]
fn stations_cloths_and_lamps_are_shown_in_the_frame_that_moves_them() {
    for name in ["Shed wall", "net", "street lamp"] {
        assert_eq!(drag(name, 0), (0, 0), "{name}");
    }
}

#[test]
fn what_must_be_built_again_is_shown_as_it_was_until_it_is() {
    let (behind, built) = drag("shed", 2);
    assert!(built >= 2, "a house is shown where it was dragged to, now and then");
    println!("shed: built {built} times, while {behind} frames show an older state");
}

#[test]
fn a_preview_is_shown_and_leaves_no_trace() {
    let mut studio = studio();
    studio.act(Act::Choose(Some("net".to_owned()))).unwrap();
    let before = studio.history.yard().to_text();
    let sheer = studio.item().unwrap().with_entry("fabric", 0, "white sheer").unwrap();
    studio.act(Act::Preview(Some(gauzelight::edit::Edit::Change(sheer)))).unwrap();
    studio.keep_step().unwrap();
    assert!(studio.lighting.yard.to_text().contains("white sheer"));
    studio.act(Act::Preview(None)).unwrap();
    studio.keep_step().unwrap();
    assert_eq!(studio.lighting.yard.to_text(), before);
    assert!(studio.history.is_saved() && studio.history.can_undo().is_none());
}

#[test]
fn what_would_lose_changes_asks_first() {
    let mut studio = studio();
    studio.act(Act::Switch(0)).unwrap();
    studio.act(Act::Quit).unwrap();
    assert!(!studio.over && studio.asking.is_some());
    studio.act(Act::Close).unwrap();
    assert!(studio.asking.is_none());
    studio.act(Act::Undo).unwrap();
    studio.act(Act::Quit).unwrap();
    assert!(studio.over, "nothing is lost once it is undone");
}
