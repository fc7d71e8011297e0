//! Cards in the middle that ask: which file, whether changes may be lost.

use super::{Act, Pad, Shown, Theme, choices, compare, front, menus, middle, own, paper, photo, tapes};
use crate::viewer::studio::{Asking, Left};
use bevy_egui::egui::{self, Button, RichText, ScrollArea, TextEdit};
use std::path::{Path, PathBuf};

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, asking: &Asking, pad: &mut Pad, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    if pad.asked.as_ref() != Some(asking) {
        // Each question begins with its own answer, not with that to another.
        pad.file = if *asking == Asking::Save { menus::usual_file(shown) } else { String::new() };
        pad.own.opened = true;
        pad.asked = Some(asking.clone());
    }
    match asking {
        Asking::Open => middle(ui, "asking", full, 460.0, theme, |ui| {
            yard(ui, shown, "Open a yard", "Open", pad, acts, Act::OpenFile);
        }),
        Asking::Save => middle(ui, "asking", full, 460.0, theme, |ui| {
            yard(ui, shown, "Save the yard", "Save", pad, acts, Act::SaveAs);
        }),
        Asking::Front => middle(ui, "asking", full, 420.0, theme, |ui| front::draw(ui, shown, &mut pad.front, acts)),
        Asking::Photo => middle(ui, "asking", full, (0.66 * full.width()).min(1200.0), theme, |ui| {
            photo::draw(ui, shown, &mut pad.photo, acts);
        }),
        Asking::Compare => middle(ui, "asking", full, (0.8 * full.width()).min(1300.0), theme, |ui| {
            compare::draw(ui, shown, &mut pad.plates, acts);
        }),
        Asking::Choices => middle(ui, "asking", full, (0.7 * full.width()).min(1000.0), theme, |ui| {
            choices::draw(ui, shown, &mut pad.sorting, acts);
        }),
        Asking::Own => middle(ui, "asking", full, 400.0, theme, |ui| own::draw(ui, shown, &mut pad.own, acts)),
        Asking::Tapes => middle(ui, "asking", full, 560.0, theme, |ui| tapes::draw(ui, shown, &mut pad.tapes, acts)),
        // As wide as a page beside its choices is, as tall as the window.
        Asking::Paper => {
            middle(ui, "asking", full, (0.9 * full.width()).min(330.0 + 0.75 * full.height()), theme, |ui| {
                paper::draw(ui, full, shown, &mut pad.paper, acts);
            })
        }
        Asking::Outside => {
            let words = "This yard names files that lie elsewhere. Let it read them only if you trust who made it.";
            let answers = [("Leave them unread", "", Act::Close), ("Read them from now on", "", Act::Trust)];
            question(ui, full, theme, ("Files outside the yard's folder", words), answers, acts, |ui| {
                ScrollArea::vertical().max_height(160.0).show(ui, |ui| {
                    for (name, place) in shown.studio.outside() {
                        ui.label(RichText::new(name).size(theme.small)).on_hover_text(place.display().to_string());
                    }
                });
            });
        }
        Asking::Restore(left) => {
            let answers = [
                ("Restore them", "", Act::Restore),
                ("Throw them away", "", Act::Discard),
                ("Later", "Asks again when the window is next opened", Act::Close),
            ];
            question(ui, full, theme, ("Unsaved changes were found", &found(left)), answers, acts, |_| ());
        }
        Asking::Lose(_) => {
            let words = format!("“{}” was changed since it was last saved.", shown.studio.yard().name.0);
            let answers = [("Save first", "", Act::Save), ("Go on without", "", Act::Lose), ("Back", "", Act::Close)];
            question(ui, full, theme, ("Changes are not saved", &words), answers, acts, |_| ());
        }
    }
}

/// A question that must be answered before anything else is done: its heading and words, then what it is about, then its answers,
/// the usual one first, each with a hint.
fn question<const N: usize>(
    ui: &egui::Ui,
    full: egui::Rect,
    theme: &Theme,
    (heading, words): (&str, &str),
    answers: [(&str, &str, Act); N],
    acts: &mut Vec<Act>,
    about: impl FnOnce(&mut egui::Ui),
) {
    middle(ui, "asking", full, 440.0, theme, |ui| {
        ui.label(RichText::new(heading).size(theme.large).strong());
        ui.label(RichText::new(words).color(theme.faded.0));
        about(ui);
        ui.add_space(6.0);
        ui.horizontal(|ui| {
            for (number, (label, hint, act)) in answers.into_iter().enumerate() {
                let button = match number {
                    0 => Button::new(RichText::new(label).color(theme.on_warm.0)).fill(theme.warm.0),
                    _ => Button::new(label),
                };
                let button = ui.add(button);
                let button = if hint.is_empty() { button } else { button.on_hover_text(hint) };
                if button.clicked() {
                    acts.push(act);
                }
            }
        });
    });
}

