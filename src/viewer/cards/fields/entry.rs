//! What is being typed, and the line that it is typed on.

use crate::viewer::{cards::Act, studio::Of};
use bevy_egui::egui::{self, FontId, TextEdit};

/// One entry of one field of a thing.
#[derive(Clone, Debug, PartialEq)]
struct Spot {
    of: Of,
    field: String,
    index: usize,
}

/// What is being typed, and what is wrong with what was.
#[derive(Default)]
pub struct Entry {
    at: Option<Spot>,
    text: String,
    /// What stood there before.
    before: String,
    /// Whether it was drawn in this frame.
    drawn: bool,
    /// Thing and field of what was not taken, and why.
    fault: Option<(Of, String, String)>,
}

/// How a line to type on looks.
pub struct Line<'a> {
    /// The field that it is of.
    pub field: &'a str,
    /// Which of the field's entries.
    pub index: usize,
    /// What stands there.
    pub now: &'a str,
    /// Width, points.
    pub width: f32,
    /// Other letters than usual.
    pub font: Option<FontId>,
    /// What the pointer is told.
    pub tip: &'a str,
}

impl Entry {
    /// Takes what is being typed, whatever ended the typing.
    pub fn take(&mut self, acts: &mut Vec<Act>) {
        let Some(Spot { of, field, index }) = self.at.take() else { return };
        if self.text != self.before {
            acts.push(Act::Type { of, field, index, text: std::mem::take(&mut self.text) });
        }
    }

    /// After all cards are drawn: what is typed where no card shows it any more is taken too.
    pub fn take_hidden(&mut self, acts: &mut Vec<Act>) {
        if !std::mem::take(&mut self.drawn) {
            self.take(acts);
        }
    }

    /// Tells beside a field why what was typed was not taken.
    pub fn refused(&mut self, of: Of, field: String, why: String) {
        self.fault = Some((of, field, why));
    }

    /// Why what was typed in a field was not taken.
    pub fn fault(&self, of: &Of, field: &str) -> Option<&str> {
        let (whose, at, why) = self.fault.as_ref()?;
        (whose == of && at == field).then_some(why.as_str())
    }

    /// What was wrong is right again.
    pub fn forgive(&mut self) {
        self.fault = None;
    }

    /// A line to type on; what was typed is taken once it is left, also for another line.
    pub fn line(&mut self, ui: &mut egui::Ui, of: &Of, line: Line<'_>, acts: &mut Vec<Act>) {
        let here = Spot { of: of.clone(), field: line.field.to_owned(), index: line.index };
        let mine = self.at.as_ref() == Some(&here);
        let mut text = if mine { self.text.clone() } else { line.now.to_owned() };
        let id = egui::Id::new(("entry", line.field, line.index));
        let edit = TextEdit::singleline(&mut text).id(id).desired_width(line.width).clip_text(true);
        let edit = if let Some(font) = line.font { edit.font(font) } else { edit };
        let response = ui.add(edit).on_hover_text(line.tip);
        if mine {
            (self.text, self.drawn) = (text.clone(), true);
        }
        if response.lost_focus() && mine {
            if ui.input(|input| input.key_pressed(egui::Key::Escape)) {
                self.at = None;
            }
            self.take(acts);
        } else if response.has_focus() && !mine {
            // The line that was left for this one keeps what was typed on it.
            self.take(acts);
            (self.at, self.text, self.before, self.drawn) = (Some(here), text, line.now.to_owned(), true);
        }
    }
}
