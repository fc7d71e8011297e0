//! Lines over the picture: where the throws land.

use super::super::{outline::Throw, theme::Theme};
use bevy_egui::egui::{Painter, Pos2, Rect, Stroke, pos2};
use gauzelight::picture::Camera;
use glam::Vec3;

/// Draws every throw; the chosen station's strongly.
pub fn outlines(
    painter: &Painter,
    place: Rect,
    camera: &Camera,
    throws: &[&Throw],
    chosen: Option<usize>,
    theme: &Theme,
) {
    let on = |point: Vec3| -> Option<Pos2> {
        let (x, y) = camera.project(point, place.width(), place.height())?;
        Some(pos2(place.min.x + x, place.min.y + y))
    };
    for throw in throws {
        let strong = chosen == Some(throw.station);
        let stroke =
            Stroke::new(if strong { 1.8 } else { 1.0 }, theme.warm.0.gamma_multiply(if strong { 1.0 } else { 0.55 }));
        let edge: Vec<Option<Pos2>> = throw.edge.iter().map(|p| p.and_then(on)).collect();
        let ends = edge.iter().zip(edge.iter().cycle().skip(1));
        for (a, b) in ends.filter_map(|(a, b)| a.zip(*b)) {
            painter.line_segment([a, b], stroke);
        }
        let Some(lens) = on(throw.lens) else { continue };
        painter.circle_filled(lens, if strong { 5.0 } else { 3.5 }, theme.warm.0);
        for corner in edge.iter().step_by(edge.len().max(4) / 4).flatten() {
            painter.line_segment([lens, *corner], Stroke::new(stroke.width * 0.7, stroke.color.gamma_multiply(0.7)));
        }
    }
}
