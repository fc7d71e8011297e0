//! Small pictures of what the stations throw.

use super::studio::Studio;
use bevy_egui::egui::{self, ColorImage, TextureHandle, TextureId, TextureOptions, Vec2};
use gauzelight::{
    frames::{Frame, srgb},
    light::response,
    scene::{Stance, Station, Yard},
};
use std::sync::Arc;

/// Pixels of the longer side, at least.
const LONGEST: u32 = 160;

/// Textures of the thumbnails, made anew when the yard is.
#[derive(Default)]
pub struct Thumbs {
    /// One for each station, as the picture stands, with its size.
    pub list: Vec<Option<(TextureId, Vec2)>>,
    kept: Vec<TextureHandle>,
    made_for: Option<(Arc<Yard>, u64)>,
}

impl Thumbs {
    /// Makes them if the yard has changed.
    pub fn refresh(&mut self, ctx: &egui::Context, studio: &Studio) {
        if self.made_for.as_ref().is_some_and(|(yard, pictures)| {
            yard.stations == studio.yard().stations && *pictures == studio.papers.opened
        }) {
            return;
        }
        self.made_for = Some((Arc::clone(studio.yard()), studio.papers.opened));
        self.kept.clear();
        self.list.clear();
        for station in &studio.yard().stations {
            let Some(frame) = thrown(studio, station) else {
                self.list.push(None);
                continue;
            };
            // The smallest level that is still large enough.
            let enough = |level: &&gauzelight::frames::Level| level.width.max(level.height) >= LONGEST;
            let Some(level) = frame.levels.iter().rev().find(enough).or(frame.levels.first()) else {
                self.list.push(None);
                continue;
            };
            let codes: Vec<u8> =
                level.texels.iter().flat_map(|t| [t[0], t[1], t[2]]).map(|v| srgb::encode8(v.to_f32())).collect();
            let picture = ColorImage::from_rgb([level.width as usize, level.height as usize], &codes);
            let upright = if station.content.stance == Stance::Upright { "upright" } else { "wide" };
            let name = format!("{} {upright}", station.content.picture);
            let texture = ctx.load_texture(name, picture, TextureOptions::LINEAR);
            self.list.push(Some((texture.id(), texture.size_vec2())));
            self.kept.push(texture);
        }
    }
}

/// The picture as the station's projector answers it: the frame that the night has.
fn thrown(studio: &Studio, station: &Station) -> Option<Arc<Frame>> {
    let response = response(studio.yard(), &studio.catalogue, station)?;
    studio.papers.shelf.frame(&station.content.picture, response)
}
