//! The course of a dated evening: how dark it gets from before sunset to midnight, with the clock as a handle.

use super::{Act, Shown};
use bevy_egui::egui::{self, Align2, Color32, FontId, Pos2, Rect, Sense, Shape, Stroke, pos2, vec2};
use gauzelight::{judge::Word, light::ambient::Moment, scene::Clock, units::two_digits};

/// Range of the curve, lx: from starlight to a low sun.
const RANGE: (f64, f64) = (0.001, 5_000.0);
/// Width of the stations' names before the course, points.
const NAMES: f32 = 118.0;
/// Illuminances with a line, and what each is called.
const LINES: [(f64, &str); 2] = [(400.0, "sunset"), (3.4, "dusk has ended")];

/// Minutes since noon, so that an evening that runs past midnight goes on.
fn minutes(clock: Clock) -> f64 {
    f64::from((clock.minutes() + 12 * 60) % (24 * 60))
}

pub fn draw(ui: &mut egui::Ui, rect: Rect, shown: &Shown, acts: &mut Vec<Act>) {
    let (studio, theme) = (shown.studio, shown.theme);
    let (Some(when), [first, .., last]) = (&studio.yard().evening.when, studio.course.moments.as_slice()) else {
        return;
    };
    // The last moment is the midnight that ends the date.
    let (begin, end) = (minutes(first.clock), minutes(first.clock) + span(first, last));
    let plot = Rect::from_min_max(rect.min + vec2(NAMES, 0.0), rect.max - vec2(0.0, 14.0));
    let x = |minutes: f64| plot.min.x + ((minutes - begin) / (end - begin).max(1.0)) as f32 * plot.width();
    let y = |lx: f64| {
        let share = (lx.clamp(RANGE.0, RANGE.1) / RANGE.0).ln() / (RANGE.1 / RANGE.0).ln();
        plot.max.y - share as f32 * plot.height()
    };
    let painter = ui.painter().with_clip_rect(rect.expand(8.0));
    for (lx, name) in LINES {
        let line = Stroke::new(1.0, theme.edge.0);
        painter.line_segment([pos2(plot.min.x, y(lx)), pos2(plot.max.x, y(lx))], line);
        // Threads need the room that names would take.
        if studio.course.seen.is_none() {
            let font = FontId::proportional(theme.small - 1.0);
            painter.text(pos2(plot.max.x, y(lx)), Align2::RIGHT_BOTTOM, name, font, theme.faded.0);
        }
    }
    visitors(&painter, plot, shown, &x, (begin, end));
    let curve: Vec<Pos2> = studio
        .course
        .moments
        .iter()
        .map(|m| pos2(x(begin + span(first, m)), y(m.ambient.sky_lx + m.ambient.disc.map_or(0.0, |disc| disc.lx))))
        .collect();
    for pair in curve.windows(2) {
        let area = vec![pair[0], pair[1], pos2(pair[1].x, plot.max.y), pos2(pair[0].x, plot.max.y)];
        painter.add(Shape::convex_polygon(area, theme.through.0.gamma_multiply(0.28), Stroke::NONE));
    }
    painter.add(Shape::line(curve, Stroke::new(1.5, theme.through.0)));
    threads(&painter, plot, shown, &x, begin);
    hours(&painter, rect, shown, &x, (begin, end));
    let now = minutes(when.clock).clamp(begin, end);
    handle(&painter, plot, pos2(x(now), y(light_at(shown, now - begin))), theme.warm.0);
    let touch = ui.interact(plot, egui::Id::new("course"), Sense::click_and_drag());
    if let Some(at) = touch.interact_pointer_pos().filter(|_| touch.dragged() || touch.clicked()) {
        let share = f64::from(((at.x - plot.min.x) / plot.width()).clamp(0.0, 1.0));
        let minute = (begin + share * (end - begin)).min(end - 1.0) as u16 + 12 * 60;
        let clock = Clock::new(minute / 60, minute % 60);
        if clock != when.clock {
            acts.push(Act::Clock(clock, touch.dragged() && !touch.drag_started()));
        }
    }
    if let Some(at) = touch.hover_pos() {
        let minute = f64::from((at.x - plot.min.x) / plot.width()) * (end - begin);
        let clock = (begin + minute) as u16 + 12 * 60;
        let light = two_digits(light_at(shown, minute));
        let starts = starts(shown);
        touch.on_hover_text_at_pointer(format!(
            "{}: {light} lx on open ground{starts}\nDrag to set the clock",
            Clock::new(clock / 60, clock % 60)
        ));
    }
}

