//! The strip along the bottom: how dark the evening is, how luminance is shown, and how fast the picture comes.

use super::{Act, Aside, Shown, Studio, Theme, bar::toggle, course, fixed};
use bevy_egui::egui::{self, Align, Layout, Rect, RichText, Slider, pos2, vec2};
use gauzelight::{
    edit::Edit,
    light::ambient::{Ambient, Body},
    scene::{Evening, GroundState, Item, Lamp},
    units::{candelas, two_digits},
};

/// How much of the window it takes: a dated evening has its course above it.
pub fn height(studio: &Studio, theme: &Theme) -> f32 {
    theme.strip + if studio.course.moments.is_empty() { 0.0 } else { theme.course }
}

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let height = height(studio, theme);
    let rect = Rect::from_min_size(pos2(full.min.x, full.max.y - height), vec2(full.width(), height));
    fixed(ui, "strip", rect, |ui| {
        ui.painter().rect_filled(rect, 0.0, theme.paper.0);
        let (above, row) = rect.split_top_bottom_at_y(full.max.y - theme.strip);
        if above.height() > 1.0 {
            course::draw(ui, above.shrink2(vec2(14.0, 6.0)), shown, acts);
        }
        ui.scope_builder(egui::UiBuilder::new().max_rect(row.shrink2(vec2(14.0, 6.0))), |ui| {
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                let tip = "How dark it is: date, clock and place, or plain numbers; who comes by";
                if toggle(ui, theme, studio.aside == Some(Aside::Evening), "Evening…", tip) {
                    acts.push(Act::Aside(Aside::Evening));
                }
                ui.add_space(6.0);
                dark(ui, shown, acts);
                ui.add_space(10.0);
                ground(ui, shown, acts);
                ui.add_space(10.0);
                lamps(ui, shown, acts);
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let (ms, taking, fps) = shown.pace;
                    let state = if taking { "still being lit" } else { "as bright as it would be" };
                    let tip = format!("The picture: {ms:.0} ms a step, {fps:.0} frames a second");
                    ui.label(RichText::new(state).size(theme.small).color(theme.faded.0)).on_hover_text(tip);
                    ui.add_space(10.0);
                    white(ui, shown, acts);
                });
            });
        });
    });
}

/// The sky to be slid, or what the clock makes of it.
fn dark(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (evening, theme) = (&shown.studio.yard().evening, shown.theme);
    let faded = |text: String| RichText::new(text).color(theme.faded.0);
    if let Some(when) = &evening.when {
        let light = Ambient::of(shown.studio.yard());
        ui.label(RichText::new(format!("{}  {}", when.date, when.clock)).strong());
        ui.label(faded(format!("sky {} lx", two_digits(light.sky_lx))))
            .on_hover_text("Open level ground by the sky alone");
        if let Some(disc) = &light.disc {
            let name = if disc.body == Body::Sun { "sun" } else { "moon" };
            ui.label(faded(format!("{name} {} lx", two_digits(disc.lx))));
        }
        return;
    }
    ui.label(faded("sky".to_owned()));
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
        ui.label(faded(format!("moon {} lx", two_digits(moon.lx))));
    }
}

/// Luminances to show as white that are worth a click, cd/m², and what they suit.
const WHITES: [(f32, &str); 3] = [(2.0, "a dark lane"), (8.0, "a dim street"), (30.0, "a lit street")];

/// The fixed exposure; from right to left.
fn white(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    if let Some(eye) = studio.adapted.eye {
        let text = format!("as an eye used to {} sees it", candelas(f64::from(eye.adaptation)));
        let tip = "Too dark for it is black; colour goes in the dark; glare inside the eye is not drawn. White is as bright as such a display's, 80 cd/m²";
        ui.label(RichText::new(text).color(theme.warm.0)).on_hover_text(tip);
        return;
    }
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
