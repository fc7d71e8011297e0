//! The rail: a tile for every station.

use super::{Act, Shown, fixed};
use bevy_egui::egui::{self, Align2, Color32, FontId, Rect, Sense, Stroke, StrokeKind, pos2, vec2};
use gauzelight::{judge::Banded, units::about};

const TILE: f32 = 92.0;

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let top = full.min.y + theme.bar + theme.gap;
    let bottom = full.max.y - super::strip_height(shown.studio, theme) - theme.gap;
    let stations = shown.studio.yard().stations.len();
    let height = ((TILE + theme.gap) * stations as f32).min(bottom - top);
    let rect = Rect::from_min_size(pos2(full.min.x + theme.gap, top), vec2(theme.rail, height));
    fixed(ui, "rail", rect, |ui| {
        egui::ScrollArea::vertical().id_salt("stations").auto_shrink(false).show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = theme.gap;
            for station in 0..stations {
                tile(ui, shown, station, acts);
            }
        });
    });
}

fn tile(ui: &mut egui::Ui, shown: &Shown, index: usize, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let station = &studio.yard().stations[index];
    let (rect, response) = ui.allocate_exact_size(vec2(shown.theme.rail, TILE), Sense::click());
    let chosen = studio.chosen.as_deref() == Some(station.name.0.as_str());
    let painter = ui.painter().with_clip_rect(rect.intersect(ui.clip_rect()));
    let edge = if chosen || response.hovered() { theme.warm.0 } else { theme.edge.0 };
    let fill = if chosen { theme.lifted.0 } else { theme.paper.0 };
    painter.rect(rect, 6.0, fill, Stroke::new(1.0, edge), StrokeKind::Inside);
    let frame = Rect::from_min_size(rect.min + vec2(9.0, 9.0), vec2(62.0, TILE - 18.0));
    painter.rect_filled(frame, 3.0, Color32::BLACK);
    if let Some(Some((texture, size))) = shown.thumbs.get(index) {
        let scale = (frame.width() / size.x).min(frame.height() / size.y);
        let dim = if station.on { Color32::WHITE } else { Color32::from_gray(70) };
        let uv = Rect::from_min_max(pos2(0.0, 0.0), pos2(1.0, 1.0));
        painter.image(*texture, Rect::from_center_size(frame.center(), *size * scale), uv, dim);
    }
    let left = frame.max.x + 10.0;
    let room = rect.max.x - left - 6.0;
    let line = |y: f32, text: String, size: f32, colour: Color32| {
        let galley = painter.layout(text, FontId::proportional(size), colour, room);
        painter.galley(pos2(left, rect.min.y + y), galley, colour);
    };
    let mut name =
        egui::text::LayoutJob::simple_singleline(station.name.0.clone(), FontId::proportional(theme.body), theme.ink.0);
    name.wrap = egui::text::TextWrapping::truncate_at_width(room);
    let name = painter.layout_job(name);
    painter.galley(pos2(left, rect.min.y + 8.0), name, theme.ink.0);
    let switch = Rect::from_min_size(pos2(left, rect.max.y - 27.0), vec2(44.0, 19.0));
    if studio.yard().is_hidden(&station.name.0) {
        line(32.0, "put away".to_owned(), theme.small, theme.faded.0);
    } else if station.on {
        let reading = studio.readings.reading(index, &station.name.0);
        let spot = reading.and_then(|r| r.spots.get(studio.spot));
        match (reading, spot) {
            (Some(r), Some(s)) if s.in_sight > 0.02 => {
                let short = |b: Banded, unit: &str| about(b.low, b.typical, b.high, unit);
                let text = format!("{}\n{}", short(r.figure_lx, "lx"), short(s.mean, "cd/m²"));
                line(32.0, text, theme.small, theme.faded.0);
                if let Some(sight) = &s.sight {
                    // Beside the switch, where it has a line to itself.
                    let at = pos2(switch.max.x + 8.0, switch.center().y);
                    let word = sight.word.name();
                    painter.text(at, Align2::LEFT_CENTER, word, FontId::proportional(theme.body), theme.ink.0);
                }
            }
            (Some(_), _) => line(32.0, "out of sight from here".to_owned(), theme.small, theme.faded.0),
            _ => line(32.0, "…".to_owned(), theme.small, theme.faded.0),
        }
    }
    let answer = ui.interact(switch, ui.id().with(("switch", index)), Sense::click());
    let (fill, ink, text) =
        if station.on { (theme.warm.0, theme.on_warm.0, "on") } else { (theme.edge.0, theme.ink.0, "off") };
    painter.rect(switch, 9.0, fill, Stroke::NONE, StrokeKind::Inside);
    painter.text(switch.center(), Align2::CENTER_CENTER, text, FontId::proportional(theme.small), ink);
    if answer.on_hover_text("Switch this station").clicked() {
        acts.push(Act::Switch(index));
    } else if response
        .on_hover_text("On the figure, its mean from here, and how well it is seen: lost, faint, clear or strong")
        .clicked()
    {
        acts.push(Act::Choose(if chosen { None } else { Some(station.name.0.clone()) }));
    }
}
