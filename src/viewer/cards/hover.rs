//! What the pointer rests on: its name, lux, cd/m², and who lit it.

use super::{Hover, Shown};
use bevy_egui::egui::{self, RichText};
use gauzelight::{
    scene::Units,
    units::{candelas, illuminance},
};

pub fn draw(ui: &egui::Ui, at: egui::Pos2, hover: &Hover, shown: &Shown) {
    let theme = shown.theme;
    let full = ui.max_rect();
    // Beside the pointer, on the side where there is room.
    let dx = if at.x > full.center().x { -250.0 } else { 22.0 };
    let dy = if at.y > full.center().y { -96.0 } else { 22.0 };
    egui::Area::new(egui::Id::new("hover")).fixed_pos(at + egui::vec2(dx, dy)).interactable(false).show(
        ui.ctx(),
        |ui| {
            theme.sheet().inner_margin(egui::Margin::symmetric(10, 7)).show(ui, |ui| {
                ui.set_max_width(220.0);
                let name = if hover.seen.name.is_empty() { "sky" } else { &hover.seen.name };
                ui.label(RichText::new(name).strong());
                let light = candelas(f64::from(hover.luminance));
                if hover.seen.name.is_empty() {
                    ui.label(light);
                    return;
                }
                let lx = f64::from(hover.illuminance);
                let feet = shown.studio.yard().units == Units::Feet;
                ui.label(format!("{}   {light}", illuminance(lx, lx, lx, feet).join(", ")));
                let lit: Vec<String> =
                    hover.shares.iter().take(4).map(|(who, share)| format!("{who} {:.0} %", share * 100.0)).collect();
                if !lit.is_empty() {
                    ui.label(RichText::new(lit.join("  ·  ")).size(theme.small).color(theme.faded.0));
                }
            });
        },
    );
}
