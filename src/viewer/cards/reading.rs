//! What a station gives: its readings, and where its light goes; while it is held, what changed since.

use super::{Shown, Theme};
use bevy_egui::egui::{self, Align, Color32, Layout, Rect, RichText, pos2, vec2};
use gauzelight::{
    judge::{self, Banded, Fate, StationReading},
    scene::{Meter, Station, Units},
    units::{Length, Style, illuminance, two_digits, with_band},
};

pub fn draw(ui: &mut egui::Ui, shown: &Shown, station: &Station, r: &StationReading) {
    let before = shown.studio.readings.before.as_ref().filter(|before| before.station == r.station);
    let (studio, theme) = (shown.studio, shown.theme);
    let feet = studio.yard().units == Units::Feet;
    let length = |m: f64| Length::metres((m * 100.0).round() / 100.0).show(studio.yard().units.style());
    let band = |b: Banded, unit: &str| with_band(b.low, b.typical, b.high, unit);
    row(ui, theme, "Projector", station.projector.0.clone(), "Its class in the catalogue");
    row(ui, theme, "Light out", band(r.lumens, "lm"), "Real white lumens that leave its box, not those printed on it");
    row(ui, theme, if r.targets.len() > 1 { "Targets" } else { "Target" }, r.onto(), "What it is meant to light");
    let value =
        r.throw_m.map_or_else(|| "–".to_owned(), |m| length(m) + &since(before.and_then(|before| before.throw_m), m));
    row(
        ui,
        theme,
        "Lens to target",
        value,
        "From the lens to where the middle of the picture lands, by way of any mirror",
    );
    row(
        ui,
        theme,
        "Picture",
        format!("{} × {}", length(r.picture.width_m), length(r.picture.height_m)),
        "The whole of it on the plane that it lands on, across and upwards",
    );
    if r.misses > 0.005 {
        let lit = format!("{} × {}", length(r.lit.width_m), length(r.lit.height_m));
        row(ui, theme, "Part on target", lit, "The part of the picture that lands on what it is meant to light");
    }
    let figure = format!("{} tall, lower edge {} up", length(r.figure.height_m), length(r.figure.bottom_m.max(0.0)));
    row(ui, theme, "Figure", figure, "The lit part of the picture, and its height above the ground");
    let tip = "White, this station alone: the light that lands over the area where it lands";
    lit(ui, theme, "Mean on the target", r.mean_on_target_lx, before.map(|b| b.mean_on_target_lx), feet, tip);
    for one in r.targets.iter().filter(|_| r.targets.len() > 1) {
        let was = before.and_then(|b| b.targets.iter().find(|was| was.target == one.target));
        let was = was.map(|was| was.mean_on_target_lx);
        lit(ui, theme, &format!("on {}", one.target), one.mean_on_target_lx, was, feet, tip);
        let sight = one.spots.get(studio.spot).and_then(|spot| spot.sight.as_ref());
        let word = sight.map_or_else(|| "out of sight".to_owned(), |sight| sight.phrase());
        let size = format!("{} × {}, {word}", length(one.figure.width_m), length(one.figure.height_m));
        row(ui, theme, "", size, "The figure there, and what an eye here makes of it");
    }
    phone_check(ui, theme, r, before, feet);
    let tip = "Mean over the figure as it is thrown, with all other light";
    lit(ui, theme, "On the figure", r.figure_lx, before.map(|b| b.figure_lx), feet, tip);
    let off = |degrees: f64| r.throw_m.unwrap_or(0.0) * degrees.to_radians().tan();
    let short = |m: f64| Length::metres(m).show(if feet { Style::Inches } else { Style::Centimetres });
    // To 5 mm, as a hand can set it.
    let astray = |degrees: f64| short((200.0 * off(degrees)).floor() / 200.0);
    let tip = "How far the picture moves when the projector is a degree off: 17.5 mm a metre";
    row(ui, theme, "1° of aim", short(off(1.0)), tip);
    if let Some(slack) = &r.slack {
        let tip = |a: f64, b: f64| {
            format!(
                "Its figure may land so far off, as the projector looks, before some of it misses: {a:.1}° and {b:.1}° of aim"
            )
        };
        let pair = |a: f64, b: f64, [one, two]: [&str; 2]| format!("{} {one}, {} {two}", astray(a), astray(b));
        let (left, right) = (slack.left_deg, slack.right_deg);
        row(ui, theme, "Still fine", pair(left, right, ["left", "right"]), &tip(left, right));
        let (up, down) = (slack.up_deg, slack.down_deg);
        row(ui, theme, "", pair(up, down, ["up", "down"]), &tip(up, down));
    }
    row(
        ui,
        theme,
        "Beside the target",
        format!("{:.0} % of its light", r.misses.max(0.0) * 100.0),
        "Share of an all-white picture that goes beside the target",
    );
    if !r.reads_right {
        let text = "The picture reads the wrong way round from most spots: set or unset “mirrored”.";
        ui.label(RichText::new(text).color(theme.warm.0).size(theme.small));
    }
    ui.add_space(6.0);
    let name = studio.yard().spots.get(studio.spot).map_or("", |s| s.name.0.as_str());
    ui.label(RichText::new(format!("From {name}")).strong());
    match r.spots.get(studio.spot) {
        Some(s) if s.in_sight > 0.02 => {
            let earlier = before.and_then(|b| b.spots.get(studio.spot));
            if let Some(sight) = &s.sight {
                row(ui, theme, "It is", sight.phrase(), "How well it is seen from here: lost, faint, clear or strong");
                ui.label(RichText::new(&sight.reason).size(theme.small).color(theme.faded.0));
            }
            let value = band(s.mean, "cd/m²") + &since(earlier.map(|b| b.mean.typical), s.mean.typical);
            row(ui, theme, "Figure", value, "Mean luminance of the figure from here");
            row(ui, theme, "Its brightest", band(s.peak, "cd/m²"), "Brightest point of the figure from here");
            row(
                ui,
                theme,
                "Ground beside it",
                band(s.ground, "cd/m²"),
                "The projector's black, other light on it, and what shows through",
            );
            let ratio = match s.figure_to_ground {
                Some(ratio) => format!("{} : 1", two_digits(ratio.typical)),
                None => "nothing beside it".to_owned(),
            };
            row(ui, theme, "Figure : ground", ratio, "How it stands out");
        }
        _ => drop(ui.label(RichText::new("out of sight").color(theme.faded.0))),
    }
    if let Some(fate) = &r.fate {
        ui.add_space(6.0);
        where_it_goes(ui, shown, fate);
    }
    if !r.beyond.is_empty() {
        ui.add_space(6.0);
        ui.label(RichText::new("The rest lands on").strong());
        for b in r.beyond.iter().take(3) {
            let peak = illuminance(b.peak_lx, b.peak_lx, b.peak_lx, feet).join(", ");
            let most = if b.peak_lx > 0.0 { format!(", up to {peak}") } else { String::new() };
            let value = format!("{:.0} %{most}", b.share * 100.0);
            row(ui, theme, &b.thing, value, "Share of the picture's light, and its greatest illuminance there");
        }
    }
    ui.add_space(6.0);
    let caution = "Eyes: never look into the lens. Mains outdoors and ladders: local codes, licensed people.";
    ui.label(RichText::new(caution).size(theme.small).color(theme.faded.0));
}

