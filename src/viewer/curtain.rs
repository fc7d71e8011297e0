//! What hangs before the picture while the yard is lit: a window that says so.

use super::{Desk, darkroom::Darkroom, studio::Studio, theme::Theme};
use bevy::{
    app::AppExit,
    ecs::prelude::{MessageReader, MessageWriter, NonSendMut, Query, Res, Result, World},
    render::renderer::{RenderDevice, RenderQueue},
    window::WindowCloseRequested,
};
use bevy_egui::{
    EguiContext, EguiFullOutput, EguiInput,
    egui::{Align2, FontId},
};
use std::{
    sync::{Arc, Mutex, PoisonError},
    thread::JoinHandle,
};

/// Why the yard could not be lit, once that is known.
#[derive(Clone, Default)]
pub struct Why(Arc<Mutex<Option<String>>>);

impl Why {
    /// Takes it.
    pub fn take(&self) -> Option<String> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).take()
    }

    fn tell(&self, why: String) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(why);
    }
}

/// The curtain, and what goes on behind it.
pub struct Curtain {
    lighting: JoinHandle<Result<Studio, String>>,
    theme: Theme,
    why: Why,
    hangs: bool,
}

impl Curtain {
    /// Before a yard that is being lit.
    pub fn before(lighting: JoinHandle<Result<Studio, String>>, theme: Theme) -> Self {
        Self { lighting, theme, why: Why::default(), hangs: false }
    }

    /// Where it says why it was never lifted.
    pub fn why(&self) -> Why {
        self.why.clone()
    }
}

/// Whether the picture can be seen.
pub fn is_lifted(world: &World) -> bool {
    world.contains_non_send::<Desk>()
}

/// One frame of the curtain, for as long as there is one.
pub fn hang(
    curtain: Option<NonSendMut<Curtain>>,
    mut contexts: Query<(&mut EguiContext, &mut EguiInput, &mut EguiFullOutput)>,
    (darkroom, device, queue): (Res<Darkroom>, Res<RenderDevice>, Res<RenderQueue>),
    mut closing: MessageReader<WindowCloseRequested>,
    mut exit: MessageWriter<AppExit>,
) -> Result {
    let Some(mut curtain) = curtain else { return Ok(()) };
    let (mut context, mut input, mut output) = contexts.single_mut()?;
    let ctx = context.get_mut();
    if !std::mem::replace(&mut curtain.hangs, true) {
        curtain.theme.dress(ctx);
        darkroom.warm(&device, &queue);
    }
    let theme = &curtain.theme;
    let mut given = input.take();
    // Nothing can be done yet; and what is said in every frame would have the next one drawn at once.
    given.events.clear();
    **output = Some(ctx.run_ui(given, |ui| {
        let (middle, font) = (ui.ctx().viewport_rect().center(), FontId::proportional(theme.large));
        ui.painter().text(middle, Align2::CENTER_CENTER, "Lighting the yard …", font, theme.faded.0);
    }));
    if closing.read().count() > 0 {
        exit.write(AppExit::Success);
    }
    Ok(())
}

/// Lifts the curtain once it has hung and the yard is lit; where it cannot be, ends the window. One frame is the curtain's or the
/// picture's, never both: what the first drew would be lost, letters and all.
pub fn lift(world: &mut World) {
    let is_warm = world.resource::<Darkroom>().is_warm();
    if !world
        .get_non_send::<Curtain>()
        .is_some_and(|curtain| is_warm && curtain.hangs && curtain.lighting.is_finished())
    {
        return;
    }
    let Some(Curtain { lighting, theme, why, .. }) = world.remove_non_send::<Curtain>() else { return };
    match lighting.join().map_err(|_| "the yard could not be lit".to_owned()).flatten() {
        Ok(studio) => world.insert_non_send(Desk::new(studio, theme)),
        Err(said) => {
            why.tell(said);
            world.write_message(AppExit::error());
        }
    }
}
