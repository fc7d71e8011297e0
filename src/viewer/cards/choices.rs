//! The card that compares before buying: every fabric, every two, or every projector, in a table to be sorted.

use super::{Act, Shown, bar::toggle};
use bevy_egui::egui::{self, Button, Grid, RichText, ScrollArea};
use gauzelight::{
    edit::Edit,
    judge::compare::{Comparison, FromSpot, Key, Of, Row},
    units::{about, two_digits},
};

/// The columns, what each is sorted by, and what it means.
const COLUMNS: [(Key, &str, &str); 7] = [
    (Key::Name, "what", "Fabrics from front to back, or the projector's class"),
    (Key::Word, "it would be", "How well its figure is seen from where you stand"),
    (Key::Luminance, "cd/m²", "Mean of the figure from where you stand"),
    (Key::Ghost, "shows again", "The second picture as seen on what stands behind, divided by the figure"),
    (Key::Day, "by day", "How many times brighter or darker than what is behind it, unlit under an overcast sky"),
    (Key::Through, "passes", "Share of light that goes straight through"),
    (Key::Cost, "costs", "In your money; prices of the catalogue are invented, so write your own"),
];

/// How the table is sorted.
#[derive(Clone, Copy)]
pub struct Sorting(Key);

impl Default for Sorting {
    fn default() -> Self {
        Self(Key::Word)
    }
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, sorting: &mut Sorting, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let Some((station, now)) = studio.choosing.asked else { return };
    ui.label(RichText::new("Compare before buying").size(theme.large).strong());
    ui.horizontal(|ui| {
        for (of, text) in [(Of::Fabrics, "fabrics"), (Of::Pairs, "two layers"), (Of::Projectors, "projectors")] {
            if toggle(ui, theme, of == now, text, "Try each of them in a copy of the yard") && of != now {
                acts.push(Act::CompareFor(station, of));
            }
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
    ui.add_space(4.0);
    match &studio.choosing.done {
        None => drop(ui.label(RichText::new("trying each of them…").color(theme.faded.0))),
        Some(Err(why)) => drop(ui.label(RichText::new(why).color(theme.warm.0))),
        Some(Ok(comparison)) => table(ui, shown, comparison, sorting, acts),
    }
}

fn table(ui: &mut egui::Ui, shown: &Shown, comparison: &Comparison, sorting: &mut Sorting, acts: &mut Vec<Act>) {
    let (spot, theme) = (shown.studio.spot, shown.theme);
    let name = comparison.spots.get(spot).map_or("", String::as_str);
    let words = format!("for {} on {}, seen from {name}", comparison.station, comparison.target);
    ui.label(RichText::new(words).color(theme.faded.0));
    let mut rows: Vec<&Row> = comparison.rows.iter().collect();
    rows.sort_by(|a, b| sorting.0.order(a, b, spot));
    ScrollArea::vertical().max_height(420.0).show(ui, |ui| {
        Grid::new("choices").num_columns(COLUMNS.len() + 1).spacing([16.0, 5.0]).striped(true).show(ui, |ui| {
            for (key, word, tip) in COLUMNS {
                let text = RichText::new(word).size(theme.small);
                if ui.add(Button::new(text).selected(sorting.0 == key)).on_hover_text(tip).clicked() {
                    sorting.0 = key;
                }
            }
            ui.end_row();
            for row in rows {
                line(ui, shown, row, spot, acts);
                ui.end_row();
            }
        });
    });
}

fn line(ui: &mut egui::Ui, shown: &Shown, row: &Row, spot: usize, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let name = RichText::new(row.name());
    ui.label(if row.now { name.strong().color(theme.warm.0) } else { name });
    let from = row.spots.get(spot).filter(|from| from.word.is_some());
    let number = |value: Option<f64>, unit: &str| value.map_or_else(|| "–".to_owned(), |v| two_digits(v) + unit);
    ui.label(from.map_or("out of sight", |from| from.phrase.as_str()));
    ui.label(from.map_or_else(|| "–".to_owned(), |from| about(from.mean.low, from.mean.typical, from.mean.high, "")));
    ui.label(number(from.and_then(FromSpot::second_picture), ""));
    ui.label(number(from.and_then(|from| from.by_day), " : 1"));
    ui.label(number(row.straight.map(|share| 100.0 * share.typical), " %"));
    ui.label(row.cost.map_or_else(|| "–".to_owned(), |cost| about(cost.low, cost.typical, cost.high, "")));
    if row.now {
        ui.label(RichText::new("there now").size(theme.small).color(theme.faded.0));
    } else if ui
        .button(RichText::new("try it").size(theme.small))
        .on_hover_text("One step; Ctrl Z takes it back")
        .clicked()
    {
        acts.push(Act::Build(Edit::Change(row.item.clone()), None));
    }
}
