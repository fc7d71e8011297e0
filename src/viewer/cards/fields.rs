//! Every field of a thing, each as it is typed or chosen.

mod entry;
mod known;

pub use entry::Entry;

use super::{Act, Shown};
use crate::viewer::studio::Of;
use bevy_egui::egui::{self, Align, ComboBox, FontId, Layout, RichText};
use entry::Line;
use gauzelight::{
    edit::Edit,
    scene::{Around, Evening, Field, Item, Sort},
    units::Length,
};
use known::{known, said, tip};

/// Width of what is typed or chosen, points.
const WIDTH: f32 = 178.0;

/// Whose fields are set.
pub enum Subject<'a> {
    /// Those of a thing.
    Thing(&'a Item),
    /// Those of the evening.
    Evening(&'a Evening),
    /// Those of what lies around.
    Around(&'a Around),
}

impl Subject<'_> {
    fn of(&self) -> Of {
        match self {
            Self::Thing(item) => Of::Thing(item.name().to_owned()),
            Self::Evening(_) => Of::Evening,
            Self::Around(_) => Of::Around,
        }
    }

    fn fields(&self) -> Vec<Field> {
        match self {
            Self::Thing(item) => item.fields(),
            Self::Evening(evening) => evening.fields(),
            Self::Around(around) => around.fields(),
        }
    }

    /// The edit that a field as typed comes to; `None` where that cannot be taken, or changes nothing.
    fn edit(&self, field: &str, index: usize, text: &str) -> Option<Edit> {
        match self {
            Self::Thing(item) => {
                item.with_entry(field, index, text).ok().filter(|changed| changed != *item).map(Edit::Change)
            }
            Self::Evening(evening) => {
                evening.with_entry(field, index, text).ok().filter(|changed| changed != *evening).map(Edit::Evening)
            }
            Self::Around(around) => {
                around.with_entry(field, index, text).ok().filter(|changed| changed != *around).map(Edit::Around)
            }
        }
    }

    /// Whether a field is set here: openings are chosen and set by themselves, and an evening goes either by its date or by
    /// plain numbers.
    fn shows(&self, field: &Field) -> bool {
        let within = |noun: &str| field.name.split('.').next() == Some(noun);
        match self {
            Self::Thing(_) => field.name != "openings",
            Self::Evening(evening) if evening.when.is_some() => !within("sky_lx") && !within("moon"),
            Self::Evening(_) => !within("when"),
            Self::Around(_) => true,
        }
    }

    fn item(&self) -> Option<&Item> {
        if let Self::Thing(item) = self { Some(item) } else { None }
    }
}

/// What the rows of one thing work on.
struct Rows<'a> {
    shown: &'a Shown<'a>,
    subject: Subject<'a>,
    of: Of,
    entry: &'a mut Entry,
    acts: &'a mut Vec<Act>,
    preview: Option<Edit>,
}

/// The name, to be typed over.
pub fn name(ui: &mut egui::Ui, shown: &Shown, item: &Item, entry: &mut Entry, acts: &mut Vec<Act>) {
    let (width, font) = (ui.available_width() - 34.0, FontId::proportional(shown.theme.large));
    let line =
        Line { field: "name", index: 0, now: item.name(), width, font: Some(font), tip: "Its name; type another" };
    entry.line(ui, &Of::Thing(item.name().to_owned()), line, acts);
}

/// Why what was typed in a field was not taken, if it was not.
pub fn fault(ui: &mut egui::Ui, shown: &Shown, of: &Of, field: &str, entry: &Entry) {
    if let Some(why) = entry.fault(of, field) {
        ui.label(RichText::new(why).size(shown.theme.small).color(shown.theme.warm.0));
    }
}

