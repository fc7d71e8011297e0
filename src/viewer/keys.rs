//! What the keys do: one table that acts and that the help shows.

use super::studio::Act;
use bevy_egui::egui::{InputState, Key};

/// A key and what it does.
pub struct Binding {
    /// The key.
    pub key: Key,
    /// What it does, for the help.
    pub what: &'static str,
    /// The act.
    pub act: fn() -> Act,
}

/// Keys that act once when pressed.
pub const ONCE: &[Binding] = &[
    Binding { key: Key::Home, what: "back to the viewing spot", act: || Act::Home },
    Binding { key: Key::F, what: "false colour", act: || Act::FalseColour },
    Binding { key: Key::O, what: "outlines of the throws", act: || Act::Outlines },
    Binding { key: Key::Space, what: "chosen station on or off", act: || Act::SwitchChosen },
    Binding { key: Key::Tab, what: "next station", act: || Act::NextStation },
    Binding { key: Key::Q, what: "five questions", act: || Act::Questions },
    Binding { key: Key::F1, what: "this help", act: || Act::Help },
    Binding { key: Key::Escape, what: "close what is open", act: || Act::Close },
];

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
    ("drag", "turn around what you look at"),
    ("right drag", "look around"),
    ("wheel", "closer or farther"),
    ("rest on the picture", "luminance, illuminance, and who lit it"),
    ("Alt", "read what is behind a cloth"),
];

/// Keys of the viewing spots, in the yard's order.
pub const SPOTS: [Key; 9] =
    [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5, Key::Num6, Key::Num7, Key::Num8, Key::Num9];

/// Walking speed, m/s: a brisk walk.
const PACE: f32 = 2.5;

/// The acts of the keys as they now are.
pub fn acts(input: &InputState, spots: usize) -> Vec<Act> {
    let mut acts: Vec<Act> = ONCE.iter().filter(|b| input.key_pressed(b.key)).map(|b| (b.act)()).collect();
    let called = SPOTS.iter().take(spots).position(|key| input.key_pressed(*key));
    acts.extend(called.map(Act::Go));
    let step = PACE * input.stable_dt.min(0.1) * if input.modifiers.shift { 3.0 } else { 1.0 };
    let held = HELD.iter().filter(|(key, ..)| input.key_down(*key)).map(|(.., way)| *way);
    let walk = held.fold([0.0; 3], |a, b| [a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
    if walk != [0.0; 3] {
        acts.push(Act::Walk(walk.map(|v| v * step)));
    }
    acts
}
