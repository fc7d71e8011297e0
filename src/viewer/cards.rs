//! What lies over the picture. A card reads the studio and pushes acts; it changes nothing itself.

mod bar;
mod card;
mod help;
mod hover;
mod legend;
mod overlay;
mod questions;
mod rail;
mod strip;
mod welcome;

pub use overlay::outlines;
pub use questions::Form;

use super::{
    studio::{Act, Hover, Studio},
    theme::Theme,
};
use bevy_egui::egui::{self, TextureId};

/// What the cards show beside the studio.
pub struct Shown<'a> {
    /// The studio.
    pub studio: &'a Studio,
    /// Colours and sizes.
    pub theme: &'a Theme,
    /// A small picture of each station's content.
    pub thumbs: &'a [Option<(TextureId, egui::Vec2)>],
    /// What the pointer rests on, and where that is.
    pub hover: Option<&'a (egui::Pos2, Hover)>,
    /// Time of the last order, ms; whether the picture is still being taken; frames a second.
    pub pace: (f32, bool, f32),
}

/// Draws all cards over the picture's place.
pub fn draw(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let full = ui.max_rect();
    bar::draw(ui, full, shown, acts);
    rail::draw(ui, full, shown, acts);
    strip::draw(ui, full, shown, acts);
    if let Some(station) = shown.studio.chosen {
        card::draw(ui, full, shown, station, acts);
    }
    if shown.studio.false_colour {
        legend::draw(ui, full, shown);
    }
    if let Some((at, hover)) = shown.hover {
        hover::draw(ui, *at, hover, shown);
    }
    if shown.studio.welcome {
        welcome::draw(ui, full, shown, acts);
    }
    if shown.studio.questions {
        questions::draw(ui, full, shown, form, acts);
    }
    if shown.studio.help {
        help::draw(ui, full, shown, acts);
    }
}

/// An area that stands at a fixed place, takes the pointer, and lets nothing fall through to the picture.
fn fixed(ui: &egui::Ui, name: &str, rect: egui::Rect, add: impl FnOnce(&mut egui::Ui)) {
    egui::Area::new(egui::Id::new(name)).fixed_pos(rect.min).constrain(false).order(egui::Order::Middle).show(
        ui.ctx(),
        |ui| {
            ui.set_min_size(rect.size());
            ui.set_max_size(rect.size());
            // The whole of the card takes clicks and the wheel, its blank parts as well.
            ui.interact(rect, egui::Id::new((name, "ground")), egui::Sense::click_and_drag());
            add(ui);
        },
    );
}
