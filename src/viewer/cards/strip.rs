//! The strip along the bottom: how dark the evening is, and how fast the picture comes.

use super::{Act, Shown, fixed};
use bevy_egui::egui::{self, Align, Layout, Rect, RichText, Slider, pos2, vec2};
use gauzelight::{scene::GroundState, units::two_digits};

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let rect = Rect::from_min_size(pos2(full.min.x, full.max.y - theme.strip), vec2(full.width(), theme.strip));
    fixed(ui, "strip", rect, |ui| {
        ui.painter().rect_filled(rect, 0.0, theme.paper.0);
        ui.scope_builder(egui::UiBuilder::new().max_rect(rect.shrink2(vec2(14.0, 6.0))), |ui| {
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                let evening = &studio.stage.yard.evening;
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
                    studio.stage.yard.lamps.iter().filter(|l| l.on).map(|l| l.name.0.as_str()).collect();
                if !lamps.is_empty() {
                    ui.add_space(10.0);
                    let text = RichText::new(format!("other lamps on: {}", lamps.len())).color(theme.faded.0);
                    ui.label(text).on_hover_text(lamps.join("\n"));
                }
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let (ms, taking, fps) = shown.pace;
                    let state = if taking { "taking the picture" } else { "picture complete" };
                    let text = format!("{state}  ·  {ms:.0} ms a step  ·  {fps:.0} frames a second");
                    ui.label(RichText::new(text).size(theme.small).color(theme.faded.0));
                    if studio.questions || studio.help || studio.chosen.is_some() {
                        return;
                    }
                    ui.add_space(16.0);
                    let next = "Choose a station at the left, or rest the pointer on anything";
                    ui.label(RichText::new(next).size(theme.small).color(theme.warm.0));
                });
            });
        });
    });
}
