//! Colours and sizes of the window, from one file.

use bevy_egui::egui::{self, Color32, CornerRadius, FontFamily, FontId, Margin, Stroke, TextStyle};
use serde::Deserialize;

const FILE: &str = include_str!("../../assets/theme.ron");

/// A colour written as six or eight hexadecimal digits.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(try_from = "String")]
pub struct Paint(pub Color32);

impl TryFrom<String> for Paint {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Color32::from_hex(&format!("#{text}")).map(Self).map_err(|e| format!("“{text}” is not a colour: {e:?}"))
    }
}

/// All of them.
#[derive(Clone, Debug, Deserialize)]
pub struct Theme {
    /// Text.
    pub ink: Paint,
    /// Text that stands back.
    pub faded: Paint,
    /// Behind cards.
    pub paper: Paint,
    /// Behind what is chosen.
    pub lifted: Paint,
    /// Lines.
    pub edge: Paint,
    /// What is chosen, and what acts.
    pub warm: Paint,
    /// Text on it.
    pub on_warm: Paint,
    /// Light towards the projector.
    pub back: Paint,
    /// Light out of the far side.
    pub onward: Paint,
    /// Light that passes through.
    pub through: Paint,
    /// Light lost in the cloth.
    pub lost: Paint,
    /// Size of text.
    pub body: f32,
    /// Size of small text.
    pub small: f32,
    /// Size of headings.
    pub large: f32,
    /// Width of the rail.
    pub rail: f32,
    /// Width of the card.
    pub card: f32,
    /// Height of the bar at the top.
    pub bar: f32,
    /// Height of the course of a dated evening above the strip.
    pub course: f32,
    /// Height of the strip at the bottom.
    pub strip: f32,
    /// Space between things.
    pub gap: f32,
}

impl Theme {
    /// Reads the file that is built in.
    pub fn builtin() -> Result<Self, String> {
        ron::from_str(FILE).map_err(|e| format!("assets/theme.ron: {e}"))
    }

    /// Dresses egui in it.
    pub fn dress(&self, ctx: &egui::Context) {
        ctx.set_theme(egui::Theme::Dark);
        ctx.all_styles_mut(|style| {
            let font = |size| FontId::new(size, FontFamily::Proportional);
            style.text_styles = [
                (TextStyle::Body, font(self.body)),
                (TextStyle::Button, font(self.body)),
                (TextStyle::Small, font(self.small)),
                (TextStyle::Heading, font(self.large)),
                (TextStyle::Monospace, FontId::new(self.small, FontFamily::Monospace)),
            ]
            .into();
            let visuals = &mut style.visuals;
            // A caret that blinks would have the window drawn all the time.
            visuals.text_cursor.blink = false;
            visuals.override_text_color = Some(self.ink.0);
            visuals.window_fill = self.paper.0;
            visuals.panel_fill = self.paper.0;
            visuals.window_stroke = Stroke::new(1.0, self.edge.0);
            visuals.selection.bg_fill = self.edge.0;
            visuals.selection.stroke = Stroke::new(1.0, self.ink.0);
            for (widget, fill) in [
                (&mut visuals.widgets.inactive, self.lifted.0),
                (&mut visuals.widgets.hovered, self.edge.0),
                (&mut visuals.widgets.active, self.edge.0),
            ] {
                widget.weak_bg_fill = fill;
                widget.bg_fill = fill;
                widget.bg_stroke = Stroke::new(1.0, self.edge.0);
                widget.corner_radius = CornerRadius::same(5);
            }
            style.spacing.item_spacing = egui::vec2(8.0, 5.0);
            style.interaction.selectable_labels = false;
        });
    }

    /// The frame of a card over the picture.
    pub fn sheet(&self) -> egui::Frame {
        egui::Frame::new()
            .fill(self.paper.0)
            .stroke(Stroke::new(1.0, self.edge.0))
            .corner_radius(CornerRadius::same(8))
            .inner_margin(Margin::same(12))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gauzelight::frames::srgb;

    /// Contrast of two opaque colours: (L1 + 0.05) / (L2 + 0.05) of their relative luminances (W3C, Web Content Accessibility
    /// Guidelines 2.2, definition of contrast ratio; its sRGB threshold differs below the 8-bit step).
    fn contrast(a: Paint, b: Paint) -> f32 {
        let luminance = |paint: Paint| {
            let [r, g, b, _] = paint.0.to_array().map(srgb::decode8);
            0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05
        };
        let (a, b) = (luminance(a), luminance(b));
        a.max(b) / a.min(b)
    }

    #[test]
    fn text_can_be_read() {
        let theme = Theme::builtin().unwrap();
        // Level AA wants 4.5 for text of this size (success criterion 1.4.3).
        for (what, ink, ground) in [
            ("text on a card", theme.ink, theme.paper),
            ("text on what is chosen", theme.ink, theme.lifted),
            ("text on a line's colour", theme.ink, theme.edge),
            ("faded text on a card", theme.faded, theme.paper),
            ("faded text on what is chosen", theme.faded, theme.lifted),
            ("text on warm", theme.on_warm, theme.warm),
            ("warm text on a card", theme.warm, theme.paper),
        ] {
            let ratio = contrast(ink, ground);
            assert!(ratio >= 4.5, "{what}: {ratio:.1} : 1");
        }
    }
}
