//! The lists themselves. All of it is common practice, no source.

use super::{Moment, Task};
use crate::craft::{cautions::Caution, is_outdoors};
use crate::scene::{Catalogue, Idle, Mount, PaneKind, ProjectorClass, Shelter, Station, Wakes, Yard, YesNo};

/// Height of a lens from which work on it is work on a ladder, m, where the yard says nothing else.
const LADDER_M: f64 = 2.0;

/// What a station asks for over a season; nothing for one of an unknown class.
pub fn tasks(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Vec<Task> {
    let Some(class) = yard.projector(catalogue, &station.projector.0) else { return Vec::new() };
    let mut list = List { tasks: Vec::new(), ladder: ladder(yard, catalogue, station) };
    before(&mut list, class);
    first_night(&mut list, station, class);
    each_evening(&mut list, yard, station, class);
    weekly(&mut list, yard, station);
    take_down(&mut list, yard, station, class);
    list.tasks.sort_by_key(|task| task.when);
    list.tasks
}

struct List {
    tasks: Vec<Task>,
    ladder: Option<String>,
}

impl List {
    fn add(&mut self, when: Moment, text: impl Into<String>) {
        self.tasks.push(Task { when, text: text.into(), caution: None });
    }

    fn beware(&mut self, when: Moment, text: impl Into<String>, caution: &str) {
        self.tasks.push(Task { when, text: text.into(), caution: Some(caution.to_owned()) });
    }

    /// Work at the station itself, which may stand high.
    fn at_it(&mut self, when: Moment, text: impl Into<String>) {
        let caution = self.ladder.clone();
        self.tasks.push(Task { when, text: text.into(), caution });
    }

    /// Work at the station itself that would fall into the dark; where it stands high, what is done instead.
    fn at_it_by_night(&mut self, when: Moment, text: &str, high: &str) {
        self.at_it(when, if self.ladder.is_some() { high } else { text });
    }
}

fn ladder(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<String> {
    let from = yard.limit(catalogue, crate::scene::limits::LADDER).map_or(LADDER_M, |limit| limit.value);
    let climbed = station.mount != Mount::Shelf || is_outdoors(yard, station);
    (climbed && station.at.0[1].m > from)
        .then(|| format!("work on a ladder: {}; {}", Caution::Ladder.short(), Caution::OverheadLines.short()))
}

/// What nobody knows of the class is tried; what is known and bad is dealt with.
fn before(list: &mut List, class: &ProjectorClass) {
    let when = Moment::Before;
    match class.wakes {
        // A hot lamp that loses its fan bursts.
        Wakes::Unknown if class.cools_s > 0.0 || class.lamp_hours.is_some() => list.add(when, "Switch it off by its button, let it cool until its fan stops, cut its power at the outlet for a minute and give it back: does it start by itself?"),
        Wakes::Unknown => list.add(when, "Pull the plug while it plays, wait a minute, put it back: does it start by itself?"),
        Wakes::ByRemote => list.add(when, "It waits for a button when power returns: look in its menu for starting with the mains, or plan who presses it"),
        Wakes::ByItself => {}
    }
    match class.loops {
        YesNo::Unknown => list.add(when, "Let it play one file for an hour: does it begin anew by itself, without a gap or a bar across the picture?"),
        YesNo::No => list.add(when, "It does not loop by itself: give it a player that does, or one file as long as the evening"),
        YesNo::Yes => {}
    }
    match class.shows {
        Idle::Unknown => list.add(when, "In a dark room, start it and then pull its signal: what does it throw? A black picture as background keeps blue and menus away"),
        Idle::Logo | Idle::Menu => list.add(when, "It shows a sign or a menu at its start: set a black start picture, or start it before dusk with a cap on"),
        Idle::BlueRectangle => list.add(when, "It throws a blue rectangle when nothing comes in: set its background to black, and let the player send black rather than nothing"),
        Idle::Nothing => {}
    }
    match class.holds_focus {
        YesNo::Unknown => list.add(when, "Focus it cold, let it run for an hour and look again: has the focus moved?"),
        YesNo::No => {
            list.add(when, "Its focus drifts as it warms: focus it after half an hour, and hold the ring with tape")
        }
        YesNo::Yes => {}
    }
    if let Some(watts) = class.usb_w {
        list.add(
            when,
            format!(
                "Its USB outlet gives about {} W: try whether player or fan run off it, and whether they start with it",
                watts.0
            ),
        );
    }
    list.add(when, "Switch off its auto keystone, sleep timer and eco mode, and note every setting on the sheet");
}

fn first_night(list: &mut List, station: &Station, class: &ProjectorClass) {
    let when = Moment::FirstNight;
    list.beware(
        when,
        "Plug everything in at a GFCI outlet (residual-current device) and press its test button",
        "joints off the ground and covered; local rules and licensed people come first",
    );
    list.at_it_by_night(
        when,
        "Start it, wait until it is warm, then aim: corners and figure where the sheet says, focus on the figure",
        "At dusk, while there is light to climb by, or from below: start it, wait until it is warm, then aim: corners and figure \
         where the sheet says, focus on the figure",
    );
    list.add(when, "Walk to every viewing spot and to the street: is the lens in anybody's eyes?");
    if station.shelter.is_some() {
        list.add(when, "After an hour lay a thermometer in its box and write down what it reads");
    }
    if class.cools_s > 0.0 {
        list.add(
            when,
            format!("Time its cooling: its fan should run about {:.0} s after it is switched off", class.cools_s),
        );
    }
    list.at_it_by_night(
        when,
        "Mark feet, mount and focus with tape or paint, so that a knock shows",
        "By day: mark feet, mount and focus with tape or paint, so that a knock shows",
    );
    list.add(when, "Photograph the picture from the best spot, to know later what it looked like");
}

fn each_evening(list: &mut List, yard: &Yard, station: &Station, class: &ProjectorClass) {
    let when = Moment::EachEvening;
    if class.wakes == Wakes::ByRemote {
        list.add(when, "Start it by its button, well before visitors come");
    } else {
        list.add(when, "Look whether it has started");
    }
    let pane = station.shelter.as_ref().is_some_and(|shelter| shelter.window.pane != PaneKind::Open);
    if pane {
        list.at_it_by_night(
            when,
            "Wipe dew and dirt off the window of its box, after it has run for half an hour",
            "By day: wipe dirt off the window of its box; of dew look from below whether it has gone after half an hour",
        );
    } else {
        list.at_it_by_night(
            when,
            "Look for dew on its lens: let it run warm, do not wipe",
            "From below: does its picture look dull with dew? Let it run warm, nobody goes up in the dark",
        );
    }
    list.add(when, "Look whether the picture still stands where it was set");
    if class.cools_s > 0.0 {
        list.beware(
            when,
            format!("Switch it off by its button, and cut the power only {:.0} s later", class.cools_s),
            "a hot lamp without its fan bursts or ages fast: no timer straight on its mains",
        );
    } else {
        list.add(when, "Switch it off, or look whether the timer has");
    }
    if station.shelter.is_none() && is_outdoors(yard, station) {
        list.beware(
            when,
            if list.ladder.is_some() {
                "Carry it in by day before rain comes, or give it a box: nobody goes up for it in the dark"
            } else {
                "Carry it in, or cover it once it is cool"
            },
            "it has no box: never leave it out in rain or dew under power",
        );
    }
}

fn weekly(list: &mut List, yard: &Yard, station: &Station) {
    let when = Moment::Weekly;
    list.at_it(when, "Take webs off the lens, its window and the beam close to it");
    if let Some(shelter) = &station.shelter {
        box_weekly(list, shelter);
    }
    list.at_it(when, "Blow dust off its own filter and grilles");
    list.add(when, "Hold the picture against the photo of the first night: drifted aim, dimmer light, soft focus");
    match station.mount {
        Mount::Ground => list.add(when, "Look for puddles, leaves and animals around it"),
        Mount::Stand => list.add(when, "Tighten the stand, and weigh it down anew"),
        Mount::Shelf => list.add(when, "Look that nothing has been set before it, and that its air gets out"),
        Mount::Wall | Mount::Hung => list.at_it(when, "Tighten screws and clamps; pull at the second tie"),
        Mount::Tree => list.at_it(when, "Loosen or move its strap as the branch asks; pull at the second tie"),
    }
    if let Some(cloth) = lit_cloth(yard, station) {
        list.beware(
            when,
            format!("Look over {cloth}: loose ties, tears, a hem that has come down, sagging"),
            "take it down before a storm, and free birds or animals from net at once",
        );
    }
    if !station.mirrors.is_empty() {
        list.add(when, "Clean its mirrors and look whether they have turned");
    }
}

fn box_weekly(list: &mut List, shelter: &Shelter) {
    let when = Moment::Weekly;
    if shelter.fan.is_some() {
        list.at_it(when, "Listen to the fan of its box and feel its air");
    }
    if shelter.filter {
        list.at_it(when, "Clean or change the filter of its box: a dusty one may stop most of the air");
    } else if shelter.mesh {
        list.at_it(when, "Brush leaves and webs off the mesh of its box");
    }
    list.at_it(when, "Look for water in its box, and that the cable's loop hangs lower than its hole");
}

fn take_down(list: &mut List, yard: &Yard, station: &Station, class: &ProjectorClass) {
    let when = Moment::TakeDown;
    list.add(when, "Before anything moves, measure and write down what has changed against the sheet: lens, aim, zoom, focus, settings");
    if class.cools_s > 0.0 {
        list.add(when, format!("Let it cool for {:.0} s before its plug is pulled", class.cools_s));
    }
    list.beware(when, "Pull the plug at the outlet first, then work towards the station", "not in rain");
    list.at_it(when, "Take the station down, its second tie last");
    list.add(when, "Let projector, box and cable dry indoors for a day with covers open before they are packed");
    if let Some(cloth) = lit_cloth(yard, station) {
        list.add(
            when,
            format!("Dry {cloth} all through before it is stored, else it grows mould; roll it, do not fold it"),
        );
    }
    if class.lamp_hours.is_some() {
        list.add(when, "Read the lamp's hours in its menu and write them down");
    }
    list.add(
        when,
        "Pack remote control, plug, clamps and tape marks with it, and label the box with the station's name",
    );
    list.add(when, "Write down what to do otherwise next year while it is fresh; the fault log helps");
}

/// Name of the cloth or film that a station lights.
fn lit_cloth<'a>(yard: &'a Yard, station: &'a Station) -> Option<&'a str> {
    let cloth = yard.cloths.iter().map(|cloth| &cloth.name.0);
    let film = yard.films.iter().map(|film| &film.name.0);
    cloth.chain(film).find(|name| station.lights(name)).map(String::as_str)
}
