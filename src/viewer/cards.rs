//! What lies over the picture. A card reads the studio and pushes acts; it changes nothing itself.

mod asking;
mod bar;
mod build;
mod card;
mod choices;
mod compare;
mod course;
mod evening;
mod fields;
mod findings;
mod front;
mod help;
mod hover;
mod legend;
mod marks;
mod menus;
mod overlay;
mod own;
mod paper;
mod photo;
mod questions;
mod rail;
mod reading;
mod strip;
mod tapes;
mod welcome;

pub use marks::marks;
pub use overlay::outlines;
pub use strip::height as strip_height;

use super::{
    studio::{Act, Aside, Asking, Hover, Of, Studio},
    theme::Theme,
};
use bevy_egui::egui::{self, TextureId};
use gauzelight::scene::Units;

/// What the cards show beside the studio.
pub struct Shown<'a> {
    /// The studio.
    pub studio: &'a Studio,
    /// Colours and sizes.
    pub theme: &'a Theme,
    /// A small picture of each station's content.
    pub thumbs: &'a [Option<(TextureId, egui::Vec2)>],
    /// What the pointer rests on, and where that is.
    pub hover: Option<&'a (egui::Pos2, Hover)>,
    /// Time of the last order, ms; whether the picture is still being taken; frames a second.
    pub pace: (f32, bool, f32),
}

/// What is being written on the cards and has not been taken yet.
pub struct Pad {
    questions: questions::Form,
    front: front::Form,
    photo: photo::Form,
    entry: fields::Entry,
    leaf: card::Leaf,
    mend: findings::Mend,
    file: String,
    asked: Option<Asking>,
    units: Units,
    plates: compare::Plates,
    sorting: choices::Sorting,
    own: own::Form,
    paper: paper::Form,
    tapes: tapes::Form,
}

impl Pad {
    /// Whether a card awaits what is worked on beside the window.
    pub fn is_at_work(&self) -> bool {
        self.photo.is_at_work()
    }

    /// Blank, but for the usual answers.
    pub fn new(units: Units) -> Self {
        Self {
            questions: questions::Form::new(units),
            front: front::Form::new(units),
            photo: photo::Form::new(units),
            entry: fields::Entry::default(),
            leaf: card::Leaf::default(),
            mend: findings::Mend::default(),
            file: String::new(),
            asked: None,
            units,
            plates: compare::Plates::default(),
            sorting: choices::Sorting::default(),
            own: own::Form::new(units),
            paper: paper::Form::default(),
            tapes: tapes::Form::default(),
        }
    }
}

impl Pad {
    /// Takes what is being typed, whatever comes next.
    pub fn take(&mut self, acts: &mut Vec<Act>) {
        self.entry.take(acts);
    }

    /// Tells beside a field why what was typed was not taken.
    pub fn refused(&mut self, of: Of, field: String, why: String) {
        self.entry.refused(of, field, why);
    }
}

/// Draws all cards over the picture's place.
pub fn draw(ui: &mut egui::Ui, shown: &Shown, pad: &mut Pad, acts: &mut Vec<Act>) {
    let full = ui.max_rect();
    if pad.units != shown.studio.yard().units {
        *pad = Pad::new(shown.studio.yard().units);
    }
    bar::draw(ui, full, shown, acts);
    rail::draw(ui, full, shown, acts);
    strip::draw(ui, full, shown, acts);
    if let Some(item) = shown.studio.item() {
        card::draw(ui, full, shown, &item, pad, acts);
    } else {
        match shown.studio.aside {
            Some(Aside::Evening) => evening::draw(ui, full, shown, pad, acts),
            Some(Aside::Findings) => findings::draw(ui, full, shown, pad, acts),
            None => {}
        }
    }
    if shown.studio.false_colour {
        legend::draw(ui, full, shown);
    }
    if let Some((at, hover)) = shown.hover {
        hover::draw(ui, *at, hover, shown);
    }
    if shown.studio.welcome {
        welcome::draw(ui, full, shown, acts);
    }
    if shown.studio.is_asking() {
        // What shows behind a card to work on stays bright: that is what one works on.
        let shade = if shown.studio.asking.as_ref().is_some_and(Asking::is_question) { SHADE } else { 0.0 };
        hold_back(ui, full, shown.theme.paper.0.to_opaque().gamma_multiply(shade));
    }
    if shown.studio.questions {
        questions::draw(ui, full, shown, &mut pad.questions, acts);
    }
    if shown.studio.help {
        help::draw(ui, full, shown, acts);
    }
    match &shown.studio.asking {
        Some(asking) => asking::draw(ui, full, shown, asking, pad, acts),
        None => pad.asked = None,
    }
    pad.entry.take_hidden(acts);
}

/// An area that stands at a fixed place, takes the pointer, and lets nothing fall through to the picture.
fn fixed(ui: &egui::Ui, name: &str, rect: egui::Rect, add: impl FnOnce(&mut egui::Ui)) {
    egui::Area::new(egui::Id::new(name)).fixed_pos(rect.min).constrain(false).order(egui::Order::Middle).show(
        ui.ctx(),
        |ui| {
            ui.set_min_size(rect.size());
            ui.set_max_size(rect.size());
            // The whole of the card takes clicks and the wheel, its blank parts as well.
            ui.interact(rect, egui::Id::new((name, "ground")), egui::Sense::click_and_drag());
            add(ui);
        },
    );
}

/// A card at the right side.
fn side(ui: &egui::Ui, name: &str, full: egui::Rect, shown: &Shown, add: impl FnOnce(&mut egui::Ui, f32)) {
    let theme = shown.theme;
    let top = full.min.y + theme.bar + theme.gap;
    let at = egui::pos2(full.max.x - theme.card - theme.gap, top);
    let tallest = full.max.y - strip_height(shown.studio, theme) - theme.gap - top;
    egui::Area::new(egui::Id::new(name)).fixed_pos(at).constrain(false).show(ui.ctx(), |ui| {
        theme.sheet().show(ui, |ui| {
            ui.set_width(theme.card - 26.0);
            add(ui, tallest - 26.0);
        });
    });
}

/// Share of what is behind a question that is hidden.
const SHADE: f32 = 0.55;

/// Takes the pointer for what is drawn after it: all else stands back, behind a shade.
fn hold_back(ui: &egui::Ui, full: egui::Rect, shade: egui::Color32) {
    egui::Area::new(egui::Id::new("held back"))
        .order(egui::Order::Middle)
        .fixed_pos(full.min)
        .constrain(false)
        .sense(egui::Sense::click_and_drag())
        .show(ui.ctx(), |ui| {
            ui.painter().rect_filled(full, 0.0, shade);
            ui.allocate_rect(full, egui::Sense::click_and_drag());
        });
    // Over cards that were clicked last, which egui draws on top.
    ui.ctx().move_to_top(egui::LayerId::new(egui::Order::Middle, egui::Id::new("held back")));
}

/// A card in the middle of the window.
fn middle(ui: &egui::Ui, name: &str, full: egui::Rect, width: f32, theme: &Theme, add: impl FnOnce(&mut egui::Ui)) {
    egui::Area::new(egui::Id::new(name))
        .order(egui::Order::Foreground)
        .pivot(egui::Align2::CENTER_CENTER)
        .fixed_pos(full.center())
        .show(ui.ctx(), |ui| {
            theme.sheet().show(ui, |ui| {
                ui.set_width(width);
                add(ui);
            });
        });
}