/// What a phone reads on the target, and the lumens that follow.
fn phone_check(ui: &mut egui::Ui, theme: &Theme, r: &StationReading, before: Option<&StationReading>, feet: bool) {
    let check = &r.phone_check;
    let nine: Vec<String> =
        check.places.iter().map(|place| place.lx.map_or_else(|| "–".to_owned(), |lx| two_digits(lx.typical))).collect();
    let rows: Vec<String> = nine.chunks(3).map(|row| row.join("  ")).collect();
    let tip = format!(
        "Throw white and lay a phone flat on the target at the centres of 3 × 3 equal parts of the picture; take off what it reads with \
         the lens covered. To expect, row by row, lx:\n{}\nThe mean is of the {} that land.",
        rows.join("\n"),
        check.on_target
    );
    lit(ui, theme, "Phone check", check.mean, before.map(|b| b.phone_check.mean), feet, &tip);
    if let Some(area) = check.lumens_per_lx {
        let tip = "Multiply the mean that the phone reads by this and write it under “light, lm”";
        row(ui, theme, "Lumens from it", format!("lx × {} m²", two_digits(area)), tip);
    }
}

/// What a meter reads, and by whom.
pub fn meter(ui: &mut egui::Ui, shown: &Shown, meter: &Meter) {
    let (studio, theme) = (shown.studio, shown.theme);
    let feet = studio.yard().units == Units::Feet;
    let reading = judge::read_meter(studio.night(), studio.yard(), &studio.catalogue, meter);
    let tip = "A phone that reads lux, held there and turned as this one is, would tell";
    lit(ui, theme, "On its face", reading.lx, None, feet, tip);
    for share in &reading.sources {
        lit(ui, theme, &format!("by {}", share.source), share.lx, None, feet, "The part of it that this one sends");
    }
    ui.separator();
}

