//! A page as pixels, for a display; and text as outlines, for whatever else draws with pixels.

use super::{Ink, Page, Picture, Weight, font};
use image::{ImageFormat, RgbaImage};
use tiny_skia::{
    Color, FillRule, FilterQuality, IntSize, Paint, Path, PathBuilder, Pixmap, PixmapPaint, Stroke, StrokeDash,
    Transform,
};

/// A page so many pixels wide.
pub fn preview(page: &Page, width_px: u32) -> RgbaImage {
    let width = width_px.clamp(1, 8192);
    let scale = f64::from(width) / page.size[0];
    let height = ((page.size[1] * scale).round() as u32).max(1);
    let Some(mut map) = Pixmap::new(width, height) else { return RgbaImage::new(width, height) };
    map.fill(Color::WHITE);
    let whole = Transform::from_scale(scale as f32, scale as f32);
    for ink in &page.ink {
        match ink {
            Ink::Text { at, size, weight, grey, upwards, says } => {
                let Some(path) = text_path(says, *size as f32, *weight) else { continue };
                let there = Transform::from_translate(at[0] as f32, at[1] as f32);
                let there = if *upwards { there.pre_concat(Transform::from_rotate(-90.0)) } else { there };
                map.fill_path(&path, &paint(*grey), FillRule::Winding, whole.pre_concat(there), None);
            }
            Ink::Line { points, width, grey, dash } => {
                let Some(path) = polygon(points, false) else { continue };
                let dash = dash.and_then(|pair| StrokeDash::new(pair.map(|v| v as f32).to_vec(), 0.0));
                let stroke =
                    Stroke { width: *width as f32, line_join: tiny_skia::LineJoin::Round, dash, ..Stroke::default() };
                map.stroke_path(&path, &paint(*grey), &stroke, whole, None);
            }
            Ink::Area { points, grey } => {
                if let Some(path) = polygon(points, true) {
                    map.fill_path(&path, &paint(*grey), FillRule::Winding, whole, None);
                }
            }
            Ink::Picture { at, size, picture } => {
                let Some(pixels) = decoded(picture) else { continue };
                let fit = [size[0] / f64::from(picture.size[0]), size[1] / f64::from(picture.size[1])];
                let there = Transform::from_row(fit[0] as f32, 0.0, 0.0, fit[1] as f32, at[0] as f32, at[1] as f32);
                let how = PixmapPaint { quality: FilterQuality::Bilinear, ..PixmapPaint::default() };
                map.draw_pixmap(0, 0, pixels.as_ref(), &how, whole.pre_concat(there), None);
            }
        }
    }
    // White paper is opaque, so that premultiplied and straight are the same.
    RgbaImage::from_raw(width, height, map.take()).unwrap_or_default()
}

fn paint(grey: f64) -> Paint<'static> {
    let code = (255.0 * grey).round() as u8;
    let mut paint = Paint::default();
    paint.set_color_rgba8(code, code, code, 255);
    paint
}

/// A line through points, or the polygon that they are the corners of.
pub(super) fn polygon(points: &[[f64; 2]], closed: bool) -> Option<Path> {
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

fn decoded(picture: &Picture) -> Option<Pixmap> {
    let pixels = image::load_from_memory_with_format(&picture.jpeg, ImageFormat::Jpeg).ok()?.to_rgba8();
    let size = IntSize::from_wh(pixels.width(), pixels.height())?;
    Pixmap::from_vec(pixels.into_raw(), size)
}

/// The outlines of a line of text, its base line from the origin to the right, `y` down; `None` of a text without ink.
pub(super) fn text_path(says: &str, size: f32, weight: Weight) -> Option<Path> {
    let face = font::face(weight)?;
    let scale = size / f32::from(face.units_per_em());
    let mut pen = Pen { path: PathBuilder::new(), scale, x: 0.0 };
    for character in says.chars() {
        let glyph = font::glyph(face, character);
        let _ = face.outline_glyph(glyph, &mut pen);
        pen.x += scale * f32::from(face.glyph_hor_advance(glyph).unwrap_or(0));
    }
    pen.path.finish()
}

struct Pen {
    path: PathBuilder,
    scale: f32,
    x: f32,
}

impl Pen {
    fn at(&self, x: f32, y: f32) -> (f32, f32) {
        (self.x + self.scale * x, -self.scale * y)
    }
}

impl ttf_parser::OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.at(x, y);
        self.path.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.at(x1, y1), self.at(x, y));
        self.path.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.path.close();
    }
}
