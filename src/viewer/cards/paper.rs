//! The card with the paper: hang sheet, list and alignment cards as they will be, and where they go.

use super::{Act, Shown, bar::toggle};
use crate::viewer::studio::{Kind, Print};
use bevy_egui::egui::{self, Button, ColorImage, RichText, ScrollArea, TextEdit, TextureHandle, TextureOptions, vec2};
use gauzelight::{
    scene::Units,
    sheet::{self, Paper, Setup},
};
use image::RgbaImage;
use std::path::{Path, PathBuf};

/// Width of a page before it is fitted to the card, pixels.
const PAGE_PX: u32 = 1100;
/// Width of what stands beside the page, points.
const SIDE: f32 = 300.0;

/// What is shown and written.
#[derive(Default)]
pub struct Form {
    kind: Kind,
    page: usize,
    to: String,
    plate: Option<((u64, Kind, usize), TextureHandle)>,
}

pub fn draw(ui: &mut egui::Ui, full: egui::Rect, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let theme = shown.theme;
    let tall = full.height() - 2.0 * theme.gap - 60.0;
    ui.set_min_height(tall);
    ui.horizontal_top(|ui| {
        ui.vertical(|ui| {
            ui.set_width(SIDE);
            ui.label(RichText::new("On paper").size(theme.large).strong());
            choices(ui, shown, form, acts);
            ui.add_space(10.0);
            write(ui, shown, form, acts);
        });
        ui.add_space(theme.gap);
        ui.vertical(|ui| match &shown.studio.printing.done {
            None => drop(ui.label(RichText::new("laying it out…").color(theme.faded.0))),
            Some(print) => preview(ui, shown, print, form, tall),
        });
    });
}

/// What is printed, on which paper, in which units.
fn choices(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let kinds = [
        (Kind::Sheet, "Hang sheet", "A cover, and a page for each station: what to set, and how far off is still fine"),
        (Kind::List, "List", "What is to be bought, and what goes into which box"),
        (Kind::Cards, "Alignment cards", "A frame for each station to throw on its first night"),
    ];
    for (kind, text, tip) in kinds {
        if toggle(ui, theme, form.kind == kind, text, tip) && form.kind != kind {
            (form.kind, form.page, form.to) = (kind, 0, String::new());
        }
    }
    let Some(now) = studio.printing.setup else { return };
    ui.add_space(10.0);
    ui.add_enabled_ui(form.kind == Kind::Sheet && !studio.printing.is_at_work(), |ui| {
        ui.horizontal(|ui| {
            for (paper, text) in [(Paper::A4, "A4"), (Paper::Letter, "US Letter")] {
                if toggle(ui, theme, now.paper == paper, text, "What the printer holds") && now.paper != paper {
                    acts.push(Act::Print(Some(Setup { paper, ..now })));
                }
            }
        });
        ui.horizontal(|ui| {
            for (units, text) in [(Units::Metric, "metres"), (Units::Feet, "feet and inches")] {
                if toggle(ui, theme, now.units == units, text, "What the tape on the ladder has") && now.units != units
                {
                    acts.push(Act::Print(Some(Setup { units, ..now })));
                }
            }
        });
    });
}

/// Where it goes.
fn write(ui: &mut egui::Ui, shown: &Shown, form: &mut Form, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    if form.to.is_empty() {
        form.to = usual(shown, form.kind).display().to_string();
    }
    let (word, tip) = match form.kind {
        Kind::Sheet => ("File, .pdf or .html", "A PDF prints as it is; an HTML page opens in any browser"),
        Kind::List => ("File, .txt", "Plain text"),
        Kind::Cards => ("Folder", "A .png for each station, as many pixels as its projector has"),
    };
    ui.label(RichText::new(word).color(theme.faded.0)).on_hover_text(tip);
    ui.add(TextEdit::singleline(&mut form.to).desired_width(f32::INFINITY));
    ui.horizontal(|ui| {
        let there = form.kind != Kind::Cards && Path::new(form.to.trim()).is_file();
        let verb = if there { "Write over it" } else { "Write it" };
        let main = Button::new(RichText::new(verb).color(theme.on_warm.0)).fill(theme.warm.0);
        let can = studio.printing.done.is_some() && !form.to.trim().is_empty();
        if ui.add_enabled(can, main).clicked() {
            acts.push(Act::WritePaper(form.kind, PathBuf::from(form.to.trim())));
        }
        if ui.button("Back").clicked() {
            acts.push(Act::Close);
        }
    });
    if let Some(written) = &studio.printing.written {
        ui.add(egui::Label::new(RichText::new(written).color(theme.faded.0)).wrap());
    }
}

