//! How many frames are on their way to the screen.

use bevy::{
    prelude::{Local, Res},
    render::renderer::{RenderDevice, RenderQueue},
};
use std::{collections::VecDeque, time::Duration};

/// Frames that may be with the graphics card at once: one that is drawn and one that waits.
const MOST: usize = 2;
/// How long a frame is waited for before the window goes on without it.
const PATIENCE: Duration = Duration::from_secs(2);

/// Holds the next frame back until the card has drawn the one before the last. Whoever hands frames over faster than they are drawn
/// fills the memory with those that wait.
pub fn hold_back(
    device: Res<RenderDevice>,
    queue: Res<RenderQueue>,
    mut flying: Local<VecDeque<wgpu::SubmissionIndex>>,
) {
    flying.push_back(queue.submit(std::iter::empty()));
    while flying.len() > MOST {
        let submission_index = flying.pop_front();
        // A card that is lost or late is told of where its picture is asked for.
        let _ = device.poll(wgpu::PollType::Wait { submission_index, timeout: Some(PATIENCE) });
    }
}