/// A thread for each station that is seen from where one stands, thicker as it becomes faint, clear, strong.
fn threads(painter: &egui::Painter, plot: Rect, shown: &Shown, x: &dyn Fn(f64) -> f32, begin: f64) {
    let theme = shown.theme;
    let Some(seen) = &shown.studio.course.seen else { return };
    // What is watched may begin before the course that is drawn, where visitors come before sunset.
    let Some(first) = shown.studio.course.moments.first() else { return };
    let inside = painter.with_clip_rect(plot);
    let row = (plot.height() / seen.threads.len().max(1) as f32).min(16.0);
    for (index, thread) in seen.threads.iter().enumerate() {
        let y = plot.min.y + row * (index as f32 + 0.5);
        let chosen = shown.studio.chosen.as_deref() == Some(thread.station.as_str());
        let colour = if chosen { theme.ink.0 } else { theme.faded.0 };
        let mut name = egui::text::LayoutJob::simple_singleline(
            thread.station.clone(),
            FontId::proportional((row - 2.0).min(theme.small - 1.0)),
            colour,
        );
        name.wrap = egui::text::TextWrapping::truncate_at_width(NAMES - 10.0);
        let name = painter.layout_job(name);
        painter.galley(pos2(plot.min.x - NAMES, y - 0.5 * name.size().y), name, colour);
        for (pair, word) in seen.moments.windows(2).zip(&thread.words) {
            let at = |moment: &Moment| pos2(x(begin + span(first, moment)), y);
            let (width, strength): (f32, f32) = match word {
                Word::Lost => (0.6, 0.35),
                Word::Faint => (1.4, 0.6),
                Word::Clear => (3.2, 0.85),
                Word::Strong => (6.0, 1.0),
            };
            let stroke = Stroke::new(width.min(row - 3.0), theme.warm.0.gamma_multiply(strength));
            inside.line_segment([at(&pair[0]), at(&pair[1])], stroke);
        }
    }
}

/// Minutes from one moment to another.
fn span(first: &Moment, then: &Moment) -> f64 {
    then.instant.duration_since(first.instant).as_secs_f64() / 60.0
}

/// Illuminance of open ground so many minutes after the course begins, lx.
fn light_at(shown: &Shown, minutes: f64) -> f64 {
    let moments = &shown.studio.course.moments;
    let nearest = moments.iter().min_by(|a, b| {
        let off = |m: &Moment| (span(&moments[0], m) - minutes).abs();
        off(a).total_cmp(&off(b))
    });
    nearest.map_or(0.0, |m| m.ambient.sky_lx + m.ambient.disc.map_or(0.0, |disc| disc.lx))
}

/// From when on each station is clear.
fn starts(shown: &Shown) -> String {
    let threads = shown.studio.course.seen.iter().flat_map(|seen| &seen.threads);
    let line = |thread: &gauzelight::judge::evening::Thread| match &thread.start.run {
        _ if thread.words.is_empty() => format!("\n{}: out of sight", thread.station),
        Some(run) if run.lasts => format!("\n{}: clear from {}", thread.station, run.from.clock),
        Some(run) => format!("\n{}: clear from {} until {}", thread.station, run.from.clock, run.until.clock),
        None => format!("\n{}: never clear while visitors come", thread.station),
    };
    threads.map(line).collect()
}

/// The hours when people come by, as a band under the curve.
fn visitors(painter: &egui::Painter, plot: Rect, shown: &Shown, x: &dyn Fn(f64) -> f32, (begin, end): (f64, f64)) {
    let (from, until) = shown.studio.yard().visitors;
    let (from, mut until) = (minutes(from), minutes(until));
    if until <= from {
        until += 24.0 * 60.0;
    }
    let (from, until) = (from.clamp(begin, end), until.clamp(begin, end));
    let band = Rect::from_min_max(pos2(x(from), plot.max.y - 4.0), pos2(x(until), plot.max.y));
    painter.rect_filled(band, 2.0, shown.theme.warm.0.gamma_multiply(0.45));
    let font = FontId::proportional(shown.theme.small - 1.0);
    painter.text(pos2(x(from) + 4.0, plot.max.y - 4.0), Align2::LEFT_BOTTOM, "visitors", font, shown.theme.faded.0);
}

/// The whole hours, under the curve.
fn hours(painter: &egui::Painter, rect: Rect, shown: &Shown, x: &dyn Fn(f64) -> f32, (begin, end): (f64, f64)) {
    let first = (begin / 60.0).ceil() as u16;
    for hour in first..=(end / 60.0).floor() as u16 {
        let at = pos2(x(f64::from(hour) * 60.0), rect.max.y);
        let text = format!("{:02}:00", (hour + 12) % 24);
        let align = if at.x > rect.max.x - 20.0 { Align2::RIGHT_BOTTOM } else { Align2::CENTER_BOTTOM };
        painter.text(at, align, text, FontId::proportional(shown.theme.small - 1.0), shown.theme.faded.0);
    }
}

fn handle(painter: &egui::Painter, plot: Rect, at: Pos2, colour: Color32) {
    painter.line_segment([pos2(at.x, plot.min.y), pos2(at.x, plot.max.y)], Stroke::new(1.4, colour));
    painter.circle_filled(at, 5.0, colour);
}
