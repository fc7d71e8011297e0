//! The page of five questions: one station, answered at once, and a yard to go on from.

use super::{Act, Shown};
use bevy_egui::egui::{self, Align2, ComboBox, RichText, TextEdit};
use gauzelight::{
    judge::ask::{Answer, AskFault, Projector, Question, Street, Target, answer},
    scene::{Catalogue, Units},
    units::{Length, illuminance, with_band},
};

/// What is written into the page, and its answer.
pub struct Form {
    target: Target,
    width: String,
    distance: String,
    projector: String,
    street: Street,
    units: Units,
    asked: Option<Result<Box<Answer>, String>>,
}

impl Form {
    /// The usual answers.
    pub fn new(units: Units) -> Self {
        let usual = Question::usual(Target::Window, units);
        Self {
            target: usual.target,
            width: usual.width.to_text(),
            distance: usual.distance.to_text(),
            projector: "mini LED".to_owned(),
            street: usual.street,
            units,
            asked: None,
        }
    }

    fn question(&self) -> Result<Question, String> {
        let length = |text: &str| Length::parse(text.trim_matches('"')).map_err(|e| e.to_string());
        let mut question = Question::usual(self.target, self.units);
        question.width = length(&self.width)?;
        question.distance = length(&self.distance)?;
        question.projector = Projector::class(&self.projector);
        question.street = self.street;
        Ok(question)
    }

    fn ask(&mut self, catalogue: &Catalogue) {
        let asked = self.question().and_then(|q| answer(&q, catalogue).map_err(|e: AskFault| e.to_string()));
        self.asked = Some(asked.map(Box::new));
    }
}

pub fn draw(ui: &egui::Ui, full: egui::Rect, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    egui::Area::new(egui::Id::new("questions"))
        .order(egui::Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(full.center())
        .show(ui.ctx(), |ui| {
            theme.sheet().show(ui, |ui| {
                ui.set_width(470.0);
                ui.label(RichText::new("What would one station look like?").size(theme.large).strong());
                ui.label(RichText::new("Five questions; no yard needed.").color(theme.faded.0));
                ui.add_space(6.0);
                let changed = fields(ui, shown, form);
                ui.add_space(8.0);
                if changed || form.asked.is_none() {
                    form.ask(&shown.studio.catalogue);
                }
                match &form.asked {
                    Some(Ok(found)) => answered(ui, shown, found, acts),
                    Some(Err(why)) => drop(ui.label(RichText::new(why).color(theme.warm.0))),
                    None => {}
                }
                if ui.button("Close").clicked() {
                    acts.push(Act::Questions);
                }
            });
        });
}

fn fields(ui: &mut egui::Ui, shown: &Shown, form: &mut Form) -> bool {
    let mut changed = false;
    egui::Grid::new("five").num_columns(2).spacing([18.0, 8.0]).show(ui, |ui| {
        ui.label("1  What do you light?");
        ui.horizontal(|ui| {
            for target in Target::ALL {
                let chosen = form.target == target;
                let ink = if chosen { shown.theme.on_warm.0 } else { shown.theme.ink.0 };
                let label = RichText::new(target.name()).color(ink);
                if ui.selectable_label(chosen, label).on_hover_text(target.help()).clicked() {
                    let usual = Question::usual(target, form.units);
                    (form.target, form.width, form.distance) =
                        (target, usual.width.to_text(), usual.distance.to_text());
                    changed = true;
                }
            }
        });
        ui.end_row();
        for (word, tip, text) in [
            ("2  How wide is it?", "A length: 1.2 m, 4 ft, 40 in, 6' 3 1/2\"", &mut form.width),
            ("3  From how far?", "From the lens to it", &mut form.distance),
        ] {
            ui.label(word);
            changed |= ui.add(TextEdit::singleline(text).desired_width(120.0)).on_hover_text(tip).lost_focus();
            ui.end_row();
        }
        ui.label("4  Which projector?");
        ComboBox::from_id_salt("projector").width(220.0).selected_text(&form.projector).show_ui(ui, |ui| {
            for class in &shown.studio.catalogue.projectors {
                let name = &class.name.0;
                changed |=
                    ui.selectable_value(&mut form.projector, name.clone(), name).on_hover_text(&class.note).changed();
            }
        });
        ui.end_row();
        ui.label("5  How dark is the street?");
        ComboBox::from_id_salt("street").width(220.0).selected_text(form.street.name()).show_ui(ui, |ui| {
            for street in Street::ALL {
                let choice = ui.selectable_value(&mut form.street, street, street.name());
                changed |= choice.on_hover_text(street.help()).changed();
            }
        });
        ui.end_row();
    });
    changed
}

fn answered(ui: &mut egui::Ui, shown: &Shown, found: &Answer, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    ui.separator();
    ui.label(RichText::new(found.verdict.word.name()).size(theme.large + 6.0).strong().color(theme.warm.0));
    ui.label(&found.verdict.sentence);
    let feet = shown.studio.yard().units == Units::Feet;
    let style = shown.studio.yard().units.style();
    let length = |m: f64| Length::metres((m * 100.0).round() / 100.0).show(style);
    let white = found.reading.mean_on_target_lx;
    let mut facts = format!(
        "Picture {} × {}; {} in white",
        length(found.picture.width_m),
        length(found.picture.height_m),
        illuminance(white.low, white.typical, white.high, feet).join(", ")
    );
    if let Some(spot) = found.from_spot() {
        facts += &format!("; figure {}", with_band(spot.mean.low, spot.mean.typical, spot.mean.high, "cd/m²"));
    }
    ui.label(RichText::new(facts).color(theme.faded.0));
    if !found.help.is_empty() {
        ui.add_space(4.0);
        ui.label(RichText::new("What would help").strong());
        for help in found.help.iter().take(3) {
            ui.label(RichText::new(format!("{}: {}", help.what, help.gain())).size(theme.small));
        }
    }
    ui.label(RichText::new(&found.caution).size(theme.small).color(theme.faded.0));
    ui.add_space(4.0);
    if ui.button("Go on from this").on_hover_text("Open the little yard that these numbers were read from").clicked() {
        acts.push(Act::Open(Box::new(found.yard.clone())));
    }
}