/// All other fields.
pub fn draw(ui: &mut egui::Ui, shown: &Shown, subject: Subject<'_>, entry: &mut Entry, acts: &mut Vec<Act>) {
    let (mut fields, of) = (subject.fields(), subject.of());
    fields.retain(|field| subject.shows(field));
    let mut rows = Rows { shown, subject, of, entry, acts, preview: None };
    let mut within = String::new();
    for field in &fields {
        let noun = field.name.rsplit_once('.').map_or("", |(noun, _)| noun);
        if noun != within {
            noun.clone_into(&mut within);
            rows.head(ui, noun);
        }
        rows.row(ui, field);
        fault(ui, shown, &rows.of, &field.name, rows.entry);
    }
    if rows.preview.is_some() || shown.studio.preview.is_some() {
        rows.acts.push(Act::Preview(rows.preview));
    }
}

impl Rows<'_> {
    /// The head of the fields that stand within a noun, and a way back to what it usually is.
    fn head(&mut self, ui: &mut egui::Ui, noun: &str) {
        ui.add_space(3.0);
        if noun.is_empty() {
            ui.separator();
            return;
        }
        ui.horizontal(|ui| {
            ui.label(RichText::new(said(noun)).strong());
            let usual = self.subject.edit(noun, 0, "");
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                let button = egui::Button::new(RichText::new("Default").size(self.shown.theme.small)).frame(false);
                if usual.is_some() && ui.add(button).on_hover_text("Sets these fields back to their default").clicked()
                {
                    self.set(noun, 0, "");
                }
            });
        });
    }

    fn row(&mut self, ui: &mut egui::Ui, field: &Field) {
        let tip = tip(field);
        let label = RichText::new(said(&field.name)).color(self.shown.theme.faded.0);
        if field.sort == Sort::Group {
            ui.label(label).on_hover_text(&tip);
            let width = ui.available_width();
            self.line(ui, field, 0, width, &tip);
            return;
        }
        ui.horizontal(|ui| {
            ui.label(label).on_hover_text(&tip);
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| self.value(ui, field, &tip));
        });
        match field.sort {
            Sort::Aim if field.entries.len() == 3 => self.indented(ui, |rows, ui| rows.numbers(ui, field, 3, &tip)),
            Sort::Names => {
                for index in 1..=field.entries.len() {
                    self.indented(ui, |rows, ui| rows.one_of_names(ui, field, index, &tip));
                }
            }
            _ => {}
        }
    }

    /// Another line of a field, right under its first.
    fn indented(&mut self, ui: &mut egui::Ui, draw: impl FnOnce(&mut Self, &mut egui::Ui)) {
        ui.horizontal(|ui| {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| draw(self, ui));
        });
    }

    /// What stands in a field, from right to left.
    fn value(&mut self, ui: &mut egui::Ui, field: &Field, tip: &str) {
        let now = field.entries.first().map_or("", String::as_str);
        match field.sort {
            Sort::Switch => {
                let mut on = now == "true";
                if ui.checkbox(&mut on, "").on_hover_text(tip).changed() {
                    self.set(&field.name, 0, if on { "true" } else { "false" });
                }
            }
            Sort::Choice(words) => self.choose(ui, field, 0, now, words.iter().map(|w| (*w).to_owned()).collect()),
            Sort::Parts(_) => {
                if ui.button("give it one").on_hover_text(tip).clicked() {
                    self.set(&field.name, 0, "()");
                }
            }
            Sort::Names => self.one_of_names(ui, field, 0, tip),
            Sort::Aim => self.aim(ui, field),
            Sort::Text if field.name == "content.picture" => {
                self.pictures(ui, field);
                self.line(ui, field, 0, WIDTH - 32.0, tip);
            }
            Sort::Name => match known(self.shown, self.subject.item(), &field.name) {
                Some(list) => self.choose(ui, field, 0, now, list),
                None => self.line(ui, field, 0, WIDTH, tip),
            },
            Sort::Lengths(count) | Sort::Numbers(count) => self.numbers(ui, field, count, tip),
            Sort::Times => self.numbers(ui, field, 2, tip),
            _ => self.line(ui, field, 0, WIDTH, tip),
        }
    }

    fn numbers(&mut self, ui: &mut egui::Ui, field: &Field, count: u8, tip: &str) {
        for index in (0..usize::from(count)).rev() {
            self.line(ui, field, index, WIDTH / f32::from(count) - 5.0, tip);
        }
    }

    /// One of several names, to be changed or taken out, or the first that is not there yet.
    fn one_of_names(&mut self, ui: &mut egui::Ui, field: &Field, index: usize, tip: &str) {
        let now = field.entries.get(index).map_or("", String::as_str);
        if !now.is_empty() && ui.small_button("×").on_hover_text("Take it out of the list").clicked() {
            self.set(&field.name, index, "");
        }
        let list = known(self.shown, self.subject.item(), &field.name).unwrap_or_default();
        if list.is_empty() {
            ui.label(RichText::new("none to choose from").color(self.shown.theme.faded.0)).on_hover_text(tip);
        } else {
            self.choose(ui, field, index, if now.is_empty() { "add…" } else { now }, list);
        }
    }

    /// A thing to aim at, or a point of its own.
    fn aim(&mut self, ui: &mut egui::Ui, field: &Field) {
        let point = "a point";
        let is_point = field.entries.len() == 3;
        let now = if is_point { point } else { field.entries.first().map_or("", String::as_str) };
        let mut list = known(self.shown, self.subject.item(), &field.name).unwrap_or_default();
        if !is_point && let Some(at) = self.shown.studio.night().place(now).map(|place| place.middle) {
            let of_tape = |v: f32| (f64::from(v) * 100.0).round() / 100.0;
            let [x, y, z] =
                at.to_array().map(|v| Length::metres(of_tape(v)).show(self.shown.studio.yard().units.style()));
            let button =
                ui.small_button("free").on_hover_text("Aim at the point where that now is, so that it can be moved");
            if button.clicked() {
                self.set(&field.name, 0, &format!("({x:?}, {y:?}, {z:?})"));
            }
        }
        list.retain(|name| name != now);
        self.choose_in(ui, field, 0, now, list, WIDTH - if is_point { 0.0 } else { 38.0 });
    }

    /// Pictures that can be thrown, to be chosen from.
    fn pictures(&mut self, ui: &mut egui::Ui, field: &Field) {
        ui.menu_button("…", |ui| {
            // The folder is read while the list is open, not while the card is.
            for name in known(self.shown, self.subject.item(), &field.name).unwrap_or_default() {
                let response = ui.selectable_label(field.entries.first() == Some(&name), &name);
                if response.clicked() {
                    self.set(&field.name, 0, &name);
                    ui.close();
                }
            }
        })
        .response
        .on_hover_text("Our own pictures, and those beside the yard's file");
    }

    fn line(&mut self, ui: &mut egui::Ui, field: &Field, index: usize, width: f32, tip: &str) {
        let now = field.entries.get(index).map_or("", String::as_str);
        let line = Line { field: &field.name, index, now, width, font: None, tip };
        self.entry.line(ui, &self.of, line, self.acts);
    }

    /// A list to choose from, which shows what it would be under the pointer.
    fn choose(&mut self, ui: &mut egui::Ui, field: &Field, index: usize, now: &str, list: Vec<String>) {
        self.choose_in(ui, field, index, now, list, WIDTH);
    }

    fn choose_in(&mut self, ui: &mut egui::Ui, field: &Field, index: usize, now: &str, list: Vec<String>, width: f32) {
        let id = ("choose", &self.of, &field.name, index);
        ComboBox::from_id_salt(id).selected_text(now).width(width).show_ui(ui, |ui| {
            ui.set_min_width(220.0);
            for word in list {
                let response = ui.selectable_label(word == now, &word);
                if response.clicked() {
                    self.set(&field.name, index, &word);
                } else if response.hovered()
                    && word != now
                    && let Some(edit) = self.subject.edit(&field.name, index, &word)
                {
                    self.preview = Some(edit);
                }
            }
        });
    }

    /// Sets an entry of a field to what was chosen.
    fn set(&mut self, field: &str, index: usize, text: &str) {
        self.entry.forgive();
        let (of, field, text) = (self.of.clone(), field.to_owned(), text.to_owned());
        self.acts.push(Act::Type { of, field, index, text });
    }
}
