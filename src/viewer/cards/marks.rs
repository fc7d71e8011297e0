//! Marks of what has no body, handles of what is chosen, and measures beside what is held.

use super::super::{
    hands::{Sign, TapeHeld},
    pointing::Pointing,
    studio::Studio,
    theme::Theme,
};
use bevy_egui::egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Stroke, vec2};
use gauzelight::{craft::power, scene::Item, units::Length};
use glam::Vec3;

/// Draws them over the picture.
pub fn marks(painter: &Painter, full: Rect, studio: &Studio, pointing: &Pointing, theme: &Theme) {
    let anchor = pointing.marks.iter().filter(|(mark, _)| matches!(mark.sign, Sign::Axis(_)));
    let arms: Vec<Pos2> = anchor.map(|(_, at)| *at).collect();
    for (mark, at) in &pointing.marks {
        let on = pointing.on.as_ref() == Some(mark);
        let chosen = studio.chosen.as_deref() == Some(mark.name.as_str());
        let colour = if on || chosen { theme.warm.0 } else { theme.faded.0 };
        // The picture rules: what is not chosen shows its mark where the pointer comes near.
        let near = pointing.hover.as_ref().map_or(0.0, |(pointer, _)| 1.6 - pointer.distance(*at) / 110.0);
        if !chosen && near <= 0.0 {
            continue;
        }
        let colour = if chosen { colour } else { colour.gamma_multiply(near.min(1.0)) };
        let size = if on { 7.0 } else { 5.0 };
        match mark.sign {
            Sign::Lens => ring(painter, *at, size, colour),
            Sign::Lamp | Sign::Supply => {
                let half = vec2(size * 0.8, size * 0.8);
                painter.rect_stroke(
                    Rect::from_center_size(*at, 2.0 * half),
                    1.0,
                    Stroke::new(1.4, colour),
                    bevy_egui::egui::StrokeKind::Middle,
                );
                if mark.sign == Sign::Supply {
                    painter.circle_filled(*at, 0.35 * size, colour);
                }
            }
            Sign::Spot => ring(painter, *at, size, colour),
            Sign::Meter => {
                ring(painter, *at, size, colour);
                painter.circle_filled(*at, 0.35 * size, colour);
            }
            Sign::Aim => {
                let arm = if on { 11.0 } else { 9.0 };
                for way in [vec2(arm, 0.0), vec2(0.0, arm)] {
                    painter.line_segment([*at - way, *at + way], Stroke::new(3.5, Color32::from_black_alpha(160)));
                    painter.line_segment([*at - way, *at + way], Stroke::new(1.8, theme.warm.0));
                }
            }
            Sign::Figure => {
                ring(painter, *at, if on { 9.0 } else { 7.0 }, theme.warm.0);
                painter.circle_filled(*at, 2.0, theme.warm.0);
            }
            Sign::Axis(axis) => {
                let name = ["x", "y", "z"][axis];
                painter.circle_filled(*at, size + 3.0, Color32::from_black_alpha(170));
                painter.circle_stroke(*at, size + 3.0, Stroke::new(1.2, colour));
                painter.text(*at, Align2::CENTER_CENTER, name, FontId::proportional(theme.small), colour);
            }
        }
        let text = match mark.sign {
            Sign::Axis(_) => None,
            Sign::Aim => Some("middle of its picture: drag to aim"),
            Sign::Figure => Some("middle of its figure: drag to aim"),
            Sign::Lens | Sign::Lamp | Sign::Meter | Sign::Supply | Sign::Spot => Some(mark.name.as_str()),
        };
        if let Some(text) = text.filter(|_| on) {
            tag(painter, *at + vec2(12.0, -12.0), text, theme);
        }
    }
    face_of(painter, full, studio, theme);
    arms_of(painter, full, studio, &arms, theme);
    cables(painter, full, studio, theme);
    tapes(painter, full, studio, pointing, theme);
    measures(painter, full, studio, theme);
}

fn ring(painter: &Painter, at: Pos2, radius: f32, colour: Color32) {
    painter.circle_stroke(at, radius, Stroke::new(3.2, Color32::from_black_alpha(150)));
    painter.circle_stroke(at, radius, Stroke::new(1.5, colour));
}

fn tag(painter: &Painter, at: Pos2, text: &str, theme: &Theme) {
    let galley = painter.layout_no_wrap(text.to_owned(), FontId::proportional(theme.small), theme.ink.0);
    let place = Rect::from_min_size(at - vec2(0.0, galley.size().y), galley.size());
    painter.rect_filled(place.expand2(vec2(5.0, 2.0)), 3.0, theme.paper.0);
    painter.galley(place.min, galley, theme.ink.0);
}

/// A line around the flat face of what is chosen: a window, a wall, a cloth.
fn face_of(painter: &Painter, full: Rect, studio: &Studio, theme: &Theme) {
    let place = studio.item().and_then(|item| studio.night().place(item.name()));
    let Some(face) = place.and_then(|place| place.face) else { return };
    let corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (0.0, 0.0)];
    let on: Option<Vec<Pos2>> = corners.iter().map(|(s, t)| seen(full, studio, face.point(*s, *t))).collect();
    for pair in on.iter().flat_map(|on| on.windows(2)) {
        painter.line_segment([pair[0], pair[1]], Stroke::new(3.0, Color32::from_black_alpha(120)));
        painter.line_segment([pair[0], pair[1]], Stroke::new(1.2, theme.warm.0.gamma_multiply(0.8)));
    }
}

