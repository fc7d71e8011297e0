//! The menus of the bar: the yard, what can be added, all things, arrangements.

use super::{Act, Shown};
use crate::viewer::studio::{Asking, CAR, WALKER};
use bevy_egui::egui::{self, RichText, ScrollArea};
use gauzelight::{
    edit::{Edit, Starter, kinds},
    scene::Units,
};

/// Begin, open, save.
pub fn yard(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let title: String = studio.yard().name.0.chars().take(28).collect();
    let star = if studio.history.is_saved() { "" } else { "* " };
    ui.menu_button(RichText::new(format!("{star}{title}")).strong().size(theme.large), |ui| {
        ui.set_min_width(210.0);
        let mut entry = |ui: &mut egui::Ui, text: &str, key: &str, act: Act| {
            if ui.add(egui::Button::new(text).shortcut_text(key)).clicked() {
                acts.push(act);
                ui.close();
            }
        };
        ui.label(RichText::new("Begin anew").color(theme.faded.0));
        for starter in Starter::ALL {
            entry(ui, starter.name(), "", Act::New(starter));
        }
        ui.separator();
        entry(ui, "Open a yard…", "Ctrl O", Act::Ask(Asking::Open));
        if let Some(file) = &studio.papers.file {
            entry(ui, "Read it again from its file", "", Act::OpenFile(file.clone()));
        }
        entry(ui, "Save", "Ctrl S", Act::Save);
        entry(ui, "Save as…", "", Act::Ask(Asking::Save));
        entry(ui, "On paper…", "Ctrl P", Act::Print(None));
        if !studio.papers.memory.recent.is_empty() {
            ui.separator();
            ui.label(RichText::new("Last opened").color(theme.faded.0));
            for file in &studio.papers.memory.recent {
                let name = file.file_name().map_or_else(String::new, |name| name.to_string_lossy().into_owned());
                entry(ui, &name, "", Act::OpenFile(file.clone()));
            }
        }
        ui.separator();
        let (text, other) = match studio.yard().units {
            Units::Metric => ("Show feet and inches", Units::Feet),
            Units::Feet => ("Show metres", Units::Metric),
        };
        entry(ui, text, "", Act::Edit(Edit::Units(other)));
        entry(ui, "Quit", "", Act::Quit);
    })
    .response
    .on_hover_text("Begin, open and save yards");
}

/// One of each kind.
pub fn add(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    ui.menu_button(RichText::new("Add").size(theme.small), |ui| {
        ui.set_min_width(160.0);
        if ui.button("a front with windows…").clicked() {
            acts.push(Act::Ask(Asking::Front));
            ui.close();
        }
        if ui.button("a front from a photo…").clicked() {
            acts.push(Act::Ask(Asking::Photo));
            ui.close();
        }
        if ui.button("something I own…").clicked() {
            acts.push(Act::Ask(Asking::Own));
            ui.close();
        }
        if ui.add(egui::Button::new("a tape measure").shortcut_text("T")).clicked() {
            acts.push(Act::Tape);
            ui.close();
        }
        if !shown.studio.yard().tapes.is_empty() && ui.button("take all tapes away").clicked() {
            acts.push(Act::Edit(Edit::DropTapes));
            ui.close();
        }
        ui.separator();
        ScrollArea::vertical().max_height(480.0).show(ui, |ui| {
            // What is hung and lit first, then what stands there anyway.
            let mut kinds = kinds();
            kinds.sort_by_key(|kind| order(kind));
            for kind in kinds {
                if ui.button(kind).clicked() {
                    acts.push(Act::Add(kind));
                    ui.close();
                }
            }
        });
    })
    .response
    .on_hover_text("Put a new thing where you look");
}

fn order(kind: &str) -> usize {
    let first = ["station", "hanging cloth", "rear film", "window", "door", "wall", "lamp", "viewing spot"];
    first.iter().position(|one| *one == kind).unwrap_or(first.len())
}

