//! Readings of stations as a table, a line for each target and viewing spot.

use super::{glass, phone, quoted};
use gauzelight::{
    judge::{Banded, OnTarget, Sight, SpotReading, StationReading},
    units::border::{sent_length, sent_light},
};
use std::fmt::Write as _;

/// Columns of a station, and those of its targets.
const STATION: &str = "station,on,picture_missing,lumens,throw_m,depth_m,picture_width_m,picture_height_m,pixels_per_m,least_pixels_per_m,misses,\
                       passes,thrown_back";
const TARGET: &str = "target,share,mean_on_target_lx_low,mean_on_target_lx,mean_on_target_lx_high,lit_width_m,lit_height_m,\
                      figure_width_m,figure_height_m,figure_bottom_m";
/// Columns of a spot.
const SPOT: &str = "spot,in_sight,peak_cd_m2_low,peak_cd_m2,peak_cd_m2_high,mean_cd_m2_low,mean_cd_m2,mean_cd_m2_high,\
                    ground_cd_m2_low,ground_cd_m2,ground_cd_m2_high,figure_to_ground,word,word_low,word_high,reason,light_enough,\
                    fine_enough,stands_out,holds_its_own,adaptation_cd_m2,veil_cd_m2,rival";

/// Readings as CSV.
pub fn csv(readings: &[StationReading]) -> String {
    let mut table = format!("{STATION},{},{TARGET},{SPOT}\n", phone::COLUMNS);
    let empty = |columns: &str| ",".repeat(columns.matches(',').count());
    for r in readings {
        let station = format!("{},{}", station(r), phone::columns(&r.phone_check));
        if r.targets.is_empty() {
            let _ = writeln!(table, "{station},{},{}", empty(TARGET), empty(SPOT));
        }
        for one in &r.targets {
            let target = target(one);
            if one.spots.is_empty() {
                let _ = writeln!(table, "{station},{target},{}", empty(SPOT));
            }
            for seen in &one.spots {
                let _ = writeln!(table, "{station},{target},{}", spot(seen));
            }
        }
    }
    table
}

fn station(r: &StationReading) -> String {
    let throw = [r.throw_m, r.depth_m].map(|m| m.map_or_else(String::new, |m| text(sent_length(m)))).join(",");
    let lengths = [r.picture.width_m, r.picture.height_m].map(sent_length).map(text).join(",");
    let light = [r.pixels_per_m, r.least_pixels_per_m, r.misses, r.passes, glass(r)].map(sent_light).map(text);
    let lumens = text(sent_light(r.lumens.typical));
    [quoted(&r.station), r.on.to_string(), r.picture_missing.to_string(), lumens, throw, lengths, light.join(",")]
        .join(",")
}

fn target(one: &OnTarget) -> String {
    let (lit, figure) = (&one.lit, &one.figure);
    let lengths = [lit.width_m, lit.height_m, figure.width_m, figure.height_m, figure.bottom_m].map(sent_length);
    let share = text(sent_light(one.share));
    [quoted(&one.target), share, three(one.mean_on_target_lx), lengths.map(text).join(",")].join(",")
}

fn spot(s: &SpotReading) -> String {
    let ratio = s.figure_to_ground.map_or_else(String::new, |ratio| text(sent_light(ratio.typical)));
    let sight = s.sight.as_ref().map_or_else(|| ",".repeat(10), seen);
    let numbers = [text(sent_light(s.in_sight)), three(s.peak), three(s.mean), three(s.ground)];
    [quoted(&s.spot), numbers.join(","), ratio, sight].join(",")
}

fn text(value: f64) -> String {
    value.to_string()
}

fn three(b: Banded) -> String {
    [b.low, b.typical, b.high].map(sent_light).map(text).join(",")
}

/// What an eye makes of a figure, as columns of the table.
fn seen(sight: &Sight) -> String {
    let number = |value: f64| text(sent_light(value));
    let words = [sight.word, sight.least, sight.most];
    let mut columns = words.iter().map(|w| w.name().to_owned()).collect::<Vec<_>>();
    columns.push(quoted(&sight.reason));
    columns.extend(sight.answers.iter().map(|a| a.value.map_or_else(String::new, |value| number(value.typical))));
    columns.extend([number(sight.adaptation), number(sight.veil)]);
    columns.push(sight.rival.as_ref().map_or_else(String::new, |rival| quoted(&rival.name)));
    columns.join(",")
}
