//! The black ground a picture is drawn on, and the few marks all pictures are made of.

use glam::{Vec2, Vec3};
use rayon::prelude::*;
use tiny_skia::{
    BlendMode, Color, FillRule, GradientStop, LinearGradient, Paint, Path, PathBuilder, Pixmap, Point,
    PremultipliedColorU8, RadialGradient, Shader, SpreadMode, Stroke, Transform,
};

use super::curve::Curve;

/// One stop of a gradient: where, which colour, how opaque.
pub(super) type Stop = (f32, Vec3, f32);

/// A picture while it is drawn. Colours are sRGB signals from 0 to 1, as a painter mixes them.
pub(super) struct Canvas {
    pixmap: Pixmap,
}

impl Canvas {
    /// A black ground.
    pub fn new((width, height): (u32, u32)) -> Self {
        let mut pixmap = Pixmap::new(width, height).expect("a drawing's size is a constant above zero");
        pixmap.fill(Color::BLACK);
        Self { pixmap }
    }

    /// Fills a closed curve evenly.
    pub fn fill(&mut self, curve: &Curve, colour: Vec3, opacity: f32) {
        if let Some(path) = curve.path() {
            self.fill_path(&path, Shader::SolidColor(tint(colour, opacity)), BlendMode::SourceOver);
        }
    }

    /// Fills a closed curve with a gradient from one point to another.
    pub fn fade(&mut self, curve: &Curve, from: Vec2, to: Vec2, stops: &[Stop]) {
        let (from, to) = (Point::from_xy(from.x, from.y), Point::from_xy(to.x, to.y));
        let shader = LinearGradient::new(from, to, gradient(stops), SpreadMode::Pad, Transform::identity());
        if let (Some(path), Some(shader)) = (curve.path(), shader) {
            self.fill_path(&path, shader, BlendMode::SourceOver);
        }
    }

    /// Fills a polygon evenly.
    pub fn polygon(&mut self, corners: &[Vec2], colour: Vec3, opacity: f32) {
        let mut builder = PathBuilder::new();
        for (index, corner) in corners.iter().enumerate() {
            if index == 0 {
                builder.move_to(corner.x, corner.y);
            } else {
                builder.line_to(corner.x, corner.y);
            }
        }
        builder.close();
        if let Some(path) = builder.finish() {
            self.fill_path(&path, Shader::SolidColor(tint(colour, opacity)), BlendMode::SourceOver);
        }
    }

    /// A soft round patch laid over what is there.
    pub fn patch(&mut self, centre: Vec2, radius: f32, stops: &[Stop]) {
        self.round(centre, radius, stops, BlendMode::SourceOver);
    }

    /// A soft round patch of light added to what is there.
    pub fn glow(&mut self, centre: Vec2, radius: f32, stops: &[Stop]) {
        self.round(centre, radius, stops, BlendMode::Screen);
    }

    fn round(&mut self, centre: Vec2, radius: f32, stops: &[Stop], blend: BlendMode) {
        let point = Point::from_xy(centre.x, centre.y);
        let shader =
            RadialGradient::new(point, 0.0, point, radius, gradient(stops), SpreadMode::Pad, Transform::identity());
        if let (Some(path), Some(shader)) = (PathBuilder::from_circle(centre.x, centre.y, radius), shader) {
            self.fill_path(&path, shader, blend);
        }
    }

    /// A line of even width with round ends.
    pub fn line(&mut self, curve: &Curve, width: f32, colour: Vec3, opacity: f32) {
        let Some(path) = curve.path() else { return };
        let paint = Paint { shader: Shader::SolidColor(tint(colour, opacity)), ..Paint::default() };
        let stroke = Stroke { width, line_cap: tiny_skia::LineCap::Round, ..Stroke::default() };
        self.pixmap.stroke_path(&path, &paint, &stroke, Transform::identity(), None);
    }

    /// A hair: full width at its root, bent through the middle point, gone at its tip.
    pub fn hair(&mut self, [root, middle, tip]: [Vec2; 3], width: f32, colour: Vec3, opacity: f32) {
        let side = (middle - root).perp().normalize_or_zero() * (width * 0.5);
        let waist = (tip - root).perp().normalize_or_zero() * (width * 0.4);
        let mut builder = PathBuilder::new();
        builder.move_to(root.x + side.x, root.y + side.y);
        builder.quad_to(middle.x + waist.x, middle.y + waist.y, tip.x, tip.y);
        builder.quad_to(middle.x - waist.x, middle.y - waist.y, root.x - side.x, root.y - side.y);
        builder.close();
        if let Some(path) = builder.finish() {
            self.fill_path(&path, Shader::SolidColor(tint(colour, opacity)), BlendMode::SourceOver);
        }
    }

    fn fill_path(&mut self, path: &Path, shader: Shader<'_>, blend_mode: BlendMode) {
        let paint = Paint { shader, blend_mode, ..Paint::default() };
        self.pixmap.fill_path(path, &paint, FillRule::Winding, Transform::identity(), None);
    }

    /// Works every texel over: from its centre and its colour to a new colour.
    pub fn rework(&mut self, change: impl Fn(Vec2, Vec3) -> Vec3 + Sync) {
        let width = self.pixmap.width() as usize;
        self.pixmap.pixels_mut().par_chunks_mut(width).enumerate().for_each(|(row, line)| {
            for (column, texel) in line.iter_mut().enumerate() {
                let at = Vec2::new(column as f32, row as f32) + 0.5;
                let codes = Vec3::new(texel.red().into(), texel.green().into(), texel.blue().into());
                let colour = change(at, codes / 255.0).clamp(Vec3::ZERO, Vec3::ONE) * 255.0 + 0.5;
                let [red, green, blue] = colour.to_array().map(|code| code as u8);
                *texel = PremultipliedColorU8::from_rgba(red, green, blue, 255).unwrap_or(*texel);
            }
        });
    }

    /// The finished picture: the haze a soft edge leaves on the ground taken down to true black, and codes rounded
    /// to every fourth, which no eye finds in feathers but which takes a third off the file.
    pub fn finish(mut self) -> Pixmap {
        let step = 4.0 / 255.0;
        self.rework(|_, colour| {
            // Two codes of haze over a whole raster would show as a grey veil around the figure on a dark wall.
            if colour.max_element() < 5.0 / 255.0 { Vec3::ZERO } else { (colour / step).round() * step }
        });
        self.pixmap
    }
}

fn tint(colour: Vec3, opacity: f32) -> Color {
    let [red, green, blue] = colour.clamp(Vec3::ZERO, Vec3::ONE).to_array();
    Color::from_rgba(red, green, blue, opacity.clamp(0.0, 1.0)).unwrap_or(Color::BLACK)
}

fn gradient(stops: &[Stop]) -> Vec<GradientStop> {
    stops.iter().map(|(at, colour, opacity)| GradientStop::new(*at, tint(*colour, *opacity))).collect()
}
