//! The card of the evening: by date and place, or by plain numbers; and who comes by.

use super::{Act, Aside, Pad, Shown, bar::toggle, fields, fields::Subject, side};
use bevy_egui::egui::{self, Align, Layout, Rect, RichText, ScrollArea};

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, pad: &mut Pad, acts: &mut Vec<Act>) {
    let (yard, theme) = (shown.studio.yard(), shown.theme);
    side(ui, "evening", full, shown, |ui, tallest| {
        ui.horizontal(|ui| {
            ui.label(RichText::new("The evening").size(theme.large).strong());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if ui.button("×").on_hover_text("Close (Esc)").clicked() {
                    acts.push(Act::Aside(Aside::Evening));
                }
            });
        });
        let dated = yard.evening.when.is_some();
        ui.horizontal(|ui| {
            let tip = "Sky, sun and moon follow from the clock; lamps from their switch times";
            if toggle(ui, theme, dated, "By date and place", tip) && !dated {
                acts.push(Act::Dated(true));
            }
            if toggle(ui, theme, !dated, "By plain numbers", "How many lux the sky and the moon give") && dated {
                acts.push(Act::Dated(false));
            }
        });
        ui.separator();
        let room = tallest - 78.0;
        ScrollArea::vertical().max_height(room).min_scrolled_height(room).show(ui, |ui| {
            fields::draw(ui, shown, Subject::Evening(&yard.evening), &mut pad.entry, acts);
            ui.add_space(6.0);
            ui.label(RichText::new("Who comes by").strong());
            fields::draw(ui, shown, Subject::Around(&yard.around()), &mut pad.entry, acts);
        });
    });
}
