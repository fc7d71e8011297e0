//! From nothing to a lit window, as a newcomer builds it: pointer and keys only, every action counted.

use super::stage::{LOOKS, Stage, changed, mean};
use gauzelight::scene::{Aim, Catalogue, Yard};
use std::{path::Path, time::Duration};

/// More than these a first window must not take.
const MOST: usize = 25;

/// What a hand does, counted.
struct Hand {
    stage: Stage,
    actions: usize,
}

impl Hand {
    fn click(&mut self, [x, y]: [i32; 2]) {
        self.actions += 1;
        self.stage.act(&["mousemove", &x.to_string(), &y.to_string()]);
        pause(250);
        self.stage.act(&["click", "1"]);
        pause(700);
    }

    /// A click, and a look until it has changed this part of the window: a hand waits for what it sees, however slow the machine.
    fn opens(&mut self, at: [i32; 2], part: [u32; 4]) {
        let before = self.stage.picture();
        self.click(at);
        self.stage.wait_for("what a click opens", |now| changed(&before, now, part) > 0.02);
    }

    fn drag(&mut self, from: [i32; 2], to: [i32; 2]) {
        self.actions += 1;
        self.stage.drag(from, to);
        pause(700);
    }

    fn key(&mut self, key: &str) {
        self.actions += 1;
        self.stage.act(&["key", key]);
        pause(700);
    }

    /// With Ctrl, held as long as a hand does.
    fn ctrl(&mut self, key: &str) {
        self.actions += 1;
        self.held(key);
        pause(700);
    }

    fn write(&mut self, text: &str) {
        self.actions += 1;
        self.held("a");
        self.stage.act(&["type", "--delay", "25", text]);
        pause(700);
    }

    fn held(&self, key: &str) {
        self.stage.act(&["keydown", "ctrl"]);
        pause(200);
        self.stage.act(&["key", key]);
        pause(200);
        self.stage.act(&["keyup", "ctrl"]);
    }
}

fn pause(ms: u64) {
    std::thread::sleep(Duration::from_millis(ms));
}

/// The yard's name in the bar, the first thing of its menu, and so on, at 1280 × 800.
mod place {
    pub const YARD: [i32; 2] = [90, 20];
    pub const EMPTY_FRONT: [i32; 2] = [67, 181];
    pub const LAST_OPENED: [i32; 2] = [70, 340];
    pub const BUILD: [i32; 2] = [454, 471];
    pub const LIGHT_IT: [i32; 2] = [1000, 133];
    pub const AIM: [i32; 2] = [519, 438];
    pub const AIM_THERE: [i32; 2] = [497, 448];
    pub const FILM: [i32; 2] = [490, 470];
    pub const HOW_IT_IS_SET: [i32; 2] = [1056, 133];
    pub const FABRIC: [i32; 2] = [1168, 182];
    pub const SECOND_FILM: [i32; 2] = [1075, 230];

    /// Where the yard's menu, a question, a card and a list in it open: x, y, width, height.
    pub const MENU: [u32; 4] = [20, 60, 100, 290];
    pub const QUESTION: [u32; 4] = [400, 440, 110, 50];
    pub const CARD: [u32; 4] = [940, 150, 310, 150];
    pub const LIST: [u32; 4] = [1000, 215, 150, 60];
}

fn read(file: &Path) -> Yard {
    Yard::open(file, &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

fn wait_for_file(file: &Path) {
    // So often that only a window that hangs gets to the end.
    for _ in 0..LOOKS {
        if file.exists() {
            return;
        }
        pause(100);
    }
    panic!("{} was not written", file.display());
}

#[test]
fn from_nothing_to_a_lit_window() {
    let folder = tempfile::tempdir().expect("a folder");
    let Some(stage) = Stage::set(folder.path(), folder.path()) else { return };
    let sky = [600, 60, 40, 30];
    stage.wait_for("a picture", |now| mean(now, sky) > 8.0);
    stage.wait_for_numbers();
    stage.focus();

    let file = folder.path().join("mine.ron");
    let mut hand = Hand { stage, actions: 0 };
    hand.opens(place::YARD, place::MENU);
    hand.opens(place::EMPTY_FRONT, place::QUESTION);
    hand.click(place::BUILD);
    // Its button is warm.
    hand.stage.wait_for("the card of a window", |now| mean(now, [942, 126, 10, 14]) > 100.0);
    hand.click(place::LIGHT_IT);
    // The figure's light in the window, left of the middle.
    hand.stage.wait_for("a lit window", |now| mean(now, [490, 410, 50, 60]) > 60.0);
    hand.drag(place::AIM, place::AIM_THERE);
    hand.opens(place::FILM, place::CARD);
    hand.opens(place::HOW_IT_IS_SET, place::CARD);
    hand.opens(place::FABRIC, place::LIST);
    hand.opens(place::SECOND_FILM, place::LIST);
    hand.ctrl("s");
    hand.write(&file.display().to_string());
    hand.key("Return");
    wait_for_file(&file);
    eprintln!("{} actions from nothing to a saved yard", hand.actions);
    assert!(hand.actions <= MOST, "{} actions", hand.actions);

    let yard = read(&file);
    assert_eq!((yard.walls.len(), yard.walls[0].openings.len()), (1, 2));
    assert_eq!(yard.films[0].fabric.0, "rear film, white");
    assert!(matches!(yard.stations[0].aim, Aim::At(_)), "the aim was dragged: {:?}", yard.stations[0].aim);
    assert_eq!(yard.stations[0].projector.0, "mini LED");

    // Opened again and saved again, it is the same to the byte.
    let saved = std::fs::read(&file).expect("a file");
    hand.opens(place::YARD, place::MENU);
    hand.click(place::LAST_OPENED);
    std::fs::remove_file(&file).expect("a file to remove");
    hand.ctrl("s");
    wait_for_file(&file);
    pause(300);
    assert_eq!(std::fs::read(&file).expect("a file"), saved);
}
