//! The card that asks what somebody owns: a projector by its box and a tape, a cloth by kind and colour.

use super::{Act, Shown, bar::toggle};
use bevy_egui::egui::{self, Button, ComboBox, Grid, RichText, TextEdit};
use gauzelight::{
    craft::{
        Measured,
        own::{ClothColour, ClothKind, LightSource, OwnCloth, OwnProjector},
    },
    edit::Edit,
    scene::Units,
    units::Length,
};

/// The answers as they are typed.
pub struct Form {
    /// Whether it has just been opened.
    pub opened: bool,
    cloth: bool,
    name: String,
    lumens: String,
    pixels: [String; 2],
    picture: [String; 2],
    nearest: String,
    lamp: bool,
    kind: ClothKind,
    colour: ClothColour,
    said: Option<String>,
}

impl Form {
    /// A usual small projector.
    pub fn new(units: Units) -> Self {
        let (width, at, nearest) = match units {
            Units::Metric => ("1 m", "1.5 m", ""),
            Units::Feet => ("40 in", "5 ft", ""),
        };
        Self {
            opened: true,
            cloth: false,
            name: String::new(),
            lumens: "7500".to_owned(),
            pixels: ["854".to_owned(), "480".to_owned()],
            picture: [width.to_owned(), at.to_owned()],
            nearest: nearest.to_owned(),
            lamp: false,
            kind: ClothKind::Tulle,
            colour: ClothColour::White,
            said: None,
        }
    }

    fn edit(&self, shown: &Shown) -> Result<Edit, String> {
        let catalogue = &shown.studio.catalogue;
        let name = self.name.trim().to_owned();
        if name.is_empty() {
            return Err("Give it a name, such as the word on its lid".to_owned());
        }
        if self.cloth {
            let cloth = OwnCloth { name, kind: self.kind, colour: self.colour };
            return cloth.entry(catalogue).map(Edit::OwnFabric).map_err(|e| e.to_string());
        }
        let number =
            |what: &str, text: &str| text.trim().parse::<f64>().map_err(|_| format!("“{text}” is no number of {what}"));
        let length = |text: &str| Length::parse(text).map_err(|e| e.to_string());
        let optional = |text: &str| if text.trim().is_empty() { Ok(None) } else { length(text).map(Some) };
        let picture = match (optional(&self.picture[0])?, optional(&self.picture[1])?) {
            (Some(width), Some(at)) => Some(Measured { width, at }),
            (None, None) => None,
            _ => return Err("A picture's width needs its distance, and the other way round".to_owned()),
        };
        let projector = OwnProjector {
            name,
            box_lumens: number("lumens", &self.lumens)?,
            pixels: (number("pixels", &self.pixels[0])? as u32, number("pixels", &self.pixels[1])? as u32),
            picture,
            nearest: optional(&self.nearest)?,
            light: if self.lamp { LightSource::Lamp } else { LightSource::Led },
        };
        projector.entry(catalogue).map(Edit::OwnProjector).map_err(|e| e.to_string())
    }
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    ui.label(RichText::new("I own this").size(theme.large).strong());
    ui.label(RichText::new("Kept for every yard of yours. What is guessed is said in its note.").color(theme.faded.0));
    ui.horizontal(|ui| {
        for (cloth, text) in [(false, "a projector"), (true, "a cloth")] {
            if toggle(ui, theme, form.cloth == cloth, text, "") {
                form.cloth = cloth;
            }
        }
    });
    ui.add_space(4.0);
    Grid::new("own").num_columns(2).spacing([18.0, 6.0]).show(ui, |ui| {
        ui.label("What you call it");
        let name = ui.add(TextEdit::singleline(&mut form.name).desired_width(180.0));
        if std::mem::take(&mut form.opened) {
            name.request_focus();
        }
        ui.end_row();
        if form.cloth { cloth(ui, form) } else { projector(ui, form) }
    });
    if let Some(said) = &form.said {
        ui.label(RichText::new(said).color(theme.warm.0).size(theme.small));
    }
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        let main = Button::new(RichText::new("Keep it").color(theme.on_warm.0)).fill(theme.warm.0);
        let entered = ui.input(|input| input.key_pressed(egui::Key::Enter));
        if ui.add(main).clicked() || entered {
            match form.edit(shown) {
                Ok(edit) => {
                    form.said = None;
                    acts.push(Act::Own(edit));
                }
                Err(why) => form.said = Some(why),
            }
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
}

fn projector(ui: &mut egui::Ui, form: &mut Form) {
    let line = |ui: &mut egui::Ui, word: &str, text: &mut String, tip: &str| {
        ui.label(word).on_hover_text(tip);
        ui.add(TextEdit::singleline(text).desired_width(90.0)).on_hover_text(tip);
        ui.end_row();
    };
    line(ui, "Lumens on its box", &mut form.lumens, "What is printed; what it really gives is a small part of that");
    ui.label("Native pixels").on_hover_text("What it shows, not what it takes in: on the box in small print");
    ui.horizontal(|ui| {
        for (index, text) in form.pixels.iter_mut().enumerate() {
            if index > 0 {
                ui.label("×");
            }
            ui.add(TextEdit::singleline(text).desired_width(60.0));
        }
    });
    ui.end_row();
    line(ui, "A picture this wide", &mut form.picture[0], "Throw it on a wall and measure its longer edge");
    line(ui, "from this far", &mut form.picture[1], "From the lens to that wall");
    line(ui, "Nearest that is sharp", &mut form.nearest, "How near to a wall it can still be focused; may be left out");
    ui.label("Its light");
    ui.horizontal(|ui| {
        ui.radio_value(&mut form.lamp, false, "LED");
        ui.radio_value(&mut form.lamp, true, "a lamp that burns out");
    });
    ui.end_row();
}

fn cloth(ui: &mut egui::Ui, form: &mut Form) {
    ui.label("Kind");
    ComboBox::from_id_salt("kind").selected_text(form.kind.name()).show_ui(ui, |ui| {
        for kind in ClothKind::ALL {
            ui.selectable_value(&mut form.kind, kind, kind.name());
        }
    });
    ui.end_row();
    ui.label("Colour");
    ui.horizontal(|ui| {
        for (colour, word) in [
            (ClothColour::White, "white"),
            (ClothColour::OffWhite, "off-white"),
            (ClothColour::Grey, "grey"),
            (ClothColour::Black, "black"),
        ] {
            ui.radio_value(&mut form.colour, colour, word);
        }
    });
    ui.end_row();
}
