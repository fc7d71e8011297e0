//! When the next frame is drawn: soon while anything stirs or is awaited, not at all while nothing is.

use bevy::winit::{UpdateMode, WinitSettings};
use bevy_egui::egui::{Event, Modifiers, RawInput};
use std::time::{Duration, Instant};

/// Between frames while something moves.
const MOVING: Duration = Duration::from_millis(15);
/// Between frames while something is only awaited, such as the next rows of the fine picture: drawing the same cards more often would
/// take the time that these need. Whatever comes from the window is drawn at once.
const WAITING: Duration = Duration::from_millis(50);
/// For so long frames go on after the last stir: whatever begins once the hand is quiet begins within it.
const AFTER: Duration = Duration::from_millis(1500);
/// The longest rest. It has no meaning but that the engine needs one.
const LONGEST: Duration = Duration::from_secs(3600);

/// The engine's loop, which rests until something comes from the window, a frame is asked for or so much time has passed.
fn resting(wait: Duration) -> WinitSettings {
    let mode = UpdateMode::reactive_low_power(wait);
    WinitSettings { focused_mode: mode, unfocused_mode: mode }
}

/// The engine's loop at the beginning.
pub fn settings() -> WinitSettings {
    resting(WAITING)
}

/// What stirred last.
pub struct Rest {
    stirred: Instant,
    drawn: Instant,
    held: Modifiers,
}

impl Rest {
    /// Awake.
    pub fn new() -> Self {
        Self { stirred: Instant::now(), drawn: Instant::now(), held: Modifiers::NONE }
    }

    /// Takes out of a frame's input what is said anew in every frame and is no news; whether anything else is in it.
    pub fn news(&mut self, input: &mut RawInput) -> bool {
        input.events.retain(|event| match event {
            Event::ModifiersChanged(now) => std::mem::replace(&mut self.held, *now) != *now,
            _ => true,
        });
        !input.events.is_empty()
    }

    /// The engine's loop after a frame in which something moved or is still awaited.
    pub fn after(&mut self, moves: bool, awaits: bool) -> WinitSettings {
        if moves || awaits {
            self.stirred = Instant::now();
        }
        resting(if self.stirred.elapsed() < AFTER { WAITING } else { LONGEST })
    }

    /// Waits until the time of a next frame has come, where something moves. Returns how long the last one took in all, s.
    pub fn pause(&mut self) -> f32 {
        std::thread::sleep(MOVING.saturating_sub(self.drawn.elapsed()));
        let whole = self.drawn.elapsed().as_secs_f32().max(1e-3);
        self.drawn = Instant::now();
        whole
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_in_every_frame_is_no_news() {
        let mut rest = Rest::new();
        let said = |events: Vec<Event>| RawInput { events, ..RawInput::default() };
        let ctrl = || Event::ModifiersChanged(Modifiers::CTRL);
        assert!(rest.news(&mut said(vec![ctrl()])));
        assert!(!rest.news(&mut said(vec![ctrl()])));
        assert!(rest.news(&mut said(vec![ctrl(), Event::PointerGone])));
        assert!(rest.news(&mut said(vec![Event::ModifiersChanged(Modifiers::NONE)])));
        let wait = |settings: WinitSettings| match settings.focused_mode {
            UpdateMode::Reactive { wait, .. } => wait,
            UpdateMode::Continuous => Duration::ZERO,
        };
        assert_eq!(wait(rest.after(false, true)), WAITING);
        rest.stirred -= 2 * AFTER;
        assert_eq!(wait(rest.after(false, false)), LONGEST);
    }
}
