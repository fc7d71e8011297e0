//! The help: what keys and mouse do, from the very table that acts.

use super::{super::keys, Act, Shown};
use bevy_egui::egui::{self, Align2, RichText};

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    egui::Area::new(egui::Id::new("help"))
        .order(egui::Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(full.center())
        .show(ui.ctx(), |ui| {
            theme.sheet().show(ui, |ui| {
                ui.set_width(420.0);
                ui.label(RichText::new("Keys and mouse").size(theme.large).strong());
                ui.add_space(4.0);
                egui::Grid::new("keys").num_columns(2).spacing([26.0, 5.0]).show(ui, |ui| {
                    let mut line = |key: String, what: &str| {
                        ui.label(RichText::new(key).color(theme.warm.0));
                        ui.label(what);
                        ui.end_row();
                    };
                    line(format!("1 – {}", keys::SPOTS.len()), "stand at a viewing spot");
                    for binding in keys::ONCE {
                        let with = if binding.with.ctrl { "Ctrl " } else { "" };
                        line(format!("{with}{}", binding.key.name()), binding.what);
                    }
                    for (key, what, _) in keys::NUDGE {
                        line(key.name().to_owned(), what);
                    }
                    for (key, what, _) in keys::TURN {
                        line(key.name().to_owned(), what);
                    }
                    for (key, what, _) in keys::HELD {
                        line(key.name().to_owned(), what);
                    }
                    line("Shift".to_owned(), "walk faster");
                    for (what, does) in keys::MOUSE {
                        line((*what).to_owned(), does);
                    }
                });
                ui.add_space(6.0);
                if ui.button("Close").clicked() {
                    acts.push(Act::Help);
                }
            });
        });
}
