//! The page of five questions: one station, answered at once, and a yard to go on from.

use super::{Act, Shown};
use bevy_egui::egui::{self, Align2, ComboBox, RichText, TextEdit};
use gauzelight::{
    judge::ask::{Answer, AskFault, Doubt, Lumens, Part, Projector, Question, Street, Target, answer},
    scene::{Catalogue, Units},
    units::{Length, illuminance, with_band},
};

/// What is written into the page, and its answer.
pub struct Form {
    target: Target,
    width: String,
    height: String,
    lower_edge: String,
    distance: String,
    projector: String,
    lumens: String,
    /// Where the lumens are from, once that is said.
    from: Option<Origin>,
    street: Street,
    units: Units,
    asked: Option<Result<Box<Answer>, Why>>,
}

/// Where lumens are from.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Origin {
    Box,
    Measured,
}

/// Why there is no answer: the question that it lies in, words, and what may have been meant.
struct Why {
    place: &'static str,
    words: String,
    doubt: Option<Doubt>,
}

impl Why {
    fn at(place: &'static str, words: impl ToString) -> Self {
        Self { place, words: words.to_string(), doubt: None }
    }
}

impl From<AskFault> for Why {
    fn from(fault: AskFault) -> Self {
        let place = match fault.part() {
            Some(Part::Target | Part::Fabric) => "Question 1: ",
            Some(Part::Width | Part::Height | Part::LowerEdge) => "Question 2: ",
            Some(Part::Distance) => "Question 3: ",
            Some(Part::Projector | Part::Lumens | Part::Picture) => "Question 4: ",
            Some(Part::Street) => "Question 5: ",
            None => "",
        };
        let words = fault.to_string();
        let doubt = if let AskFault::Doubted(doubt) = fault { Some(*doubt) } else { None };
        Self { place, words, doubt }
    }
}

impl Form {
    /// The usual answers.
    pub fn new(units: Units) -> Self {
        let usual = Question::usual(Target::Window, units);
        let mut form = Self {
            target: usual.target,
            width: String::new(),
            height: String::new(),
            lower_edge: String::new(),
            distance: String::new(),
            projector: Projector::USUAL.to_owned(),
            lumens: String::new(),
            from: None,
            street: usual.street,
            units,
            asked: None,
        };
        form.light(Target::Window);
        form
    }

    /// Another target, with its usual sizes.
    fn light(&mut self, target: Target) {
        let usual = Question::usual(target, self.units);
        self.target = target;
        self.width = usual.width.to_text();
        self.height.clear();
        self.lower_edge = usual.lower_edge().to_text();
        self.distance = usual.distance.to_text();
    }

    fn question(&self) -> Result<Question, Why> {
        let length =
            |place: &'static str, text: &str| Length::parse(text.trim_matches('"')).map_err(|e| Why::at(place, e));
        let mut question = Question::usual(self.target, self.units);
        let (size, way) = ("Question 2: ", "Question 3: ");
        question.width = length(size, &self.width)?;
        question.height = if self.height.trim().is_empty() { None } else { Some(length(size, &self.height)?) };
        question.lower_edge = Some(length(size, &self.lower_edge)?);
        question.distance = length(way, &self.distance)?;
        question.projector = Projector { lumens: self.lumens()?, ..Projector::class(&self.projector) };
        question.street = self.street;
        Ok(question)
    }

    fn lumens(&self) -> Result<Option<Lumens>, Why> {
        let text = self.lumens.trim().trim_end_matches("lm").trim_end();
        if text.is_empty() {
            return Ok(None);
        }
        let place = "Question 4: ";
        let lm = text.parse().map_err(|_| Why::at(place, format!("“{text}” is no number of lumens")))?;
        match self.from {
            Some(Origin::Box) => Ok(Some(Lumens::OnBox(lm))),
            Some(Origin::Measured) => Ok(Some(Lumens::Measured(lm))),
            None => Err(Why::at(place, format!("{lm} lm: choose on the box or measured"))),
        }
    }

    fn ask(&mut self, catalogue: &Catalogue) {
        let asked = self.question().and_then(|q| answer(&q, catalogue).map_err(Why::from));
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
                let meant = match &form.asked {
                    Some(Ok(found)) => {
                        answered(ui, shown, found, acts);
                        None
                    }
                    Some(Err(why)) => doubted(ui, shown, why),
                    None => None,
                };
                if let Some(from) = meant {
                    form.from = Some(from);
                    form.ask(&shown.studio.catalogue);
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
                if ui.selectable_label(form.target == target, target.name()).on_hover_text(target.help()).clicked() {
                    form.light(target);
                    changed = true;
                }
            }
        });
        ui.end_row();
        for (word, tip, text) in [
            ("2  How wide is it?", "A length: 1.2 m, 4 ft, 40 in, 6' 3 1/2\"", &mut form.width),
            ("    How high?", "Of a wall the part that is lit; empty: as high as its picture", &mut form.height),
            ("    Its lower edge, above the ground", "Where it hangs or stands", &mut form.lower_edge),
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
        ui.label("    Its lumens, if you know them");
        ui.horizontal(|ui| {
            let tip = "Lumens on the box, or measured: mean lux at nine places of a white picture square on, times its area in m²";
            changed |=
                ui.add(TextEdit::singleline(&mut form.lumens).desired_width(80.0)).on_hover_text(tip).lost_focus();
            for (from, name) in [(Origin::Box, "on the box"), (Origin::Measured, "measured")] {
                if ui.selectable_label(form.from == Some(from), name).clicked() {
                    form.from = Some(from);
                    changed = true;
                }
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

/// Why there is no answer, and where lumens are in doubt what was meant, if a person says so.
fn doubted(ui: &mut egui::Ui, shown: &Shown, why: &Why) -> Option<Origin> {
    let Some(doubt) = &why.doubt else {
        ui.label(RichText::new(format!("{}{}", why.place, why.words)).color(shown.theme.warm.0));
        return None;
    };
    ui.label(RichText::new(format!("{}{}", why.place, doubt.why())).color(shown.theme.warm.0));
    let (from, says) = match doubt.likelier {
        Some(Lumens::OnBox(_)) => (Origin::Box, "They are on the box"),
        Some(Lumens::Measured(_)) => (Origin::Measured, "They were measured"),
        None => return None,
    };
    ui.button(says).on_hover_text("Otherwise choose the class that it is").clicked().then_some(from)
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
        "Picture {} × {}; mean on the target {} in white",
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
