//! What the keys do: one table that acts and that the help shows.

use super::studio::{Act, Asking};
use bevy_egui::egui::{Event, InputState, Key, Modifiers, RawInput};

/// A key and what it does.
pub struct Binding {
    /// What is held with it.
    pub with: Modifiers,
    /// The key.
    pub key: Key,
    /// What it does, for the help.
    pub what: &'static str,
    /// The act.
    pub act: fn() -> Act,
}

const fn plain(key: Key, what: &'static str, act: fn() -> Act) -> Binding {
    Binding { with: Modifiers::NONE, key, what, act }
}

const fn ctrl(key: Key, what: &'static str, act: fn() -> Act) -> Binding {
    Binding { with: Modifiers::CTRL, key, what, act }
}

/// Keys that act once when pressed.
pub const ONCE: &[Binding] = &[
    plain(Key::Home, "back to the viewing spot", || Act::Home),
    plain(Key::F, "false colour", || Act::FalseColour),
    plain(Key::E, "as an adapted eye sees it", || Act::Adapted),
    plain(Key::O, "outlines of the throws", || Act::Outlines),
    plain(Key::Space, "chosen station on or off", || Act::SwitchChosen),
    plain(Key::Tab, "next station", || Act::NextStation),
    plain(Key::G, "next thing, of whatever kind", || Act::NextThing),
    plain(Key::N, "lay it on its side, hang it, stand it up", || Act::LayChosen),
    plain(Key::L, "lock or unlock what is chosen", || Act::LockChosen),
    plain(Key::H, "put it away or bring it out", || Act::HideChosen),
    plain(Key::Delete, "remove what is chosen", || Act::RemoveChosen),
    plain(Key::X, "flip to the other arrangement", || Act::Flip),
    plain(Key::P, "pass by on foot", || Act::WalkBy(Some(super::studio::WALKER))),
    plain(Key::T, "tape measure: two clicks", || Act::Tape),
    plain(Key::Q, "five questions", || Act::Questions),
    plain(Key::F1, "this help", || Act::Help),
    plain(Key::Escape, "close what is open", || Act::Close),
    ctrl(Key::Z, "undo", || Act::Undo),
    ctrl(Key::Y, "redo", || Act::Redo),
    ctrl(Key::D, "copy what is chosen", || Act::CopyChosen),
    ctrl(Key::S, "save", || Act::Save),
    ctrl(Key::O, "open a yard", || Act::Ask(Asking::Open)),
    ctrl(Key::P, "hang sheet, list and cards on paper", || Act::Print(None)),
];

/// Keys that move what is chosen by a step of the tape, with Shift by ten: x, y, z.
pub const NUDGE: &[(Key, &str, [i32; 3])] = &[
    (Key::ArrowLeft, "move it left", [-1, 0, 0]),
    (Key::ArrowRight, "move it right", [1, 0, 0]),
    (Key::ArrowUp, "move it away, up its wall", [0, 0, -1]),
    (Key::ArrowDown, "move it nearer, down its wall", [0, 0, 1]),
    (Key::PageUp, "raise it", [0, 1, 0]),
    (Key::PageDown, "lower it", [0, -1, 0]),
];

/// Keys that turn what is chosen, degrees; with Shift by fifteen.
pub const TURN: &[(Key, &str, f64)] = &[(Key::Comma, "turn it left", 1.0), (Key::Period, "turn it right", -1.0)];

/// Keys that walk while held: right, up, forwards in metres a second.
pub const HELD: &[(Key, &str, [f32; 3])] = &[
    (Key::W, "walk forwards", [0.0, 0.0, 1.0]),
    (Key::S, "walk backwards", [0.0, 0.0, -1.0]),
    (Key::A, "walk left", [-1.0, 0.0, 0.0]),
    (Key::D, "walk right", [1.0, 0.0, 0.0]),
    (Key::R, "rise", [0.0, 1.0, 0.0]),
    (Key::V, "sink", [0.0, -1.0, 0.0]),
];

/// What the mouse does, for the help.
pub const MOUSE: &[(&str, &str)] = &[
    ("click", "choose a thing"),
    ("Alt click", "choose what is behind a cloth"),
    ("drag what is chosen", "move it along the ground or its wall"),
    ("Shift drag", "move it up and down"),
    ("Ctrl drag", "move it without snapping"),
    ("drag its cross", "aim a station"),
    ("drag elsewhere", "turn around what you look at"),
    ("right drag", "look around"),
    ("wheel", "closer or farther"),
    ("rest on the picture", "luminance, illuminance, and who lit it"),
];

/// Keys of the viewing spots, in the yard's order.
pub const SPOTS: [Key; 9] =
    [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7, Key::Num8, Key::Num9];

/// Walking speed, m/s: a brisk walk.
const PACE: f32 = 2.5;

/// Takes Tab out of what the cards are given, where it would go from button to button, and does what it is for here.
pub fn take_tab(input: &mut RawInput) -> Vec<Act> {
    let is_tab = |event: &Event| matches!(event, Event::Key { key: Key::Tab, .. });
    let pressed = |event: &&Event| is_tab(event) && matches!(event, Event::Key { pressed: true, .. });
    let presses = input.events.iter().filter(pressed).count();
    input.events.retain(|event| !is_tab(event));
    vec![Act::NextStation; presses]
}

/// The acts of the keys as they now are.
pub fn acts(input: &InputState, spots: usize) -> Vec<Act> {
    let held = input.modifiers;
    let mut acts: Vec<Act> = Vec::new();
    for event in &input.events {
        // What was held when the key went down, however soon it was let go.
        let Event::Key { key, pressed: true, repeat: false, modifiers, .. } = event else { continue };
        let meant = |b: &&Binding| b.key == *key && b.with.ctrl == modifiers.ctrl;
        acts.extend(ONCE.iter().filter(meant).map(|b| (b.act)()));
    }
    let called = SPOTS.iter().take(spots).position(|key| input.key_pressed(*key));
    acts.extend(called.map(Act::Go));
    let (tape, turn) = if held.shift { (10, 15.0) } else { (1, 1.0) };
    for (key, _, way) in NUDGE {
        acts.extend((0..input.num_presses(*key)).map(|_| Act::Nudge(way.map(|n| n * tape))));
    }
    for (key, _, way) in TURN {
        acts.extend((0..input.num_presses(*key)).map(|_| Act::TurnChosen(way * turn)));
    }
    if held.ctrl {
        return acts;
    }
    let step = PACE * input.stable_dt.min(0.1) * if held.shift { 3.0 } else { 1.0 };
    let down = HELD.iter().filter(|(key, ..)| input.key_down(*key)).map(|(.., way)| *way);
    let walk = down.fold([0.0; 3], |a, b| [a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
    if walk != [0.0; 3] {
        acts.push(Act::Walk(walk.map(|v| v * step)));
    }
    acts
}
