//! The legend of the false colours.

use super::{super::studio::RANGE, Shown};
use bevy_egui::egui::{self, Align2, Color32, FontId, Rect, pos2, vec2};
use gauzelight::{
    frames::srgb,
    picture::{legend, palette},
    units::two_digits,
};

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown) {
    let theme = shown.theme;
    let height = 260.0;
    let at = pos2(
        full.min.x + theme.rail + 3.0 * theme.gap,
        full.max.y - super::strip_height(shown.studio, theme) - height - 2.0 * theme.gap - 16.0,
    );
    let painter = ui.ctx().layer_painter(egui::LayerId::new(egui::Order::Middle, egui::Id::new("legend")));
    let ground = Rect::from_min_size(at, vec2(86.0, height + 30.0));
    painter.rect_filled(ground, 8.0, theme.paper.0);
    let bar = Rect::from_min_size(at + vec2(10.0, 24.0), vec2(18.0, height - 4.0));
    let steps = 130;
    for i in 0..steps {
        let share = (i as f32 + 0.5) / steps as f32;
        let code = palette(share).to_array().map(srgb::encode8);
        let y = bar.max.y - bar.height() * (i + 1) as f32 / steps as f32;
        let step = Rect::from_min_size(pos2(bar.min.x, y), vec2(bar.width(), bar.height() / steps as f32 + 0.6));
        painter.rect_filled(step, 0.0, Color32::from_rgb(code[0], code[1], code[2]));
    }
    painter.text(at + vec2(10.0, 5.0), Align2::LEFT_TOP, "cd/m²", FontId::proportional(theme.small), theme.faded.0);
    for (value, share) in legend(RANGE.0, RANGE.1) {
        let y = bar.max.y - bar.height() * share;
        let text = two_digits(f64::from(value));
        painter.text(
            pos2(bar.max.x + 7.0, y),
            Align2::LEFT_CENTER,
            text,
            FontId::proportional(theme.small),
            theme.ink.0,
        );
    }
}
