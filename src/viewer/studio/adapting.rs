//! An eye that is adapted to what the window shows.

use super::lighting::Lighting;
use crate::viewer::eye::Eye;
use gauzelight::{
    judge::Figures,
    picture::{Adapted, adapted, expose},
};
use std::time::{Duration, Instant};

/// Size of the small picture whose luminance an eye adapts to, pixels.
const SIZE: (u32, u32) = (96, 60);
/// Between two looks while the eye moves.
const PAUSE: Duration = Duration::from_millis(150);
/// Age of an eye of which nothing is known, years.
const AGE: f64 = 40.0;

/// What the eye is adapted to, where the picture is shown as it sees it.
#[derive(Default)]
pub struct Adapting {
    /// Whether it is.
    pub on: bool,
    /// The eye as it now is.
    pub eye: Option<Adapted>,
    /// The light and the camera that it is adapted to.
    to: Option<(u64, Eye)>,
    /// What there is to look at by that light.
    figures: Figures,
    looked: Option<Instant>,
}

impl Adapting {
    /// On or off.
    pub fn switch(&mut self, on: bool) {
        *self = Self { on, ..Self::default() };
    }

    /// Adapts to what there is to see: some milliseconds' look.
    pub fn keep_step(&mut self, lighting: &Lighting, eye: Eye) {
        let now = (lighting.revision.light, eye);
        let due = self.looked.is_none_or(|looked| looked.elapsed() > PAUSE);
        if self.on && due && self.to != Some(now) {
            if self.to.is_none_or(|(light, _)| light != now.0) {
                self.figures = Figures::of(&lighting.night, &lighting.yard);
            }
            let camera = eye.camera();
            let look = expose(&lighting.night, &camera, SIZE, 1, |_| ());
            let places = self.figures.seen(&lighting.night, camera.eye);
            self.eye = Some(adapted(&look, &camera, AGE, &places).eye);
            (self.to, self.looked) = (Some(now), Some(Instant::now()));
        }
    }
}
