//! What a station's box, cable and the wind ask for, part by part as on its page of the hang sheet.

use super::Shown;
use bevy_egui::egui::{self, Label, RichText};
use gauzelight::sheet::Part;

pub fn draw(ui: &mut egui::Ui, shown: &Shown, index: usize) {
    let theme = shown.theme;
    let name = shown.studio.yard().stations.get(index).map(|station| station.name.0.as_str());
    let Some((_, notes)) = shown.studio.judging.notes.iter().find(|(of, _)| Some(of.as_str()) == name) else {
        ui.label(RichText::new("computing…").color(theme.faded.0));
        return;
    };
    for part in Part::ALL {
        let mut sections = notes.of(part).peekable();
        if sections.peek().is_none() {
            continue;
        }
        ui.add_space(4.0);
        ui.label(RichText::new(part.name()).color(theme.warm.0).strong());
        for (title, lines) in sections {
            ui.label(RichText::new(title).strong());
            for line in lines {
                ui.add(Label::new(RichText::new(line).size(theme.small)).wrap());
            }
            ui.add_space(4.0);
        }
    }
}