/// Which changes they are and how old.
fn found(left: &Left) -> String {
    let minutes = left.at.elapsed().map_or(0, |age| age.as_secs() / 60);
    let age = match minutes {
        0 => "less than a minute old".to_owned(),
        1 => "a minute old".to_owned(),
        2..=119 => format!("{minutes} minutes old"),
        120..=2879 => format!("{} hours old", minutes / 60),
        _ => format!("{} days old", minutes / 1440),
    };
    match &left.unsaved.file {
        Some(file) => format!("The window ended before changes to {} were saved. They are {age}.", file.display()),
        None => format!("The window ended before a new yard was saved. It is {age}."),
    }
}

/// A file by its path, or out of the folder that the path is in, once it is named. `endings` are those of what is listed.
pub fn file(ui: &mut egui::Ui, shown: &Shown, verb: &str, endings: &[&str], path: &mut String) -> Option<PathBuf> {
    let theme = shown.theme;
    let line =
        ui.add(TextEdit::singleline(path).desired_width(f32::INFINITY).hint_text(format!("file.{}", endings[0])));
    line.request_focus();
    let entered = ui.input(|input| input.key_pressed(egui::Key::Enter));
    let typed = PathBuf::from(path.trim());
    let folder = if typed.is_dir() { typed.as_path() } else { typed.parent().unwrap_or(Path::new("")) };
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    ScrollArea::vertical().max_height(260.0).auto_shrink([false, true]).show(ui, |ui| {
        for (name, found, is_folder) in listed(folder, endings) {
            let text = if is_folder { format!("{name}/") } else { name };
            if ui.selectable_label(found == typed, text).clicked() {
                *path = found.display().to_string();
            }
        }
    });
    ui.add_space(4.0);
    // A yard is written with its ending, whether or not that is typed.
    let typed = if verb == "Save" && typed.extension().is_none() { typed.with_extension("ron") } else { typed };
    let is_own = shown.studio.papers.file.as_deref() == Some(typed.as_path());
    let over = verb == "Save" && typed.is_file() && !is_own;
    let verb = if over { "Save over it" } else { verb };
    let main = Button::new(RichText::new(verb).color(theme.on_warm.0)).fill(theme.warm.0);
    let can = !path.trim().is_empty() && !typed.is_dir();
    // Over another file only a click is meant.
    let done = ui.add_enabled(can, main).clicked() || entered && can && !over;
    done.then_some(typed)
}

/// A card that asks for a yard's file.
fn yard(
    ui: &mut egui::Ui,
    shown: &Shown,
    title: &str,
    verb: &str,
    pad: &mut Pad,
    acts: &mut Vec<Act>,
    act: fn(PathBuf) -> Act,
) {
    ui.label(RichText::new(title).size(shown.theme.large).strong());
    acts.extend(file(ui, shown, verb, &["ron"], &mut pad.file).map(act));
    if ui.button("Back").clicked() {
        acts.push(Act::Close);
    }
}

/// Folders and fitting files of a folder, by name; none where it cannot be read.
fn listed(folder: &Path, endings: &[&str]) -> Vec<(String, PathBuf, bool)> {
    let fits = |path: &Path| {
        let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
        ending.is_some_and(|ending| endings.contains(&ending.as_str()))
    };
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    let mut list: Vec<(String, PathBuf, bool)> = entries
        .filter_map(|entry| {
            let path = entry.path();
            let path = path.strip_prefix(".").map(Path::to_owned).unwrap_or(path);
            let name = entry.file_name().to_string_lossy().into_owned();
            let is_folder = path.is_dir();
            let shown = !name.starts_with('.') && (is_folder || fits(&path));
            shown.then_some((name, path, is_folder))
        })
        .collect();
    list.sort_by(|a, b| b.2.cmp(&a.2).then(a.0.cmp(&b.0)));
    if let Some(up) = folder.canonicalize().ok().and_then(|whole| whole.parent().map(Path::to_owned)) {
        list.insert(0, ("..".to_owned(), up, true));
    }
    list
}
