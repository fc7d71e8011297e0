//! An eye that is adapted to what the window shows.

use super::lighting::Lighting;
use crate::viewer::eye::Eye;
use gauzelight::picture::{Adapted, expose};

/// Size of the small picture whose luminance an eye adapts to, pixels.
const SIZE: (u32, u32) = (96, 60);

/// What the eye is adapted to, where the picture is shown as it sees it.
#[derive(Default)]
pub struct Adapting {
    /// Whether it is.
    pub on: bool,
    /// The eye as it now is.
    pub eye: Option<Adapted>,
    /// The light and the camera that it is adapted to.
    to: Option<(u64, Eye)>,
}

impl Adapting {
    /// On or off.
    pub fn switch(&mut self, on: bool) {
        (self.on, self.eye, self.to) = (on, None, None);
    }

    /// Adapts to what there is to see: a few milliseconds' look.
    pub fn keep_step(&mut self, lighting: &Lighting, eye: Eye) {
        let now = (lighting.revision.light, eye);
        if self.on && self.to != Some(now) {
            let look = expose(&lighting.night, &eye.camera(), SIZE, 1, |_| ());
            (self.eye, self.to) = (Some(Adapted::over(&look.luminance)), Some(now));
        }
    }
}
