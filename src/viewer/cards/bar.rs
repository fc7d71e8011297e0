//! The bar at the top: the yard, where one stands, and how luminance is shown.

use super::{Act, Shown, fixed};
use bevy_egui::egui::{self, Align, Button, Layout, RichText, Slider};

/// Luminances to show as white that are worth a click, cd/m², and what they suit.
const WHITES: [(f32, &str); 3] = [(2.0, "a dark lane"), (8.0, "a dim street"), (30.0, "a lit street")];

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let rect = egui::Rect::from_min_size(full.min, egui::vec2(full.width(), theme.bar));
    fixed(ui, "bar", rect, |ui| {
        ui.painter().rect_filled(rect, 0.0, theme.paper.0);
        ui.scope_builder(egui::UiBuilder::new().max_rect(rect.shrink2(egui::vec2(14.0, 6.0))), |ui| {
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                ui.label(RichText::new(&studio.stage.yard.name.0).strong().size(theme.large));
                ui.add_space(14.0);
                for (i, spot) in studio.stage.yard.spots.iter().enumerate() {
                    let here = studio.spot == i;
                    let text = RichText::new(format!("{}  {}", i + 1, spot.name.0)).size(theme.small);
                    let text = if here { text.color(theme.on_warm.0) } else { text };
                    let button = Button::new(text).fill(if here { theme.warm.0 } else { theme.lifted.0 });
                    if ui.add(button).on_hover_text(format!("Stand here (key {})", i + 1)).clicked() {
                        acts.push(Act::Go(i));
                    }
                }
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| right(ui, shown, acts));
            });
        });
    });
}

fn right(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let toggle = |ui: &mut egui::Ui, on: bool, label: &str, tip: &str| {
        let text = RichText::new(label).size(theme.small);
        let text = if on { text.color(theme.on_warm.0) } else { text };
        ui.add(Button::new(text).fill(if on { theme.warm.0 } else { theme.lifted.0 })).on_hover_text(tip).clicked()
    };
    if toggle(ui, studio.help, "?", "Keys and mouse (F1)") {
        acts.push(Act::Help);
    }
    if toggle(ui, studio.questions, "Five questions", "What would one station look like? (Q)") {
        acts.push(Act::Questions);
    }
    if toggle(ui, studio.outlines, "Outlines", "Where every throw lands (O)") {
        acts.push(Act::Outlines);
    }
    if toggle(ui, studio.false_colour, "False colour", "Luminance as colour, with a legend (F)") {
        acts.push(Act::FalseColour);
    }
    if !studio.false_colour {
        let mut white = studio.white;
        let slider = Slider::new(&mut white, 0.5..=200.0).logarithmic(true).max_decimals(1).suffix(" cd/m²");
        ui.style_mut().spacing.slider_width = 90.0;
        if ui.add(slider).on_hover_text("Fixed exposure: this luminance shows as white").changed() {
            acts.push(Act::White(white));
        }
        for (value, tip) in WHITES.iter().rev() {
            let chosen = (studio.white - value).abs() < 0.05;
            if toggle(ui, chosen, &format!("{value}"), &format!("White at {value} cd/m²: {tip}")) {
                acts.push(Act::White(*value));
            }
        }
        ui.label(RichText::new("white shows at").size(theme.small).color(theme.faded.0));
    }
}
