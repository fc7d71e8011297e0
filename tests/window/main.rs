//! The window, opened on a virtual display and worked with pointer and keys as a person would.
#![cfg(all(feature = "viewer", target_os = "linux"))]

mod hands;
mod kept;
mod monkey;
mod stage;

use stage::{Stage, changed, mean};
use std::{cell::Cell, time::Duration};

/// The picture between rail and card, below the bar and above the strip.
const MIDDLE: [u32; 4] = [240, 60, 700, 660];

#[test]
fn the_window_opens_and_obeys() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(mut stage) = Stage::set(folder.path(), folder.path()) else { return };
    let sky = [600, 60, 40, 30];
    let opened = stage.wait_for("a picture", |now| mean(now, sky) > 8.0);
    if stage.window.0.try_wait().expect("the window can be asked").is_some() {
        panic!("the window closed by itself");
    }
    stage.focus();
    stage.act(&["key", "2"]);
    let kerb = stage.wait_for("the kerb", |now| changed(&opened, now, MIDDLE) > 0.2);
    stage.act(&["key", "f"]);
    let coloured = stage.wait_for("false colour", |now| changed(&kerb, now, MIDDLE) > 0.5);
    stage.act(&["key", "f"]);
    stage.wait_for("plain again", |now| changed(&coloured, now, MIDDLE) > 0.5);

    // A click on a tile opens the card; a drag and the wheel over the card leave the picture alone.
    stage.act(&["mousemove", "150", "70", "click", "1"]);
    let card = [970, 60, 290, 300];
    let with_card = stage.wait_for("a card", |now| changed(&kerb, now, card) > 0.5);
    std::thread::sleep(Duration::from_secs(3));
    let before = stage.picture();
    stage.drag([1120, 300], [1000, 330]);
    stage.act(&["click", "4", "click", "4"]);
    std::thread::sleep(Duration::from_secs(2));
    let after = stage.picture();
    assert!(changed(&before, &after, [300, 60, 600, 600]) < 0.02, "the picture moved under a card");
    stage.act(&["key", "Escape"]);
    stage.wait_for("no card", |now| changed(&with_card, now, card) > 0.5);

    // A drag on the picture turns it.
    let still = stage.picture();
    stage.drag([640, 400], [480, 420]);
    stage.wait_for("a turn", |now| changed(&still, now, MIDDLE) > 0.08);
}

#[test]
fn a_question_holds_back_what_lies_beside_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(stage) = Stage::set(folder.path(), folder.path()) else { return };
    stage.wait_for("a picture", |now| mean(now, [600, 60, 40, 30]) > 8.0);
    stage.wait_for_numbers();
    stage.focus();
    stage.act(&["key", "Escape"]);
    // In false colour the picture is so bright that a card before it shows.
    let dark = stage.picture();
    stage.act(&["key", "f"]);
    let looks = Cell::new(0);
    let without = stage.wait_for("false colour", |now| {
        let coloured = changed(&dark, now, MIDDLE) > 0.5;
        looks.set(looks.get() + 1);
        // A window that has just come may not have the keys yet.
        if !coloured && looks.get() % 100 == 0 {
            stage.focus();
            stage.act(&["key", "f"]);
        }
        coloured
    });
    let (card, beside) = ([940, 60, 320, 110], [1080, 60, 180, 40]);
    // A card with a working question holds it back as well: the help, the five questions, a file to open.
    for (key, shown) in [("F1", [440, 200, 400, 400]), ("q", [440, 200, 400, 200]), ("ctrl+o", [440, 300, 400, 100])] {
        stage.act(&["key", key]);
        let with = stage.wait_for(key, |now| changed(&without, now, shown) > 0.5);
        stage.act(&["mousemove", "150", "70", "sleep", "0.3", "click", "1", "sleep", "2"]);
        assert!(changed(&with, &stage.picture(), beside) < 0.02, "a click went past what {key} opens");
        stage.act(&["key", "Escape"]);
        stage.wait_for("nothing over it", |now| changed(&with, now, shown) > 0.5);
    }
    stage.act(&["mousemove", "150", "70", "click", "1"]);
    stage.wait_for("a card", |now| changed(&without, now, card) > 0.1);
    stage.act(&["key", "space", "sleep", "1", "key", "ctrl+o", "sleep", "1", "type", "--args", "1", "any.ron"]);
    stage.act(&["sleep", "1", "key", "Return"]);
    // Its first button is warm.
    stage.wait_for("the question", |now| mean(now, [424, 418, 4, 16]) > 100.0);
    let before = stage.picture();
    let leaf = ["mousemove", "1056", "133", "sleep", "0.3", "click", "1", "sleep", "2"];
    stage.act(&leaf);
    assert!(changed(&before, &stage.picture(), card) < 0.02, "a click went past the question");
    stage.act(&["key", "Escape", "sleep", "1"]);
    let answered = stage.picture();
    stage.act(&leaf);
    stage.wait_for("another leaf", |now| changed(&answered, now, card) > 0.02);
}
