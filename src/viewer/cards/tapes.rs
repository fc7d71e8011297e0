//! The card that places a thing as a person measures it: by tape from named points.

use super::{Act, Shown};
use bevy_egui::egui::{self, Button, ComboBox, Grid, RichText, TextEdit};
use gauzelight::{
    craft::tapes::{Known, Side, Tape, Taped, by_tapes, by_tapes_and_height},
    edit::Edit,
    light::Night,
    scene::{Item, Yard},
    units::Length,
};
use glam::DVec3;

/// Which of the two places that tapes reach is meant, as a person says it.
const SIDES: [(&str, Side); 4] = [
    ("toward the street", Side::FRONT),
    ("toward the house", Side::BACK),
    ("to the left", Side::LEFT),
    ("to the right", Side::RIGHT),
];

/// The tapes as they are read.
#[derive(Default)]
pub struct Form {
    /// Named point and reading of each; the third may be left out where the height is known.
    tapes: [(String, String); 3],
    height: String,
    side: usize,
}

impl Form {
    fn place(&self, points: &[Known]) -> Result<Taped, String> {
        let length = |text: &str| Length::parse(text).map_err(|e| e.to_string());
        let tape = |(name, reads): &(String, String)| -> Result<Tape, String> {
            let from = points.iter().find(|point| point.name == *name).cloned();
            Ok(Tape { from: from.ok_or("Choose the point that the tape is held to")?, m: length(reads)?.m })
        };
        let side = SIDES[self.side].1;
        let [a, b, c] = &self.tapes;
        let placed = if self.height.trim().is_empty() {
            by_tapes(&[tape(a)?, tape(b)?, tape(c)?], &[], side)
        } else {
            let more = if c.1.trim().is_empty() { Vec::new() } else { vec![tape(c)?] };
            by_tapes_and_height(&[tape(a)?, tape(b)?], length(&self.height)?.m, &more, side)
        };
        placed.map_err(|fault| format!("{fault}: {}", fault.remedy()))
    }
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let Some(item) = studio.item() else { return };
    ui.label(RichText::new(format!("{} by tape", item.name())).size(theme.large).strong());
    let words =
        "Two tapes and a height, or three tapes. Measure to the middle of the lens, or to where the thing is held.";
    ui.label(RichText::new(words).color(theme.faded.0));
    ui.add_space(4.0);
    let points = named_points(studio.yard(), studio.night(), item.name());
    Grid::new("tapes").num_columns(3).spacing([14.0, 6.0]).show(ui, |ui| {
        for (index, (name, reads)) in form.tapes.iter_mut().enumerate() {
            ui.label(["First tape", "Second tape", "Third tape"][index]);
            let shown = if name.is_empty() { "choose a point".to_owned() } else { name.clone() };
            ComboBox::from_id_salt(("point", index)).selected_text(shown).width(230.0).show_ui(ui, |ui| {
                for point in &points {
                    ui.selectable_value(name, point.name.clone(), &point.name);
                }
            });
            ui.add(TextEdit::singleline(reads).desired_width(90.0))
                .on_hover_text("m, cm, ft or in: 2.35 m, 7' 8 1/2\"");
            ui.end_row();
        }
        ui.label("Height above ground");
        ui.label(RichText::new("leave it out where three tapes tell").size(theme.small).color(theme.faded.0));
        ui.add(TextEdit::singleline(&mut form.height).desired_width(90.0));
        ui.end_row();
        ui.label("Of two places, the one");
        ComboBox::from_id_salt("side").selected_text(SIDES[form.side].0).width(230.0).show_ui(ui, |ui| {
            for (index, (word, _)) in SIDES.iter().enumerate() {
                ui.selectable_value(&mut form.side, index, *word);
            }
        });
        ui.end_row();
    });
    ui.add_space(4.0);
    let placed = form.place(&points);
    let style = studio.yard().units.style();
    let length = |m: f64| Length::metres((m * 1000.0).round() / 1000.0).show(style);
    match &placed {
        Ok(taped) => {
            let [x, y, z] = taped.at.to_array().map(length);
            let sure =
                format!("x {x}   y {y}   z {z}; it moves by {:.1} times what a tape is off, at most", taped.moves);
            ui.label(sure);
            for miss in &taped.misses {
                let way = if *miss < 0.0 { "too little" } else { "too much" };
                let text = format!("the third tape reads {} {way}", length(miss.abs()));
                ui.label(RichText::new(text).size(theme.small).color(theme.faded.0));
            }
        }
        Err(why) => drop(ui.label(RichText::new(why).size(theme.small).color(theme.warm.0))),
    }
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        let main = Button::new(RichText::new("Put it there").color(theme.on_warm.0)).fill(theme.warm.0);
        if ui.add_enabled(placed.is_ok(), main).clicked()
            && let Ok(taped) = &placed
        {
            acts.push(Act::Build(Edit::Change(put(item.clone(), taped.at)), None));
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
}

/// The item with its first point at a place.
fn put(item: Item, at: DVec3) -> Item {
    let from = item.points().first().copied().unwrap_or_default();
    let to = at.to_array();
    item.moved([0, 1, 2].map(|axis| to[axis] - from[axis]))
}

/// Corners and feet that a tape can be held to, of everything but the thing itself.
fn named_points(yard: &Yard, night: &Night, but: &str) -> Vec<Known> {
    let mut points = Vec::new();
    for place in &night.places {
        let name = &night.names[place.owner as usize];
        if name == but {
            continue;
        }
        let Some(face) = place.face else { continue };
        let corners =
            [(0.0, 0.0, "left foot"), (1.0, 0.0, "right foot"), (0.0, 1.0, "left top"), (1.0, 1.0, "right top")];
        points.extend(
            corners.map(|(s, t, word)| Known { name: format!("{name}, {word}"), at: face.point(s, t).as_dvec3() }),
        );
    }
    let feet = yard.items().filter(|item| {
        item.name() != but && matches!(item, Item::Thing(_) | Item::Form(_) | Item::Plant(_) | Item::Lamp(_))
    });
    points.extend(feet.filter_map(|item| {
        let at = DVec3::from(*item.points().first()?);
        Some(Known { name: item.name().to_owned(), at })
    }));
    points
}