/// A file or folder beside the yard, named after it.
fn usual(shown: &Shown, kind: Kind) -> PathBuf {
    let papers = &shown.studio.papers;
    let stem = papers.file.as_deref().and_then(|file| file.file_stem()).map(|stem| stem.to_string_lossy().into_owned());
    let stem = stem.unwrap_or_else(|| sheet::file_name(&shown.studio.yard().name.0));
    let name = match kind {
        Kind::Sheet => format!("{stem} sheet.pdf"),
        Kind::List => format!("{stem} list.txt"),
        Kind::Cards => format!("{stem} cards"),
    };
    papers.folder().map_or_else(|| PathBuf::from(&name), |folder| folder.join(&name))
}

fn preview(ui: &mut egui::Ui, shown: &Shown, print: &Print, form: &mut Form, tall: f32) {
    let theme = shown.theme;
    if form.kind == Kind::List {
        ScrollArea::vertical().max_height(tall).auto_shrink(false).show(ui, |ui| {
            ui.add(egui::Label::new(RichText::new(&print.list).monospace()).wrap());
        });
        return;
    }
    let (count, name) = match form.kind {
        Kind::Cards => (print.cards.len(), print.cards.get(form.page).map(|(name, _)| name.as_str())),
        _ => (print.sheet.pages.len(), print.sheet.pages.get(form.page).map(|page| page.title.as_str())),
    };
    let Some(name) = name else {
        form.page = 0;
        ui.label(RichText::new("No station is on.").color(theme.faded.0));
        return;
    };
    ui.horizontal(|ui| {
        if ui.add_enabled(form.page > 0, Button::new("‹")).on_hover_text("The page before").clicked() {
            form.page -= 1;
        }
        ui.label(format!("{} of {count}", form.page + 1));
        if ui.add_enabled(form.page + 1 < count, Button::new("›")).on_hover_text("The next page").clicked() {
            form.page += 1;
        }
        ui.add(egui::Label::new(RichText::new(name).color(theme.faded.0)).truncate());
    });
    let Some(plate) = plate(ui, print, form) else { return };
    let [wide, high] = plate.size().map(|v| v as f32);
    let fit = (ui.available_width() / wide).min((tall - 30.0) / high);
    ui.image((plate.id(), vec2(wide * fit, high * fit)));
}

/// The page shown, as a texture.
fn plate<'a>(ui: &egui::Ui, print: &Print, form: &'a mut Form) -> Option<&'a TextureHandle> {
    let key = (print.number, form.kind, form.page);
    if form.plate.as_ref().is_none_or(|(of, _)| *of != key) {
        let load = |image: &RgbaImage| {
            let size = [image.width() as usize, image.height() as usize];
            let image = ColorImage::from_rgba_unmultiplied(size, image.as_raw());
            ui.ctx().load_texture(
                "page",
                image,
                TextureOptions::LINEAR.with_mipmap_mode(Some(egui::TextureFilter::Linear)),
            )
        };
        let texture = match form.kind {
            Kind::Cards => load(&print.cards.get(form.page)?.1),
            _ => load(&sheet::preview(print.sheet.pages.get(form.page)?, PAGE_PX)),
        };
        form.plate = Some((key, texture));
    }
    form.plate.as_ref().map(|(_, texture)| texture)
}
