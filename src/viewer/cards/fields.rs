//! Every field of a thing, each as it is typed or chosen.

use super::{Act, Shown};
use bevy_egui::egui::{self, Align, ComboBox, Layout, RichText, TextEdit};
use gauzelight::{
    edit::Edit,
    scene::{Fabric, FabricKind, Field, Item, Sort},
};

/// What is being typed, and what is wrong with what was.
#[derive(Default)]
pub struct Entry {
    /// Thing, field and place of the entry that is being typed.
    at: Option<(String, &'static str, usize)>,
    text: String,
    /// What stood there before.
    before: String,
    /// Whether it was drawn in this frame.
    drawn: bool,
    /// Thing and field of what was not taken, and why.
    fault: Option<(String, &'static str, String)>,
}

impl Entry {
    /// Takes what is being typed, whatever ended the typing.
    pub fn take(&mut self, acts: &mut Vec<Act>) {
        let Some((name, field, index)) = self.at.take() else { return };
        if self.text != self.before {
            acts.push(Act::Type { name, field, index, text: std::mem::take(&mut self.text) });
        }
    }

    /// After all cards are drawn: what is typed where no card shows it any more is taken too.
    pub fn take_hidden(&mut self, acts: &mut Vec<Act>) {
        if !std::mem::take(&mut self.drawn) {
            self.take(acts);
        }
    }

    /// Tells beside a field why what was typed was not taken.
    pub fn refused(&mut self, name: String, field: &'static str, why: String) {
        self.fault = Some((name, field, why));
    }
}

/// The name, to be typed over.
pub fn name(ui: &mut egui::Ui, shown: &Shown, item: &Item, entry: &mut Entry, acts: &mut Vec<Act>) {
    let width = ui.available_width() - 34.0;
    let font = egui::FontId::proportional(shown.theme.large);
    typed(ui, item, "name", 0, item.name(), entry, width, Some(font), "Its name; type another", acts);
}

/// Why the name was not taken, if it was not.
pub fn name_fault(ui: &mut egui::Ui, shown: &Shown, item: &Item, entry: &Entry) {
    if let Some((name, "name", why)) = &entry.fault
        && name == item.name()
    {
        ui.label(RichText::new(why).size(shown.theme.small).color(shown.theme.warm.0));
    }
}

/// All other fields.
pub fn draw(ui: &mut egui::Ui, shown: &Shown, item: &Item, entry: &mut Entry, acts: &mut Vec<Act>) {
    let mut preview = None;
    // Openings are chosen and set by themselves.
    for field in item.fields().into_iter().filter(|field| field.name != "openings") {
        row(ui, shown, item, &field, entry, acts, &mut preview);
        if let Some((name, at, why)) = &entry.fault
            && name == item.name()
            && *at == field.name
        {
            ui.label(RichText::new(why).size(shown.theme.small).color(shown.theme.warm.0));
        }
    }
    if preview.is_some() || shown.studio.preview.is_some() {
        acts.push(Act::Preview(preview));
    }
}

fn row(
    ui: &mut egui::Ui,
    shown: &Shown,
    item: &Item,
    field: &Field,
    entry: &mut Entry,
    acts: &mut Vec<Act>,
    preview: &mut Option<Edit>,
) {
    let theme = shown.theme;
    let tip = tip(field);
    if field.sort == Sort::Group {
        ui.label(RichText::new(said(field.name)).color(theme.faded.0)).on_hover_text(&tip);
        let now = field.entries.first().map_or("", String::as_str);
        let width = ui.available_width();
        typed(ui, item, field.name, 0, now, entry, width, None, &tip, acts);
        return;
    }
    ui.horizontal(|ui| {
        ui.label(RichText::new(said(field.name)).color(theme.faded.0)).on_hover_text(&tip);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| match field.sort {
            Sort::Switch => {
                let mut on = field.entries.first().is_some_and(|v| v == "true");
                if ui.checkbox(&mut on, "").on_hover_text(&tip).changed() {
                    set(item, field.name, if on { "true" } else { "false" }, entry, acts);
                }
            }
            Sort::Choice(words) => {
                choose(ui, item, field, words.iter().map(|w| (*w).to_owned()).collect(), entry, acts, preview);
            }
            Sort::Name => match known(shown, item, field.name) {
                Some(list) => choose(ui, item, field, list, entry, acts, preview),
                None => one(ui, item, field, 0, 178.0, &tip, entry, acts),
            },
            Sort::Lengths(count) | Sort::Numbers(count) => {
                // From right to left.
                for index in (0..usize::from(count)).rev() {
                    one(ui, item, field, index, 178.0 / f32::from(count) - 5.0, &tip, entry, acts);
                }
            }
            _ => one(ui, item, field, 0, 178.0, &tip, entry, acts),
        });
    });
}

#[expect(clippy::too_many_arguments, reason = "where it stands, what it is, and what comes of it")]
fn one(
    ui: &mut egui::Ui,
    item: &Item,
    field: &Field,
    index: usize,
    width: f32,
    tip: &str,
    entry: &mut Entry,
    acts: &mut Vec<Act>,
) {
    let now = field.entries.get(index).map_or("", String::as_str);
    typed(ui, item, field.name, index, now, entry, width, None, tip, acts);
}

/// A line to type on; what was typed is taken once it is left, also for another line.
#[expect(clippy::too_many_arguments, reason = "where it stands, what it is, and how it looks")]
fn typed(
    ui: &mut egui::Ui,
    item: &Item,
    field: &'static str,
    index: usize,
    now: &str,
    entry: &mut Entry,
    width: f32,
    font: Option<egui::FontId>,
    tip: &str,
    acts: &mut Vec<Act>,
) {
    let here = (item.name().to_owned(), field, index);
    let mine = entry.at.as_ref() == Some(&here);
    let mut text = if mine { entry.text.clone() } else { now.to_owned() };
    let id = egui::Id::new(("entry", field, index));
    let edit = TextEdit::singleline(&mut text).id(id).desired_width(width).clip_text(true);
    let edit = if let Some(font) = font { edit.font(font) } else { edit };
    let response = ui.add(edit).on_hover_text(tip);
    if mine {
        (entry.text, entry.drawn) = (text.clone(), true);
    }
    if response.lost_focus() && mine {
        if ui.input(|input| input.key_pressed(egui::Key::Escape)) {
            entry.at = None;
        }
        entry.take(acts);
    } else if response.has_focus() && !mine {
        // The line that was left for this one keeps what was typed on it.
        entry.take(acts);
        (entry.at, entry.text, entry.before, entry.drawn) = (Some(here), text, now.to_owned(), true);
    }
}

fn choose(
    ui: &mut egui::Ui,
    item: &Item,
    field: &Field,
    list: Vec<String>,
    entry: &mut Entry,
    acts: &mut Vec<Act>,
    preview: &mut Option<Edit>,
) {
    let now = field.entries.first().cloned().unwrap_or_default();
    let id = ("choose", item.name(), field.name);
    ComboBox::from_id_salt(id).selected_text(&now).width(178.0).show_ui(ui, |ui| {
        ui.set_min_width(220.0);
        for word in list {
            let response = ui.selectable_label(word == now, &word);
            if response.clicked() {
                set(item, field.name, &word, entry, acts);
            } else if response.hovered()
                && word != now
                && let Ok(changed) = item.with_entry(field.name, 0, &word)
            {
                *preview = Some(Edit::Change(changed));
            }
        }
    });
}

/// Sets a field to what was chosen.
fn set(item: &Item, field: &'static str, text: &str, entry: &mut Entry, acts: &mut Vec<Act>) {
    entry.fault = None;
    acts.push(Act::Type { name: item.name().to_owned(), field, index: 0, text: text.to_owned() });
}

/// The names that a field may give, where they are known.
fn known(shown: &Shown, item: &Item, field: &str) -> Option<Vec<String>> {
    let (yard, catalogue) = (shown.studio.yard(), &shown.studio.catalogue);
    /// Names of two lists, the first before the second of the same name.
    fn both<'a>(own: impl Iterator<Item = &'a String>, shared: impl Iterator<Item = &'a String>) -> Vec<String> {
        let mut list: Vec<String> = own.cloned().collect();
        let more: Vec<String> = shared.filter(|name| !list.contains(name)).cloned().collect();
        list.extend(more);
        list
    }
    Some(match field {
        "fabric" | "screen" => {
            // A film is stretched in a window, a cloth is hung, a screen is a net.
            let fits = |entry: &&Fabric| match (field, item) {
                ("screen", _) => matches!(entry.kind, FabricKind::Net { .. }),
                (_, Item::Film(_)) => matches!(entry.kind, FabricKind::Film { .. }),
                _ => !matches!(entry.kind, FabricKind::Film { .. }),
            };
            let names = |list: &'_ [Fabric]| list.iter().filter(fits).map(|e| e.name.0.clone()).collect::<Vec<_>>();
            both(names(&yard.fabrics).iter(), names(&catalogue.fabrics).iter())
        }
        "surface" => both(yard.surfaces.iter().map(|e| &e.name.0), catalogue.surfaces.iter().map(|e| &e.name.0)),
        "projector" => both(yard.projectors.iter().map(|e| &e.name.0), catalogue.projectors.iter().map(|e| &e.name.0)),
        "kind" if matches!(item, Item::Lamp(_)) => {
            both(yard.lamp_kinds.iter().map(|e| &e.name.0), catalogue.lamp_kinds.iter().map(|e| &e.name.0))
        }
        "window" => yard.items().filter(|item| item.word() == "window").map(|item| item.name().to_owned()).collect(),
        _ => return None,
    })
}

/// What a field is called on a card: `turn_deg` is “turn, °”.
fn said(field: &str) -> String {
    match field.strip_suffix("_deg") {
        Some(angle) => format!("{}, °", angle.replace('_', " ")),
        None => field.replace('_', " "),
    }
}

/// What a field means, and how it is typed.
fn tip(field: &Field) -> String {
    let how = match field.sort {
        Sort::Length | Sort::Lengths(_) => "\nm, cm, ft or in: 1.9 m, 6' 3 1/2\"; +4 in adds",
        Sort::Group => "\nAs it stands in a yard's file",
        _ => "",
    };
    format!("{}{how}", field.meaning)
}
