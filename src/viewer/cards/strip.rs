//! The strip along the bottom: how dark the evening is, how luminance is shown, and how fast the picture comes.

use super::{Act, Shown, bar::toggle, fixed};
use bevy_egui::egui::{self, Align, Layout, Rect, RichText, Slider, pos2, vec2};
use gauzelight::{scene::GroundState, units::two_digits};

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let rect = Rect::from_min_size(pos2(full.min.x, full.max.y - theme.strip), vec2(full.width(), theme.strip));
    fixed(ui, "strip", rect, |ui| {
        ui.painter().rect_filled(rect, 0.0, theme.paper.0);
        ui.scope_builder(egui::UiBuilder::new().max_rect(rect.shrink2(vec2(14.0, 6.0))), |ui| {
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                let evening = &studio.yard().evening;
                ui.label(RichText::new("Evening").strong());
                ui.add_space(6.0);
                ui.label(RichText::new("sky").color(theme.faded.0));
                let mut sky = evening.sky_lx as f32;
                ui.style_mut().spacing.slider_width = 150.0;
                let slider = Slider::new(&mut sky, 0.002..=400.0).logarithmic(true).suffix(" lx").max_decimals(3);
                let tip = "Open level ground by the sky alone: 400 lx at sunset, 3.4 at the end of civil twilight, 0.002 by stars";
                if ui.add(slider).on_hover_text(tip).changed() {
                    acts.push(Act::Sky(sky));
                }
                if let Some(moon) = &evening.moon {
                    ui.add_space(10.0);
                    ui.label(RichText::new(format!("moon {} lx", two_digits(moon.lx))).color(theme.faded.0));
                }
                let ground = match evening.ground {
                    GroundState::Dry => "dry ground",
                    GroundState::Wet => "wet ground",
                    GroundState::Snow => "snow",
                };
                ui.add_space(10.0);
                ui.label(RichText::new(ground).color(theme.faded.0));
                let lamps: Vec<&str> =
                    studio.yard().lamps.iter().filter(|l| l.on).map(|l| l.name.0.as_str()).collect();
                if !lamps.is_empty() {
                    ui.add_space(10.0);
                    let text = RichText::new(format!("other lamps on: {}", lamps.len())).color(theme.faded.0);
                    ui.label(text).on_hover_text(lamps.join("\n"));
                }
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let (ms, taking, fps) = shown.pace;
                    let state = if taking { "taking…" } else { "complete" };
                    let text = format!("{state}  {fps:.0} fps");
                    let tip = format!("The picture: {ms:.0} ms a step, {fps:.0} frames a second");
                    ui.label(RichText::new(text).size(theme.small).color(theme.faded.0)).on_hover_text(tip);
                    ui.add_space(10.0);
                    white(ui, shown, acts);
                });
            });
        });
    });
}

/// Luminances to show as white that are worth a click, cd/m², and what they suit.
const WHITES: [(f32, &str); 3] = [(2.0, "a dark lane"), (8.0, "a dim street"), (30.0, "a lit street")];

/// The fixed exposure; from right to left.
fn white(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    if studio.false_colour {
        return;
    }
    let mut white = studio.white;
    let slider = Slider::new(&mut white, 0.5..=200.0).logarithmic(true).max_decimals(1).suffix(" cd/m²");
    ui.style_mut().spacing.slider_width = 90.0;
    if ui.add(slider).on_hover_text("Fixed exposure: this luminance shows as white").changed() {
        acts.push(Act::White(white));
    }
    for (value, tip) in WHITES.iter().rev() {
        let chosen = (studio.white - value).abs() < 0.05;
        if toggle(ui, theme, chosen, &format!("{value}"), &format!("White at {value} cd/m²: {tip}")) {
            acts.push(Act::White(*value));
        }
    }
    ui.label(RichText::new("white shows at").size(theme.small).color(theme.faded.0));
}
