//! A comparison as text and as CSV.

use super::shown;
use crate::command::readings::quoted;
use gauzelight::{
    judge::{
        Banded,
        compare::{Comparison, FromSpot, Of, Row},
    },
    scene::Units,
    units::{
        Length,
        border::{sent_length, sent_light},
        two_digits, with_band,
    },
};
use std::fmt::Write as _;

/// A page of text: a paragraph a row, a line in it for each spot.
pub fn text(comparison: &Comparison, from: Option<usize>, units: Units) -> String {
    let mut page = String::new();
    let Comparison { station, target, rows, running, .. } = comparison;
    // Writing to a string cannot fail.
    let _ = writeln!(page, "{station} on {target}: {} {}, prices in your money", rows.len(), comparison.of.name());
    if comparison.of == Of::Projectors {
        let _ = writeln!(
            page,
            "from where it stands; with the lamps for {} seasons of {} nights of {} h",
            running.seasons,
            running.nights,
            two_digits(running.hours)
        );
    } else {
        page += "second picture: as seen on what stands behind, divided by the figure; by day: how many times brighter or darker than \
                 what is behind it, unlit\n";
    }
    for row in rows {
        let now = if row.now { "  (as it is now)" } else { "" };
        let _ = writeln!(page, "\n{}{now}", row.name());
        let _ = writeln!(page, "  {}", about(row, comparison.of, units));
        for spot in shown(comparison, from) {
            let _ = writeln!(page, "  from {:<16} {}", comparison.spots[spot], seen(&row.spots[spot]));
        }
    }
    for (name, why) in &comparison.left_out {
        let _ = writeln!(page, "\n{name}\n  could not be tried: {why}");
    }
    page
}

/// What it is from everywhere.
fn about(row: &Row, of: Of, units: Units) -> String {
    let percent = |share: f64| format!("{} %", two_digits(100.0 * share));
    let mut parts = Vec::new();
    match of {
        Of::Projectors => {
            parts.push(band(row.lumens, "lm"));
            parts.push(format!("picture {} wide", Length::metres(row.picture_width_m).show(units.style())));
            parts.push(format!("{} misses", percent(row.misses)));
        }
        _ => {
            if let Some(s) = row.straight {
                parts.push(format!(
                    "straight through {}",
                    with_band(100.0 * s.low, 100.0 * s.typical, 100.0 * s.high, "%")
                ));
            }
            if let Some(fate) = &row.fate {
                let [back, onward, lost] = [fate.back, fate.onward, fate.lost].map(percent);
                parts.push(format!("reflected {back}, scattered out the back {onward}, absorbed {lost}"));
            }
        }
    }
    parts.push(
        row.cost.map_or_else(|| "price unknown".to_owned(), |cost| format!("costs {}", band(cost, "").trim_end())),
    );
    if let Some(upkeep) = &row.upkeep {
        if upkeep.lamps > 0 {
            parts.push(format!("{} more lamps in it", upkeep.lamps));
        }
        parts.push(format!("{} kWh", two_digits(upkeep.kwh)));
    }
    parts.join("; ")
}

fn seen(spot: &FromSpot) -> String {
    if spot.word.is_none() {
        return "out of sight".to_owned();
    }
    let mut parts = vec![spot.phrase.clone(), band(spot.mean, "cd/m²")];
    parts.push(spot.ghost.as_ref().map_or_else(
        || "no second picture in sight".to_owned(),
        |ghost| format!("second picture {} on “{}”", two_digits(ghost.times), ghost.thing),
    ));
    if let Some(day) = spot.by_day {
        parts.push(format!("by day {} : 1", two_digits(day)));
    }
    parts.join(", ")
}

fn band(value: Banded, unit: &str) -> String {
    with_band(value.low, value.typical, value.high, unit)
}

/// A line for each row and spot.
pub fn csv(comparison: &Comparison, from: Option<usize>) -> String {
    let mut table =
        "name,now,spot,word,cd_m2_low,cd_m2,cd_m2_high,ghost,by_day,straight_low,straight,straight_high,back,onward,\
                     lost,white_lx,picture_width_m,misses,lumens,cost_low,cost,cost_high,lamps,kwh\n"
            .to_owned();
    let light = |value: Option<f64>| value.map_or_else(String::new, |value| sent_light(value).to_string());
    let three = |value: Option<Banded>| {
        [value.map(|v| v.low), value.map(|v| v.typical), value.map(|v| v.high)].map(light).join(",")
    };
    for row in &comparison.rows {
        let fate = row.fate.as_ref();
        for spot in shown(comparison, from) {
            let from = &row.spots[spot];
            let cells = [
                quoted(&row.name()),
                row.now.to_string(),
                quoted(&comparison.spots[spot]),
                from.word.map_or("", |word| word.name()).to_owned(),
                three(from.word.map(|_| from.mean)),
                light(from.second_picture()),
                light(from.by_day),
                three(row.straight),
                light(fate.map(|f| f.back)),
                light(fate.map(|f| f.onward)),
                light(fate.map(|f| f.lost)),
                light(Some(row.white_lx.typical)),
                sent_length(row.picture_width_m).to_string(),
                light(Some(row.misses)),
                light(Some(row.lumens.typical)),
                three(row.cost),
                row.upkeep.map_or_else(String::new, |upkeep| upkeep.lamps.to_string()),
                light(row.upkeep.map(|upkeep| upkeep.kwh)),
            ];
            let _ = writeln!(table, "{}", cells.join(","));
        }
    }
    table
}
