//! The bar at the top: the yard, what can be done to it, and where one stands.

use super::{Act, Aside, Shown, fixed, menus};
use bevy_egui::egui::{self, Align, Button, Layout, RichText, ScrollArea};

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let rect = egui::Rect::from_min_size(full.min, egui::vec2(full.width(), theme.bar));
    fixed(ui, "bar", rect, |ui| {
        ui.painter().rect_filled(rect, 0.0, theme.paper.0);
        ui.scope_builder(egui::UiBuilder::new().max_rect(rect.shrink2(egui::vec2(14.0, 6.0))), |ui| {
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                menus::yard(ui, shown, acts);
                menus::add(ui, shown, acts);
                menus::things(ui, shown, acts);
                menus::arrangements(ui, shown, acts);
                let back = studio.history.can_undo();
                step(ui, shown, "Undo", "Ctrl Z", back, Act::Undo, acts);
                let forward = studio.history.can_redo();
                step(ui, shown, "Redo", "Ctrl Y", forward, Act::Redo, acts);
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| right(ui, shown, acts));
            });
        });
    });
}

/// One step back or forward; says what it would undo or do.
fn step(ui: &mut egui::Ui, shown: &Shown, word: &str, key: &str, label: Option<&str>, act: Act, acts: &mut Vec<Act>) {
    let button = Button::new(RichText::new(word).size(shown.theme.small));
    let tip = label.map_or_else(|| key.to_owned(), |label| format!("{word}: {label} ({key})"));
    if ui.add_enabled(label.is_some(), button).on_hover_text(tip).clicked() {
        acts.push(act);
    }
}

/// Where one can stand.
fn spots(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    ScrollArea::horizontal().id_salt("spots").show(ui, |ui| {
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            menus::pass_by(ui, shown, acts);
            for (i, spot) in studio.yard().spots.iter().enumerate() {
                let here = studio.at_spot && studio.spot == i;
                let text = RichText::new(format!("{}  {}", i + 1, spot.name.0)).size(theme.small);
                let text = if here { text.color(theme.on_warm.0) } else { text };
                let button = Button::new(text).fill(if here { theme.warm.0 } else { theme.lifted.0 });
                if ui.add(button).on_hover_text(format!("Stand here (key {})", i + 1)).clicked() {
                    acts.push(Act::Go(i));
                }
            }
        });
    });
}

fn right(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let toggle = |ui: &mut egui::Ui, on: bool, label: &str, tip: &str| toggle(ui, theme, on, label, tip);
    if toggle(ui, studio.help, "?", "Keys and mouse (F1)") {
        acts.push(Act::Help);
    }
    if toggle(ui, studio.questions, "Five questions", "What would one station look like? (Q)") {
        acts.push(Act::Questions);
    }
    let count = studio.judging.findings.len();
    let findings = if count == 0 { "Findings".to_owned() } else { format!("Findings: {count}") };
    if toggle(ui, studio.aside == Some(Aside::Findings), &findings, "What to mend, worst first, and what would help") {
        acts.push(Act::Aside(Aside::Findings));
    }
    if toggle(ui, studio.outlines, "Outlines", "Where every throw lands (O)") {
        acts.push(Act::Outlines);
    }
    if toggle(ui, studio.adapted.on, "Adapted eye", "What an eye sees that is used to this light (E)") {
        acts.push(Act::Adapted);
    }
    if toggle(ui, studio.false_colour, "False colour", "Luminance as colour, with a legend (F)") {
        acts.push(Act::FalseColour);
    }
    spots(ui, shown, acts);
}

/// A button that stays lit while what it stands for is on; whether it was clicked.
pub fn toggle(ui: &mut egui::Ui, theme: &super::Theme, on: bool, label: &str, tip: &str) -> bool {
    let text = RichText::new(label).size(theme.small);
    let text = if on { text.color(theme.on_warm.0) } else { text };
    ui.add(Button::new(text).fill(if on { theme.warm.0 } else { theme.lifted.0 })).on_hover_text(tip).clicked()
}
