//! Findings, worst first: what was found, why that is the limit, and what would help.

use super::{Act, Aside, Pad, Shown, side};
use crate::viewer::studio::State;
use bevy_egui::egui::{self, Align, Button, Layout, Rect, RichText, ScrollArea};
use gauzelight::judge::findings::{Finding, Level};

/// Findings that are shown before one asks for more.
const FEW: usize = 3;

/// What is open on the list.
#[derive(Default)]
pub struct Mend {
    why: Option<Finding>,
    more: bool,
}

/// Findings about a station, and those that show nowhere but from where one stands first.
pub fn about<'a>(shown: &Shown<'a>, station: usize) -> Vec<&'a Finding> {
    let studio = shown.studio;
    let name = studio.yard().stations.get(station).map(|station| station.name.0.as_str());
    let here = studio.yard().spots.get(studio.spot).map(|spot| spot.name.0.as_str());
    let own = studio.judging.findings.iter().filter(|finding| name.is_some_and(|name| finding.concerns(name)));
    let mut list: Vec<&Finding> = own.collect();
    // Within a level what shows from here comes first; the order is kept otherwise.
    list.sort_by_key(|f| (std::cmp::Reverse(f.level), !here.is_none_or(|here| f.shows_from(here))));
    list
}

/// On the card of a station.
pub fn of_station(ui: &mut egui::Ui, shown: &Shown, station: usize, pad: &mut Pad, acts: &mut Vec<Act>) {
    list(ui, shown, &about(shown, station), &mut pad.mend, acts);
}

/// All of them, as a card at the side.
pub fn draw(ui: &egui::Ui, full: Rect, shown: &Shown, pad: &mut Pad, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    side(ui, "findings", full, shown, |ui, tallest| {
        ui.horizontal(|ui| {
            ui.label(RichText::new("Findings").size(theme.large).strong());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if ui.button("×").on_hover_text("Close (Esc)").clicked() {
                    acts.push(Act::Aside(Aside::Findings));
                }
            });
        });
        ui.separator();
        let room = tallest - 44.0;
        ScrollArea::vertical().max_height(room).min_scrolled_height(room).show(ui, |ui| {
            let all: Vec<&Finding> = shown.studio.judging.findings.iter().collect();
            list(ui, shown, &all, &mut pad.mend, acts);
        });
    });
}

fn list(ui: &mut egui::Ui, shown: &Shown, findings: &[&Finding], mend: &mut Mend, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let words = match shown.studio.judging.state {
        State::Judging => "Judging it as it now stands…",
        State::Failed => "It could not be judged as it now stands.",
        State::Judged if findings.is_empty() => "Nothing to mend as it now stands.",
        State::Judged => "",
    };
    if !words.is_empty() {
        ui.label(RichText::new(words).color(theme.faded.0));
    }
    let few = if mend.more { findings.len() } else { FEW };
    for finding in findings.iter().take(few) {
        one(ui, shown, finding, mend, acts);
        ui.separator();
    }
    let rest = findings.len().saturating_sub(FEW);
    if rest > 0 {
        let text = if mend.more { "fewer".to_owned() } else { format!("{rest} more") };
        if ui.button(text).clicked() {
            mend.more = !mend.more;
        }
    }
}

fn one(ui: &mut egui::Ui, shown: &Shown, finding: &Finding, mend: &mut Mend, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    ui.horizontal(|ui| {
        let colour = if finding.level == Level::Fix { theme.warm.0 } else { theme.onward.0 };
        ui.label(RichText::new(finding.level.name()).strong().color(colour));
        ui.label(RichText::new(finding.matter.name()).color(theme.faded.0));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            let open = mend.why.as_ref().is_some_and(|why| why.is_same(finding));
            if ui.add(Button::new(RichText::new("why?").size(theme.small)).selected(open)).clicked() {
                mend.why = if open { None } else { Some(finding.clone()) };
            }
        });
    });
    ui.label(&finding.says);
    let also: Vec<String> = finding.places.iter().skip(1).map(|place| format!("“{}”", place.spot)).collect();
    if !also.is_empty() {
        ui.label(RichText::new(format!("also from {}", also.join(", "))).size(theme.small).color(theme.faded.0));
    }
    ui.label(format!("{}.", finding.does));
    if finding.unsure {
        let words = "It may be fine: a measurement decides.";
        ui.label(RichText::new(words).size(theme.small).color(theme.faded.0));
    }
    if mend.why.as_ref().is_some_and(|why| why.is_same(finding)) {
        ui.label(RichText::new(&finding.why).size(theme.small).color(theme.faded.0));
    }
    let tried = shown.studio.judging.tried.as_ref().filter(|tried| tried.finding.is_same(finding));
    let progress = tried.map_or((0, 0), |tried| tried.progress());
    match tried.map(|tried| &tried.remedies) {
        None => {
            if ui.button("What would help?").on_hover_text("Tries what hands could do, and judges each").clicked() {
                acts.push(Act::WhatHelps(Box::new(finding.clone())));
            }
        }
        Some(None) => {
            let (done, all) = progress;
            let words = if all > 0 { format!("trying… {done} of {all}") } else { "trying…".to_owned() };
            ui.label(RichText::new(words).color(theme.faded.0));
        }
        Some(Some(found)) if found.is_empty() => {
            let words = "Nothing that was tried takes it away: try another place or another picture.";
            ui.label(RichText::new(words).color(theme.faded.0));
        }
        Some(Some(found)) => {
            for remedy in found {
                ui.horizontal_wrapped(|ui| {
                    let button = Button::new(RichText::new("try it").size(theme.small).color(theme.on_warm.0));
                    if ui.add(button.fill(theme.warm.0)).on_hover_text("One step; Ctrl Z takes it back").clicked() {
                        acts.push(Act::Edit(remedy.edit.clone()));
                    }
                    ui.label(&remedy.says);
                });
                for worse in &remedy.worsens {
                    ui.label(RichText::new(format!("but then: {worse}")).size(theme.small).color(theme.faded.0));
                }
            }
            let caution = "Before a ladder or mains outdoors: dry, not alone, local codes, licensed people.";
            ui.label(RichText::new(caution).size(theme.small).color(theme.faded.0));
        }
    }
}
