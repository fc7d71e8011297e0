//! The card that holds two arrangements against each other: both pictures, and a table of what differs.

use super::{Act, Shown};
use crate::viewer::studio::Comparison;
use bevy_egui::egui::{self, ColorImage, Grid, RichText, ScrollArea, TextureHandle, TextureOptions, vec2};
use gauzelight::{
    judge::{Banded, StationReading},
    units::{Length, Style, about, two_digits},
};

/// Textures of the two pictures.
#[derive(Default)]
pub struct Plates {
    of: u64,
    kept: Vec<TextureHandle>,
}

impl Plates {
    fn refresh(&mut self, ctx: &egui::Context, comparison: &Comparison) {
        if self.of == comparison.number && !self.kept.is_empty() {
            return;
        }
        self.of = comparison.number;
        let plate = |side: &crate::viewer::studio::Side| {
            let image = ColorImage::from_rgb(side.picture.0, &side.picture.1);
            ctx.load_texture(format!("arrangement {}", side.name), image, TextureOptions::LINEAR)
        };
        self.kept = comparison.sides.iter().map(plate).collect();
    }
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, plates: &mut Plates, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    ui.label(RichText::new("Two arrangements").size(theme.large).strong());
    let Some(comparison) = &studio.comparing.done else {
        ui.label(RichText::new("looking at both…").color(theme.faded.0));
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
        return;
    };
    plates.refresh(ui.ctx(), comparison);
    let width = 0.5 * (ui.available_width() - 12.0);
    ui.horizontal(|ui| {
        for (plate, side) in plates.kept.iter().zip(&comparison.sides) {
            ui.vertical(|ui| {
                let size = plate.size_vec2();
                ui.image((plate.id(), vec2(width, width * size.y / size.x)));
                ui.label(RichText::new(&side.name).strong());
            });
        }
    });
    ui.add_space(4.0);
    ScrollArea::vertical().max_height(220.0).show(ui, |ui| table(ui, shown, comparison));
    ui.add_space(4.0);
    ui.horizontal(|ui| {
        let [_, other] = &comparison.sides;
        if ui.button(format!("Show “{}”", other.name)).clicked() {
            acts.push(Act::Build(gauzelight::edit::Edit::Arrange(other.name.clone()), None));
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
}

/// A row for every reading that differs by more than a twentieth.
fn table(ui: &mut egui::Ui, shown: &Shown, comparison: &Comparison) {
    let theme = shown.theme;
    let [here, there] = &comparison.sides;
    let mut names: Vec<&str> = here.readings.iter().map(|r| r.station.as_str()).collect();
    names.extend(
        there
            .readings
            .iter()
            .map(|r| r.station.as_str())
            .filter(|name| here.readings.iter().all(|r| r.station != *name)),
    );
    let spot = shown.studio.spot;
    let style = shown.studio.yard().units.style();
    let mut differs = false;
    Grid::new("differences").num_columns(4).spacing([22.0, 4.0]).striped(true).show(ui, |ui| {
        for word in ["", "", here.name.as_str(), there.name.as_str()] {
            ui.label(RichText::new(word).color(theme.faded.0));
        }
        ui.end_row();
        for name in names {
            let of = |side: &'_ [StationReading]| {
                side.iter().find(|r| r.station == name && r.on).map(|r| rows(r, spot, style))
            };
            let (a, b) = (of(&here.readings), of(&there.readings));
            let count = a.as_ref().or(b.as_ref()).map_or(0, Vec::len);
            let mut first = true;
            for index in 0..count {
                let cell = |side: &Option<Vec<Row>>| side.as_ref().map(|rows| rows[index].clone());
                let (x, y) = (cell(&a), cell(&b));
                if let (Some(x), Some(y)) = (&x, &y)
                    && (x.value - y.value).abs() <= 0.05 * x.value.abs().max(y.value.abs())
                {
                    continue;
                }
                differs = true;
                let Some(word) = x.as_ref().or(y.as_ref()).map(|row| row.word) else { continue };
                ui.label(if std::mem::take(&mut first) { name } else { "" });
                ui.label(RichText::new(word).color(theme.faded.0));
                for side in [x, y] {
                    ui.label(side.map_or_else(|| "off".to_owned(), |row| row.text));
                }
                ui.end_row();
            }
        }
    });
    if !differs {
        ui.label(RichText::new("No reading differs by more than a twentieth.").color(theme.faded.0));
    }
}

/// One reading of a station.
#[derive(Clone)]
struct Row {
    word: &'static str,
    value: f64,
    text: String,
}

fn rows(r: &StationReading, spot: usize, style: Style) -> Vec<Row> {
    let length = |m: f64| Length::metres((m * 100.0).round() / 100.0).show(style);
    let banded =
        |word, b: Banded, unit: &str| Row { word, value: b.typical, text: about(b.low, b.typical, b.high, unit) };
    let plain = |word, value: f64, text: String| Row { word, value, text };
    let from = r.spots.get(spot);
    let mean = from.map_or(Banded::default(), |s| s.mean);
    let ratio = from.and_then(|s| s.figure_to_ground).map_or(0.0, |b| b.typical);
    vec![
        banded("on the figure", r.figure_lx, "lx"),
        banded("figure from here", mean, "cd/m²"),
        plain("figure : ground", ratio, format!("{} : 1", two_digits(ratio))),
        plain("lens to target", r.throw_m.unwrap_or(0.0), r.throw_m.map_or_else(|| "–".to_owned(), length)),
        plain("figure's height", r.figure.height_m, length(r.figure.height_m)),
        plain("beside the target", r.misses, format!("{:.0} %", 100.0 * r.misses)),
    ]
}
