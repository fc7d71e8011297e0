//! Evenings as text and CSV.

use gauzelight::{
    judge::{
        Word,
        evening::{Run, Season, SeasonNight, Start},
    },
    units::{border::sent_light, lux},
};
use std::fmt::Write as _;

/// Tonight, a line for each station; `light` is what open level ground has as visitors come and as they have gone, lx.
pub fn tonight(night: &SeasonNight, stations: &[&str], spot: &str, wanted: Word, light: [f64; 2]) -> String {
    let hours = &night.hours;
    let sunset = hours.sunset.map_or_else(|| "no sunset".to_owned(), |sunset| format!("sunset {sunset}"));
    let wanted = wanted.name();
    // Writing to a string cannot fail.
    let mut page = format!("{}, seen from {spot}; {sunset}; visitors {} to {}\n", night.date, hours.from, hours.until);
    let [first, last] = light.map(lux);
    let moon = match moon(night.moon_lx) {
        None => "no moon".to_owned(),
        Some(lux) => format!("of it the moon {lux}, mean from {} to {}", hours.from, hours.until),
    };
    let _ = writeln!(page, "open ground: {first} at {}, {last} at {}; {moon}\n", hours.from, hours.until);
    if stations.is_empty() {
        return page + "No station is on.\n";
    }
    let wide = width("station", stations.iter().copied());
    let head = format!("at least {wanted}");
    let _ = writeln!(
        page,
        "{:<wide$}  {head:<22}  {:<14}  {:<14}  of their hours",
        "station", "as they come", "as they go"
    );
    for (station, start) in stations.iter().zip(&night.starts) {
        let said = |word: Option<Word>| word.map_or("not in sight", Word::name);
        let (first, last) = (said(start.first), said(start.last));
        let _ = writeln!(
            page,
            "{station:<wide$}  {:<22}  {first:<14}  {last:<14}  {:.0} %",
            when(start.run.as_ref()),
            start.share * 100.0
        );
    }
    page
}

/// A season, a line for each night.
pub fn season(season: &Season) -> String {
    let wanted = season.wanted.name();
    let mut page = format!(
        "Night by night: from when on at least {wanted}, and over how much of the visitors' hours; “–” never, “*” not to their end\n\n"
    );
    let stations: Vec<&str> = season.stations.iter().map(String::as_str).collect();
    let wide = width("99:99* 100 %", stations.iter().copied());
    let _ = write!(page, "{:<10}  {:<6}  {:>9}", "date", "sunset", "moon");
    for station in &stations {
        let _ = write!(page, "  {station:<wide$}");
    }
    for night in &season.nights {
        let sunset = night.hours.sunset.map_or_else(|| "–".to_owned(), |sunset| sunset.to_string());
        let _ = write!(
            page,
            "\n{}  {sunset:<6}  {:>9}",
            night.date,
            moon(night.moon_lx).unwrap_or_else(|| "none".to_owned())
        );
        for start in &night.starts {
            let _ = write!(page, "  {:<wide$}", short(start));
        }
        page.truncate(page.trim_end().len());
    }
    page + "\n"
}

/// A line for each night and station.
pub fn csv(nights: &[SeasonNight], stations: &[&str], spot: &str, wanted: Word) -> String {
    let mut table = String::from(
        "date,spot,station,word,sunset,visitors_from,visitors_until,from,until,until_visitors_gone,share,word_first,word_last,\
         moon_lx\n",
    );
    let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let name = |word: Option<Word>| word.map_or("", Word::name);
    for night in nights {
        let hours = &night.hours;
        let sunset = hours.sunset.map(|sunset| sunset.to_string()).unwrap_or_default();
        for (station, start) in stations.iter().zip(&night.starts) {
            let run = start.run.map_or_else(|| ",,".to_owned(), |r| format!("{},{},{}", r.from, r.until, r.lasts));
            let _ = writeln!(
                table,
                "{},{},{},{},{sunset},{},{},{run},{},{},{},{}",
                night.date,
                quoted(spot),
                quoted(station),
                wanted.name(),
                hours.from,
                hours.until,
                sent_light(start.share),
                name(start.first),
                name(start.last),
                sent_light(night.moon_lx)
            );
        }
    }
    table
}

fn when(run: Option<&Run>) -> String {
    match run {
        None => "never".to_owned(),
        Some(run) if run.lasts => format!("from {}", run.from),
        Some(run) => format!("from {} to {}", run.from, run.until),
    }
}

fn short(start: &Start) -> String {
    let share = start.share * 100.0;
    start
        .run
        .map_or_else(|| "–".to_owned(), |run| format!("{}{} {share:.0} %", run.from, if run.lasts { " " } else { "*" }))
}

fn width<'a>(least: &'a str, names: impl Iterator<Item = &'a str>) -> usize {
    names.chain([least]).map(|name| name.chars().count()).max().unwrap_or_default()
}

/// The moon's light; less than half a thousandth of a lux is none.
fn moon(lx: f64) -> Option<String> {
    (lx >= 5e-4).then(|| lux(lx))
}
