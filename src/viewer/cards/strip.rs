//! The strip along the bottom: how dark the evening is, how luminance is shown, and how fast the picture comes.

use super::{Act, Shown, bar::toggle, fixed};
use bevy_egui::egui::{self, Align, Layout, Rect, RichText, Slider, pos2, vec2};
use gauzelight::{
    edit::Edit,
    scene::{Evening, GroundState, Item, Lamp},
    units::two_digits,
};

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
                let slid = ui.add(slider).on_hover_text(tip);
                if slid.changed() {
                    acts.push(Act::Sky(sky, slid.dragged() && !slid.drag_started()));
                }
                if let Some(moon) = &evening.moon {
                    ui.add_space(10.0);
                    ui.label(RichText::new(format!("moon {} lx", two_digits(moon.lx))).color(theme.faded.0));
                }
                ui.add_space(10.0);
                ground(ui, shown, acts);
                ui.add_space(10.0);
                lamps(ui, shown, acts);
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let (ms, taking, fps) = shown.pace;
                    let state = if taking { "still being lit" } else { "as bright as it would be" };
                    let text = state;
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

/// Dry, wet or snowy ground, to choose from.
fn ground(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let evening = &shown.studio.yard().evening;
    let word = |state: GroundState| match state {
        GroundState::Dry => "dry ground",
        GroundState::Wet => "wet ground",
        GroundState::Snow => "snow",
    };
    ui.menu_button(RichText::new(word(evening.ground)).size(shown.theme.small), |ui| {
        for state in [GroundState::Dry, GroundState::Wet, GroundState::Snow] {
            if ui.selectable_label(evening.ground == state, word(state)).clicked() {
                acts.push(Act::Edit(Edit::Evening(Evening { ground: state, ..evening.clone() })));
                ui.close();
            }
        }
    })
    .response
    .on_hover_text("Wet ground is darker, snow throws light back");
}

/// The lamps that compete, each to be switched.
fn lamps(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let lamps = &shown.studio.yard().lamps;
    if lamps.is_empty() {
        return;
    }
    let on = lamps.iter().filter(|lamp| lamp.on).count();
    ui.menu_button(RichText::new(format!("other lamps on: {on}")).size(shown.theme.small), |ui| {
        for lamp in lamps {
            let mut on = lamp.on;
            if ui.checkbox(&mut on, &lamp.name.0).changed() {
                acts.push(Act::Edit(Edit::Change(Item::Lamp(Lamp { on, ..lamp.clone() }))));
            }
        }
    })
    .response
    .on_hover_text("Street, porch and other lamps: switch them");
}
