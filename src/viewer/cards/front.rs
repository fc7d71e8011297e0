//! The card that asks for the few measures of a house front.

use super::{Act, Shown};
use bevy_egui::egui::{self, Button, DragValue, Grid, RichText, TextEdit};
use gauzelight::{
    edit::{Edit, Front},
    scene::{Item, Point, Units},
    units::Length,
};

/// The measures as they are typed.
pub struct Form {
    width: String,
    height: String,
    windows: u32,
    fault: Option<String>,
}

impl Form {
    /// A usual front.
    pub fn new(units: Units) -> Self {
        let (width, height) = match units {
            Units::Metric => ("9 m", "5 m"),
            Units::Feet => ("30 ft", "16 ft"),
        };
        Self { width: width.to_owned(), height: height.to_owned(), windows: 2, fault: None }
    }

    fn front(&self) -> Result<Front, String> {
        let length = |text: &str| Length::parse(text).map_err(|e| e.to_string());
        let (width, height) = (length(&self.width)?, length(&self.height)?);
        Ok(Front::with_windows(width, height, Point::default(), self.windows))
    }
}

/// The first window of a front that is about to be built: what one goes on with.
fn first_window(edit: &Edit) -> Option<String> {
    let Edit::Add(Item::Wall(wall)) = edit else { return None };
    wall.openings.first().map(|opening| opening.name().0.clone())
}

pub fn draw(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    ui.label(RichText::new("A front with windows").size(theme.large).strong());
    ui.label(
        RichText::new("Measure once along the wall and once up; windows can be moved afterwards.").color(theme.faded.0),
    );
    ui.add_space(4.0);
    Grid::new("front").num_columns(2).spacing([18.0, 6.0]).show(ui, |ui| {
        for (word, text) in [("Along the wall", &mut form.width), ("Up to the eaves", &mut form.height)] {
            ui.label(word);
            ui.add(TextEdit::singleline(text).desired_width(120.0)).on_hover_text("m, cm, ft or in: 9 m, 29' 6\"");
            ui.end_row();
        }
        ui.label("Windows");
        ui.add(DragValue::new(&mut form.windows).range(0..=12));
        ui.end_row();
    });
    if let Some(fault) = &form.fault {
        ui.label(RichText::new(fault).color(theme.warm.0).size(theme.small));
    }
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        let main = Button::new(RichText::new("Build it").color(theme.on_warm.0)).fill(theme.warm.0);
        let entered = ui.input(|input| input.key_pressed(egui::Key::Enter));
        if ui.add(main).clicked() || entered {
            match form.front() {
                Ok(front) => {
                    form.fault = None;
                    let edit = front.edit(shown.studio.yard());
                    let first = first_window(&edit);
                    acts.push(Act::Build(edit, first));
                }
                Err(why) => form.fault = Some(why),
            }
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
}