fn row(ui: &mut egui::Ui, theme: &Theme, word: &str, value: String, tip: &str) {
    ui.horizontal(|ui| {
        ui.label(RichText::new(word).color(theme.faded.0)).on_hover_text(tip);
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.add(egui::Label::new(value).truncate()).on_hover_text(tip);
        });
    });
}

/// A row of lux, and where lengths are in feet one of foot-candles below it: both do not fit side by side.
fn lit(ui: &mut egui::Ui, theme: &Theme, word: &str, lx: Banded, before: Option<Banded>, feet: bool, tip: &str) {
    let changed = since(before.map(|b| b.typical), lx.typical);
    for (index, value) in illuminance(lx.low, lx.typical, lx.high, feet).into_iter().enumerate() {
        let value = if index == 0 { value + &changed } else { value };
        row(ui, theme, if index == 0 { word } else { "" }, value, tip);
    }
}

/// How a value has changed since the thing was taken hold of, in per cent; nothing where it has not.
fn since(before: Option<f64>, now: f64) -> String {
    match before {
        Some(before) if before.abs() > 1e-9 => match (100.0 * (now / before - 1.0)).round() {
            0.0 => String::new(),
            change => format!("  {change:+.0} %"),
        },
        _ => String::new(),
    }
}

/// A bar of the four ways that light takes at the target, and a line for each.
fn where_it_goes(ui: &mut egui::Ui, shown: &Shown, fate: &Fate) {
    let theme = shown.theme;
    ui.label(RichText::new("Where the light goes").strong());
    let parts: [(f64, Color32, &str); 4] = [
        (fate.back, theme.back.0, "toward the projector"),
        (fate.onward, theme.onward.0, "out the far side"),
        (fate.through, theme.through.0, "passes through"),
        (fate.lost, theme.lost.0, "lost in it"),
    ];
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 15.0), egui::Sense::hover());
    let mut x = rect.min.x;
    for (share, colour, _) in parts {
        let width = rect.width() * share as f32;
        ui.painter().rect_filled(Rect::from_min_size(pos2(x, rect.min.y), vec2(width, rect.height())), 0.0, colour);
        x += width;
    }
    for (i, (share, colour, word)) in parts.into_iter().enumerate() {
        if share < 0.005 {
            continue;
        }
        ui.horizontal(|ui| {
            let (dot, _) = ui.allocate_exact_size(vec2(10.0, 10.0), egui::Sense::hover());
            ui.painter().rect_filled(dot, 2.0, colour);
            let seen = match (i, fate.seen_from_lit_side.get(shown.studio.spot)) {
                (0, Some(true)) | (1, Some(false)) => "  ·  what you see from here",
                _ => "",
            };
            let text = format!("{:.0} %  {word}{seen}", share * 100.0);
            ui.label(RichText::new(text).size(theme.small).color(theme.faded.0));
        });
    }
}