/// Everything in the yard, also what is put away.
pub fn things(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    ui.menu_button(RichText::new("Things").size(theme.small), |ui| {
        ui.set_min_width(260.0);
        ScrollArea::vertical().max_height(560.0).show(ui, |ui| {
            let mut word = "";
            for item in studio.yard().items() {
                if item.word() != word {
                    word = item.word();
                    ui.label(RichText::new(word).size(theme.small).color(theme.faded.0));
                }
                let named = |list: &[gauzelight::scene::Ref]| list.iter().any(|entry| entry.0 == item.name());
                let mut text = item.name().to_owned();
                if named(&studio.yard().locked) {
                    text += "  · locked";
                }
                if named(&studio.yard().hidden) {
                    text += "  · put away";
                }
                if ui.selectable_label(studio.chosen.as_deref() == Some(item.name()), text).clicked() {
                    acts.push(Act::Choose(Some(item.name().to_owned())));
                    ui.close();
                }
            }
        });
    })
    .response
    .on_hover_text("Choose any thing by its name");
}

/// Keep, show and drop arrangements.
pub fn arrangements(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let yard = studio.yard();
    let text = RichText::new(format!("Arrangement: {}", yard.arrangement.0)).size(theme.small);
    ui.menu_button(text, |ui| {
        ui.set_min_width(230.0);
        if ui.button("Keep this one and go on with a copy").clicked() {
            let taken: Vec<&str> = yard.arrangements.iter().map(|one| one.name.0.as_str()).collect();
            let name = (2..)
                .map(|n| format!("try {n}"))
                .find(|name| !taken.contains(&name.as_str()) && *name != yard.arrangement.0);
            acts.extend(name.map(|name| Act::Edit(Edit::KeepAs(name))));
            ui.close();
        }
        for one in &yard.arrangements {
            ui.horizontal(|ui| {
                if ui.button(format!("Show “{}”", one.name.0)).clicked() {
                    acts.push(Act::Edit(Edit::Arrange(one.name.0.clone())));
                    ui.close();
                }
                if ui.button("Compare").on_hover_text("Both pictures, and what differs").clicked() {
                    acts.push(Act::Compare(one.name.0.clone()));
                    ui.close();
                }
                if ui.button("Drop").on_hover_text("Undo brings it back").clicked() {
                    acts.push(Act::Edit(Edit::DropArrangement(one.name.0.clone())));
                }
            });
        }
        if !yard.arrangements.is_empty() {
            ui.label(RichText::new("X flips to the one shown before").size(theme.small).color(theme.faded.0));
        }
    })
    .response
    .on_hover_text("Several placings of the stations in one yard");
}

/// Pass by on foot or in a car.
pub fn pass_by(ui: &mut egui::Ui, shown: &Shown, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    if shown.studio.walk.is_some() {
        if ui.button(RichText::new("Stop").size(theme.small)).clicked() {
            acts.push(Act::WalkBy(None));
        }
        return;
    }
    ui.menu_button(RichText::new("Pass by").size(theme.small), |ui| {
        for (text, pace) in [("on foot, 1.4 m/s", WALKER), ("in a car, 11 m/s", CAR)] {
            if ui.button(text).clicked() {
                acts.push(Act::WalkBy(Some(pace)));
                ui.close();
            }
        }
    })
    .response
    .on_hover_text("See what somebody sees who passes this spot");
}

/// A name for a copy of the yard's file.
pub fn usual_file(shown: &Shown) -> String {
    match &shown.studio.papers.file {
        Some(file) => file.display().to_string(),
        None => {
            let name = shown.studio.yard().name.0.to_lowercase().replace(|c: char| !c.is_alphanumeric(), "_");
            let file = |n: u32| if n == 1 { format!("{name}.ron") } else { format!("{name}_{n}.ron") };
            (1..).map(file).find(|file| !std::path::Path::new(file).exists()).unwrap_or_default()
        }
    }
}
