//! The card of what is chosen: what it is, what it gives, and every field of it.

use super::{Act, Of, Pad, Shown, bar::toggle, build, fields, fields::Subject, findings, reading, side};
use crate::viewer::studio::Asking;
use bevy_egui::egui::{self, Align, Layout, Rect, RichText};
use gauzelight::{
    judge::compare,
    scene::{Item, Opening},
};

/// The leaves of the card.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Leaf {
    /// What the station gives.
    #[default]
    Gives,
    /// What is found about it, and what would help.
    Mend,
    /// Every field, to be set.
    Set,
    /// What its box, cable and wind ask for.
    Build,
}

fn leaves(ui: &mut egui::Ui, shown: &Shown, pad: &mut Pad) {
    ui.horizontal(|ui| {
        let count = shown.studio.station().map_or(0, |index| findings::about(shown, index).len());
        let mend = if count == 0 { "Mend".to_owned() } else { format!("Mend: {count}") };
        for (leaf, text, tip) in [
            (Leaf::Gives, "What it gives", "Its readings from where you stand"),
            (Leaf::Set, "How it is set", "Everything that can be typed or chosen"),
            (Leaf::Mend, mend.as_str(), "What is found about it, and what would help"),
            (Leaf::Build, "Build", "What its box, its cable and the wind ask for; and what to be careful of"),
        ] {
            if toggle(ui, shown.theme, pad.leaf == leaf, text, tip) {
                pad.leaf = leaf;
            }
        }
    });
    ui.add_space(2.0);
}

pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, item: &Item, pad: &mut Pad, acts: &mut Vec<Act>) {
    side(ui, "card", full, shown, |ui, tallest| {
        head(ui, shown, item, pad, acts);
        let lit = shown.studio.station();
        if lit.is_some() {
            leaves(ui, shown, pad);
        }
        let room = tallest - 104.0;
        egui::ScrollArea::vertical().max_height(room).min_scrolled_height(room).show(ui, |ui| match (lit, pad.leaf) {
            (Some(_), Leaf::Gives) => station(ui, shown),
            (Some(index), Leaf::Build) => build::draw(ui, shown, index),
            (Some(index), Leaf::Mend) => findings::of_station(ui, shown, index, pad, acts),
            _ => {
                light_it(ui, shown, item, acts);
                if let Item::Meter(meter) = item {
                    reading::meter(ui, shown, meter);
                }
                if !item.points().is_empty()
                    && ui.button("Place it by tape…").on_hover_text("As measured from named corners").clicked()
                {
                    acts.push(Act::Ask(Asking::Tapes));
                }
                fields::draw(ui, shown, Subject::Thing(item), &mut pad.entry, acts);
                if let Some(index) = lit {
                    let tip =
                        "Every fabric, two layers, or projector in its place: the word, cd/m², what shows behind, cost";
                    if ui.button("Compare before buying…").on_hover_text(tip).clicked() {
                        let station = matches!(item, Item::Station(_));
                        let of = if station { compare::Of::Projectors } else { compare::Of::Fabrics };
                        acts.push(Act::CompareFor(index, of));
                    }
                }
            }
        });
    });
}

fn head(ui: &mut egui::Ui, shown: &Shown, item: &Item, pad: &mut Pad, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    ui.horizontal(|ui| {
        fields::name(ui, shown, item, &mut pad.entry, acts);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            if ui.button("×").on_hover_text("Close (Esc)").clicked() {
                acts.push(Act::Choose(None));
            }
        });
    });
    fields::fault(ui, shown, &Of::Thing(item.name().to_owned()), "name", &pad.entry);
    let named = |list: &[gauzelight::scene::Ref]| list.iter().any(|entry| entry.0 == item.name());
    let (locked, hidden) = (named(&studio.yard().locked), named(&studio.yard().hidden));
    ui.horizontal(|ui| {
        ui.label(RichText::new(item.word()).color(theme.faded.0));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let mut button = |text: &str, tip: &str, act: Act| {
                if ui.button(RichText::new(text).size(theme.small)).on_hover_text(tip).clicked() {
                    acts.push(act);
                }
            };
            button("Remove", "Take it out of the yard (Delete)", Act::RemoveChosen);
            let text = if hidden { "Bring out" } else { "Put away" };
            button(text, "What is put away neither stands nor shades nor shines (H)", Act::HideChosen);
            let text = if locked { "Unlock" } else { "Lock" };
            button(text, "What is locked is not moved or changed by a slip of the hand (L)", Act::LockChosen);
            button("Copy", "Another of it, beside it (Ctrl D)", Act::CopyChosen);
        });
    });
    ui.separator();
}

/// The readings of the chosen station, or of the one that lights what is chosen.
fn station(ui: &mut egui::Ui, shown: &Shown) {
    let (studio, theme) = (shown.studio, shown.theme);
    let Some(index) = studio.station() else { return };
    let Some(station) = studio.yard().stations.get(index) else { return };
    if studio.chosen.as_deref() != Some(station.name.0.as_str()) {
        ui.label(RichText::new(format!("Lit by {}", station.name.0)).strong());
    }
    let reading = studio.readings.reading(index, &station.name.0);
    match reading {
        _ if studio.yard().is_hidden(&station.name.0) => {
            drop(ui.label(RichText::new("put away").color(theme.faded.0)));
        }
        Some(reading) if station.on && reading.on => reading::draw(ui, shown, station, reading),
        _ if station.on => drop(ui.label("reading…")),
        _ => drop(ui.label(RichText::new("switched off").color(theme.faded.0))),
    }
}

/// What nothing lights yet can be given a station at once.
fn light_it(ui: &mut egui::Ui, shown: &Shown, item: &Item, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let can = matches!(
        item,
        Item::Opening(..) | Item::Film(_) | Item::Cloth(_) | Item::Form(_) | Item::Wall(_) | Item::House(_)
    );
    if !can || shown.studio.station().is_some() {
        return;
    }
    let (text, tip) = match item {
        Item::Opening(_, Opening::Window(_)) => {
            ("Light it from inside", "Hang a rear film in it and put a station in the room behind")
        }
        _ => ("Light it", "Put a station where its picture fills this"),
    };
    let button = egui::Button::new(RichText::new(text).color(theme.on_warm.0)).fill(theme.warm.0);
    if ui.add(button).on_hover_text(tip).clicked() {
        acts.push(Act::LightWindow);
    }
    ui.separator();
}
