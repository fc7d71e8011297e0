//! The help: what keys and mouse do, from the very table that acts.

use super::{super::keys, Act, Shown};
use bevy_egui::egui::{self, Align2, RichText};

/// Points across of one of the two columns: in one, it would be taller than the window.
const COLUMN: f32 = 400.0;

/// What keys and mouse do.
fn lines() -> Vec<(String, &'static str)> {
    let mut lines = vec![(format!("1 – {}", keys::SPOTS.len()), "stand at a viewing spot")];
    lines.extend(keys::ONCE.iter().map(|binding| {
        let with = if binding.with.ctrl { "Ctrl " } else { "" };
        (format!("{with}{}", binding.key.name()), binding.what)
    }));
    lines.extend(keys::NUDGE.iter().map(|(key, what, _)| (key.name().to_owned(), *what)));
    lines.extend(keys::TURN.iter().map(|(key, what, _)| (key.name().to_owned(), *what)));
    lines.extend(keys::HELD.iter().map(|(key, what, _)| (key.name().to_owned(), *what)));
    lines.push(("Shift".to_owned(), "walk faster"));
    lines.extend(keys::MOUSE.iter().map(|(what, does)| ((*what).to_owned(), *does)));
    lines
}

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    egui::Area::new(egui::Id::new("help"))
        .order(egui::Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(full.center())
        .show(ui.ctx(), |ui| {
            theme.sheet().show(ui, |ui| {
                ui.set_width(2.0 * COLUMN + 26.0);
                ui.label(RichText::new("Keys and mouse").size(theme.large).strong());
                ui.add_space(4.0);
                let lines = lines();
                ui.horizontal_top(|ui| {
                    for (number, column) in lines.chunks(lines.len().div_ceil(2)).enumerate() {
                        let grid = egui::Grid::new(("keys", number)).num_columns(2).spacing([26.0, 5.0]);
                        grid.min_col_width(0.25 * COLUMN).show(ui, |ui| {
                            for (key, what) in column {
                                ui.label(RichText::new(key).color(theme.warm.0));
                                ui.label(*what);
                                ui.end_row();
                            }
                        });
                        ui.add_space(26.0);
                    }
                });
                ui.add_space(6.0);
                if ui.button("Close").clicked() {
                    acts.push(Act::Help);
                }
            });
        });
}
