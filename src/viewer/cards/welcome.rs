//! The first card: what somebody who has just come can do next.

use super::{Act, Shown};
use bevy_egui::egui::{self, Align2, Button, RichText};
use gauzelight::edit::Starter;

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let at = full.max - egui::vec2(theme.gap, super::strip_height(shown.studio, theme) + theme.gap);
    egui::Area::new(egui::Id::new("welcome")).pivot(Align2::RIGHT_BOTTOM).fixed_pos(at).show(ui.ctx(), |ui| {
        theme.sheet().show(ui, |ui| {
            ui.set_width(theme.card - 26.0);
            ui.label(RichText::new("New here?").size(theme.large).strong());
            let words = "This is a demo yard at night, as bright as it would be: click anything and drag it. Five questions tell what a station of your own would look like.";
            ui.label(RichText::new(words).color(theme.faded.0));
            ui.add_space(4.0);
            ui.horizontal(|ui| {
                let main = Button::new(RichText::new("Five questions").color(theme.on_warm.0)).fill(theme.warm.0);
                if ui.add(main).clicked() {
                    acts.extend([Act::Welcomed, Act::Questions]);
                }
                if ui.button("Build your own").clicked() {
                    acts.extend([Act::Welcomed, Act::New(Starter::EmptyFront)]);
                }
            });
            ui.horizontal(|ui| {
                if ui.button("Look around").clicked() {
                    acts.push(Act::Welcomed);
                }
                if ui.button("Keys and mouse").clicked() {
                    acts.extend([Act::Welcomed, Act::Help]);
                }
            });
        });
    });
}