/// Lines from the chosen thing to its handles.
fn arms_of(painter: &Painter, full: Rect, studio: &Studio, arms: &[Pos2], theme: &Theme) {
    let Some(at) = studio.item().and_then(|item| super::super::hands::anchor(&item, studio.night())) else { return };
    let Some(from) = seen(full, studio, at) else { return };
    for arm in arms {
        let way = (*arm - from).normalized();
        painter.line_segment([from, *arm - 8.0 * way], Stroke::new(1.2, theme.warm.0.gamma_multiply(0.7)));
    }
}

/// What a tape beside the held thing would say: where it is, and how far it has come.
fn measures(painter: &Painter, full: Rect, studio: &Studio, theme: &Theme) {
    let (Some(held), Some(item)) = (&studio.held, studio.item()) else { return };
    let style = studio.yard().units.style();
    let length = |m: f64| Length::metres((m * 1000.0).round() / 1000.0).show(style);
    let mut lines = Vec::new();
    match &item {
        Item::Opening(_, opening) => {
            let (left, up) = opening.corner();
            lines.push(format!("{} from the left, {} up", length(left), length(up)));
        }
        _ => {
            if let Some([x, y, z]) = item.points().first() {
                lines.push(format!("x {}   y {}   z {}", length(*x), length(*y), length(*z)));
            }
        }
    }
    let far = held.by.iter().map(|v| v * v).sum::<f64>().sqrt();
    if far > 0.0 {
        lines.push(format!("moved {}", length(far)));
    }
    if let Some(reading) = studio.station().and_then(|i| studio.readings.reading(i, &studio.yard().stations[i].name.0))
    {
        lines.extend(reading.throw_m.map(|m| format!("lens to target {}", length(m))));
    }
    for guide in &held.guides {
        lines.push(format!("in {} with {}", ["x", "y", "z"][guide.axis], guide.with));
    }
    let Some(at) = super::super::hands::anchor(&item, studio.night()).and_then(|at| seen(full, studio, at)) else {
        return;
    };
    for (index, line) in lines.iter().enumerate() {
        tag(painter, at + vec2(24.0, 34.0 + 19.0 * index as f32), line, theme);
    }
}

/// The cables that the chosen thing is, feeds or is fed by, as they run.
fn cables(painter: &Painter, full: Rect, studio: &Studio, theme: &Theme) {
    let Some(chosen) = studio.chosen.as_deref() else { return };
    let yard = studio.yard();
    for cable in &yard.cables {
        if ![&cable.name.0, &cable.from.0, &cable.to.0].into_iter().any(|name| name == chosen) {
            continue;
        }
        let way = power::way(yard, cable).unwrap_or_default();
        let on: Vec<Option<Pos2>> = way.iter().map(|point| seen(full, studio, point.as_vec3())).collect();
        for (a, b) in on.iter().zip(on.iter().skip(1)).filter_map(|(a, b)| a.zip(*b)) {
            painter.line_segment([a, b], Stroke::new(3.5, Color32::from_black_alpha(160)));
            painter.line_segment([a, b], Stroke::new(1.6, theme.warm.0));
        }
        if cable.name.0 == chosen
            && let Some(at) = on.get(on.len() / 2).copied().flatten()
        {
            tag(painter, at + vec2(8.0, -4.0), &cable.name.0, theme);
        }
    }
}

/// The tapes that lie in the picture, and the one that is being laid.
fn tapes(painter: &Painter, full: Rect, studio: &Studio, pointing: &Pointing, theme: &Theme) {
    let style = studio.yard().units.style();
    let pointer = pointing.hover.as_ref().filter(|(_, hover)| !hover.seen.name.is_empty());
    let laid = studio.yard().tapes.iter().map(|tape| [tape.from.vec3(), tape.to.vec3()]);
    let laying = match studio.tape {
        TapeHeld::From(from) => pointer.map(|(_, hover)| [from, hover.seen.point]),
        TapeHeld::No | TapeHeld::First => None,
    };
    for [a, b] in laid.chain(laying) {
        let (Some(from), Some(to)) = (seen(full, studio, a), seen(full, studio, b)) else { continue };
        painter.line_segment([from, to], Stroke::new(3.5, Color32::from_black_alpha(160)));
        painter.line_segment([from, to], Stroke::new(1.6, theme.ink.0));
        for end in [from, to] {
            painter.circle_filled(end, 3.0, theme.ink.0);
        }
        let length = Length::metres(f64::from((a.distance(b) * 1000.0).round() / 1000.0)).show(style);
        let (across, up) = ((b - a).with_y(0.0).length(), (b.y - a.y).abs());
        let part = |m: f32| Length::metres(f64::from((m * 1000.0).round() / 1000.0)).show(style);
        // A slanting tape says what a level and a plumb line would.
        let slants = across > 0.05 && up > 0.05;
        let text = if slants { format!("{length}   ({} level, {} plumb)", part(across), part(up)) } else { length };
        tag(painter, from.lerp(to, 0.5) + vec2(8.0, -4.0), &text, theme);
    }
    if studio.tape != TapeHeld::No
        && let Some((at, _)) = &pointing.hover
    {
        let end = if studio.tape == TapeHeld::First { "one end of the tape" } else { "its other end" };
        tag(painter, *at + vec2(14.0, 30.0), end, theme);
    }
}

fn seen(full: Rect, studio: &Studio, point: Vec3) -> Option<Pos2> {
    let (x, y) = studio.eye.camera().project(point, full.width(), full.height())?;
    Some(full.min + vec2(x, y))
}
