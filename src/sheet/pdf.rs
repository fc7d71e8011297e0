//! The pages as a PDF file (ISO 32000): vector, its text real text with the fonts inside. The one file that knows the PDF crate.

use super::{Ink, Page, Picture, Sheet, Weight, font};
use krilla::{
    Document,
    color::luma,
    geom::{Path, PathBuilder, Point, Size, Transform},
    image::Image,
    metadata::Metadata,
    page::PageSettings,
    paint::{Fill, LineJoin, Stroke, StrokeDash},
    surface::Surface,
    text::{Font, GlyphId, KrillaGlyph},
};
use std::sync::Arc;

/// Why there is no PDF: of nothing that a sheet of ours holds, but the writer may refuse.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("the PDF could not be written: {0}")]
pub struct PdfFault(String);

impl PdfFault {
    fn of(what: impl std::fmt::Debug) -> Self {
        Self(format!("{what:?}"))
    }
}

/// What all pages share: the two faces, and every picture by where it is kept.
struct Stock {
    faces: [Font; 2],
    images: Vec<(Arc<Picture>, Image)>,
}

/// Writes a sheet.
pub fn pdf(sheet: &Sheet) -> Result<Vec<u8>, PdfFault> {
    let face = |file: &'static [u8]| Font::new(file.into(), 0).ok_or_else(|| PdfFault::of("no font"));
    let mut stock = Stock { faces: [face(font::REGULAR)?, face(font::BOLD)?], images: Vec::new() };
    let mut document = Document::new();
    let about = Metadata::new().title(sheet.title.clone()).creator("gauzelight".to_owned()).language("en".to_owned());
    document.set_metadata(about);
    for page in &sheet.pages {
        let [width, height] = page.size.map(|v| v as f32);
        let settings = PageSettings::from_wh(width, height).ok_or_else(|| PdfFault::of("a page has no size"))?;
        let mut sheet_page = document.start_page_with(settings);
        let mut surface = sheet_page.surface();
        draw(&mut surface, page, &mut stock)?;
        surface.finish();
        sheet_page.finish();
    }
    document.finish().map_err(PdfFault::of)
}

fn draw(surface: &mut Surface, page: &Page, stock: &mut Stock) -> Result<(), PdfFault> {
    for ink in &page.ink {
        match ink {
            Ink::Text { at, size, weight, grey, upwards, says } => {
                let [x, y] = at.map(|v| v as f32);
                paint(surface, Some(*grey), None);
                // Paper has y downwards: upwards is a quarter turn against the clock.
                let place = if *upwards { (0.0, -1.0, 1.0, 0.0) } else { (1.0, 0.0, 0.0, 1.0) };
                surface.push_transform(&Transform::from_row(place.0, place.1, place.2, place.3, x, y));
                let face = stock.faces[*weight as usize].clone();
                surface.draw_glyphs(Point::from_xy(0.0, 0.0), &glyphs(says, *weight), face, says, *size as f32, false);
                surface.pop();
            }
            Ink::Line { points, width, grey, dash } => {
                let Some(path) = path(points, false) else { continue };
                let dash = dash.map(|pair| StrokeDash { array: pair.map(|v| v as f32).to_vec(), offset: 0.0 });
                let stroke = Stroke { width: *width as f32, line_join: LineJoin::Round, dash, ..Stroke::default() };
                paint(surface, None, Some(Stroke { paint: shade(*grey).into(), ..stroke }));
                surface.draw_path(&path);
            }
            Ink::Area { points, grey } => {
                let Some(path) = path(points, true) else { continue };
                paint(surface, Some(*grey), None);
                surface.draw_path(&path);
            }
            Ink::Picture { at, size, picture } => {
                let image = image(stock, picture)?;
                let [width, height] = size.map(|v| v as f32);
                let size = Size::from_wh(width, height).ok_or_else(|| PdfFault::of("a picture has no size"))?;
                surface.push_transform(&Transform::from_translate(at[0] as f32, at[1] as f32));
                surface.draw_image(image, size);
                surface.pop();
            }
        }
    }
    Ok(())
}

fn shade(grey: f64) -> luma::Color {
    luma::Color::new((255.0 * grey).round() as u8)
}

fn paint(surface: &mut Surface, fill: Option<f64>, stroke: Option<Stroke>) {
    surface.set_fill(fill.map(|grey| Fill { paint: shade(grey).into(), ..Fill::default() }));
    surface.set_stroke(stroke);
}

fn path(points: &[[f64; 2]], closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    for (i, point) in points.iter().enumerate() {
        let [x, y] = point.map(|v| v as f32);
        if i == 0 { path.move_to(x, y) } else { path.line_to(x, y) }
    }
    if closed {
        path.close();
    }
    path.finish()
}

/// A text's glyphs, each as wide as the layout took it to be.
fn glyphs(says: &str, weight: Weight) -> Vec<KrillaGlyph> {
    let Some(face) = font::face(weight) else { return Vec::new() };
    let em = f32::from(face.units_per_em());
    let glyph = |(at, character): (usize, char)| {
        let glyph = font::glyph(face, character);
        let advance = f32::from(face.glyph_hor_advance(glyph).unwrap_or(0)) / em;
        let id = GlyphId::new(u32::from(glyph.0));
        KrillaGlyph::new(id, advance, 0.0, 0.0, 0.0, at..at + character.len_utf8(), None)
    };
    says.char_indices().map(glyph).collect()
}

/// A picture, stored once however often it is printed.
fn image(stock: &mut Stock, picture: &Arc<Picture>) -> Result<Image, PdfFault> {
    if let Some((_, image)) = stock.images.iter().find(|(known, _)| Arc::ptr_eq(known, picture)) {
        return Ok(image.clone());
    }
    let image = Image::from_jpeg(picture.jpeg.clone().into(), true).map_err(PdfFault::of)?;
    stock.images.push((Arc::clone(picture), image.clone()));
    Ok(image)
}
