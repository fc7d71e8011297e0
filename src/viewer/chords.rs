//! Keys with what was held when each went down, however soon it was let go and however slow the frame.

use bevy::{
    input::keyboard::{Key, KeyboardFocusLost, KeyboardInput},
    prelude::MessageReader,
};
use bevy_egui::{
    egui::{Event, Modifiers},
    helpers::{bevy_to_egui_key, bevy_to_egui_physical_key},
};

/// What is held on the keyboard, from frame to frame.
#[derive(Default)]
pub struct Chords(Modifiers);

impl Chords {
    /// Gives each key of a frame what was held when it moved; the engine gives all of them what is held at the frame's end.
    pub fn amend(
        &mut self,
        keyboard: &mut MessageReader<KeyboardInput>,
        lost: &mut MessageReader<KeyboardFocusLost>,
        events: &mut Vec<Event>,
    ) {
        if lost.read().count() > 0 {
            self.0 = Modifiers::NONE;
        }
        let moved: Vec<KeyboardInput> = keyboard.read().cloned().collect();
        self.pair(&moved, events);
    }

    fn pair(&mut self, moved: &[KeyboardInput], events: &mut Vec<Event>) {
        let mut from = 0;
        for input in moved {
            let down = input.state.is_pressed();
            self.hold(&input.logical_key, down);
            let physical = bevy_to_egui_physical_key(&input.key_code);
            let Some(named) = bevy_to_egui_key(&input.logical_key).or(physical) else { continue };
            let is_it =
                |event: &Event| matches!(event, Event::Key { key, pressed, .. } if *key == named && *pressed == down);
            let Some(at) = events.iter().skip(from).position(is_it).map(|at| from + at) else { continue };
            if let Event::Key { modifiers, .. } = &mut events[at] {
                *modifiers = self.0;
            }
            from = at + 1;
            // What is a command is not typed; Ctrl with Alt is a key of many keyboards.
            if self.0.command && !self.0.alt && down && at > 0 && matches!(events[at - 1], Event::Text(_)) {
                events.remove(at - 1);
                from = at;
            }
        }
    }

    fn hold(&mut self, key: &Key, down: bool) {
        match key {
            Key::Shift => self.0.shift = down,
            Key::Alt => self.0.alt = down,
            Key::Control => {
                self.0.ctrl = down;
                if !cfg!(target_os = "macos") {
                    self.0.command = down;
                }
            }
            Key::Super | Key::Meta if cfg!(target_os = "macos") => (self.0.mac_cmd, self.0.command) = (down, down),
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bevy::{
        ecs::entity::Entity,
        input::{ButtonState, keyboard::KeyCode},
    };
    use bevy_egui::egui;

    fn moved(logical_key: Key, key_code: KeyCode, state: ButtonState) -> KeyboardInput {
        KeyboardInput { key_code, logical_key, state, text: None, repeat: false, window: Entity::PLACEHOLDER }
    }

    #[test]
    fn a_chord_within_one_frame_counts_and_types_nothing() {
        let s = || Key::Character("s".into());
        let key = |pressed| Event::Key {
            key: egui::Key::S,
            physical_key: Some(egui::Key::S),
            pressed,
            repeat: false,
            modifiers: Modifiers::NONE,
        };
        let mut chords = Chords::default();
        let hands = [
            moved(Key::Control, KeyCode::ControlLeft, ButtonState::Pressed),
            moved(s(), KeyCode::KeyS, ButtonState::Pressed),
            moved(s(), KeyCode::KeyS, ButtonState::Released),
            moved(Key::Control, KeyCode::ControlLeft, ButtonState::Released),
        ];
        let mut events = vec![Event::Text("s".to_owned()), key(true), Event::Text("s".to_owned()), key(false)];
        chords.pair(&hands, &mut events);
        assert!(
            matches!(&events[0], Event::Key { pressed: true, modifiers, .. } if modifiers.ctrl && modifiers.command)
        );
        assert_eq!(events.len(), 3);
        // Without it an S is an S.
        let mut events = vec![Event::Text("s".to_owned()), key(true)];
        chords.pair(&hands[1..2], &mut events);
        assert!(matches!(&events[1], Event::Key { modifiers, .. } if *modifiers == Modifiers::NONE));
    }
}
