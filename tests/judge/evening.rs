//! From when on it can be seen: held against nights built anew for each clock time, against what must hold of any evening, and
//! against practice.

use super::Lit;
use gauzelight::{
    judge::{
        Word,
        evening::{EveningCourse, Hours, Watch, season_dates},
        read_station,
    },
    light::Night,
    picture::plot,
    scene::{Clock, Date, When, Yard},
};
use jiff::{SignedDuration, Timestamp};

const DECEMBER: &str =
    r#"date: "2026-12-24", clock: "18:30", latitude_deg: 52.5, longitude_deg: 13.4, zone: "Europe/Berlin""#;

/// A window and a white wall under a full moon, with a lamp by the wall that burns from 17:10 to 20:00.
fn two() -> String {
    format!(
        r#"(
    name: "two",
    evening: (when: ({DECEMBER})),
    visitors: ("16:30", "22:00"),
    ground: (surface: "lawn, winter", width: "24 m", depth: "24 m"),
    walls: [
        (name: "front", at: (0, 0, 0), width: "6 m", height: "3 m", openings: [
            Window(name: "window", left: "2.4 m", sill: "1 m", width: "1.2 m", height: "1 m"),
        ]),
        (name: "wall", at: (6, 0, 0), width: "4 m", height: "3 m", surface: "plaster, white"),
    ],
    lamps: [(name: "lamp", kind: "porch lamp", at: (7.2, 2.6, 0.5), lumens: 1500, from: "17:10", until: "20:00")],
    spots: [(name: "path", at: (2, 0, 7), look: "window")],
    films: [(name: "film", fabric: "rear film, grey", window: "window")],
    stations: [
        (name: "Window", projector: "mini LED", at: (0, "1.5 m", "-2.2 m"), aim: "film", content: (picture: "owl_face", mirrored: true)),
        (name: "Wall", projector: "compact LED", at: (6, 0.5, 2.5), mount: Ground, aim: (6, 1.2, 0), target: "wall", content: (picture: "owl_face")),
    ],
)"#
    )
}

fn when(lit: &Lit) -> When {
    lit.yard.evening.when.clone().unwrap()
}

fn watch(lit: &Lit) -> Watch {
    Watch::of(&lit.night, &lit.yard, &lit.catalogue, &lit.shelf, 0).unwrap()
}

fn course(lit: &Lit) -> EveningCourse {
    watch(lit).course(&lit.yard, &when(lit), 5, Word::Clear)
}

/// The word by a night that is built for this very instant, with full readings.
fn directly(lit: &Lit, station: usize, instant: Timestamp) -> Word {
    let mut yard = lit.yard.clone();
    let when = yard.evening.when.as_mut().unwrap();
    when.clock = when.clock_at(instant);
    let night = Night::build(&yard, &lit.catalogue, &lit.shelf).unwrap();
    let reading = read_station(&night, &yard, &lit.catalogue, station).unwrap();
    reading.spots[0].sight.as_ref().unwrap().word
}

fn later(instant: Timestamp, minutes: i64) -> Timestamp {
    instant.checked_add(SignedDuration::from_mins(minutes)).unwrap()
}

#[test]
fn starts_are_those_of_nights_built_for_the_minute() {
    let lit = Lit::parse(&two());
    let lamp = lit.yard.lamps[0].until.unwrap();
    let mut checked = 0;
    for wanted in [Word::Clear, Word::Strong] {
        let found = watch(&lit).course(&lit.yard, &when(&lit), 5, wanted);
        for thread in &found.threads {
            let Some(run) = thread.start.run else { continue };
            let is_well = |instant| directly(&lit, thread.index, instant) >= wanted;
            // From an hour before sunset into the run, or from while the lamp burns where the run begins with its end.
            let begin = if run.from.clock == lamp { later(lamp_burns(&lit), 60) } else { found.hours.begin };
            let (mut low, mut high) = (begin, later(run.from.instant, 20));
            assert!(!is_well(low) && is_well(high), "{}: {run:?}", thread.station);
            while high.duration_since(low).as_mins() > 1 {
                let between = later(low, high.duration_since(low).as_mins() / 2);
                if is_well(between) { high = between } else { low = between }
            }
            let off = high.duration_since(run.from.instant).as_mins();
            assert!(off.abs() <= 1, "{}: {} by weights, {off} minutes later by itself", thread.station, run.from);
            checked += 1;
        }
    }
    assert!(checked >= 3, "{checked}");
}

fn lamp_burns(lit: &Lit) -> Timestamp {
    when(lit).instant(lit.yard.lamps[0].from.unwrap())
}

#[test]
fn words_are_those_of_nights_built_for_the_minute() {
    let lit = Lit::parse(&two());
    let found = course(&lit);
    for thread in &found.threads {
        for (at, moment) in
            found.moments.iter().enumerate().step_by(9).filter(|(_, m)| m.instant < when(&lit).midnight())
        {
            let word = directly(&lit, thread.index, moment.instant);
            // Right at a turn the moon's place in its cell may decide: then the next step has that word.
            let near = &thread.words[at.saturating_sub(1)..(at + 2).min(thread.words.len())];
            assert!(near.contains(&word), "{} at {}: {word:?}, by weights {near:?}", thread.station, moment.clock);
        }
    }
}

#[test]
fn darker_is_never_worse() {
    // New moon on 9 December 2026, and no lamp is switched.
    let text = two().replace("2026-12-24", "2026-12-09").replace(r#", from: "17:10", until: "20:00""#, "");
    let lit = Lit::parse(&text);
    for thread in course(&lit).threads {
        assert!(thread.words.is_sorted(), "{}: {:?}", thread.station, thread.words);
        assert_eq!(thread.words[0], Word::Lost, "{} an hour before sunset", thread.station);
    }
}

#[test]
fn a_lamp_shows_as_a_step() {
    let lit = Lit::parse(&two());
    let found = course(&lit);
    let wall = found.threads.iter().find(|thread| thread.station == "Wall").unwrap();
    let word = |clock: &str, back: usize| {
        let clock = Clock::parse(clock).unwrap();
        let at = found.moments.iter().position(|moment| moment.clock == clock).unwrap();
        wall.words[at - back]
    };
    assert!(word("17:10", 0) < word("17:10", 1), "{:?}", wall.words);
    assert!(word("20:00", 0) > word("20:00", 1), "{:?}", wall.words);
    // It draws the eye before the lamp and after it: the longer of the two counts as the start, both as a share.
    let strong = watch(&lit).season_night(&lit.yard, &when(&lit), Word::Strong).starts[1].clone();
    let run = strong.run.unwrap();
    assert_eq!((run.from.to_string(), run.lasts), ("20:00".to_owned(), true));
    // Of 330 minutes the lamp takes 170.
    assert!(strong.share > 120.0 / 330.0 && strong.share <= 160.0 / 330.0, "{}", strong.share);
}

/// Common practice, no source: what a small LED throws on film in a window cannot be seen at sunset, and about half an hour
/// later it can. Over 200 evenly spread draws of its lumens and of the film's gain and what it throws back, each within its band in the catalogue, on
/// a yard of ours: one window of 1.2 m by 1 m in a dark front, seen from 7 m.
#[test]
fn a_small_projector_in_a_window_is_seen_about_half_an_hour_after_sunset() {
    let draw = |n: u32, step: f64, low: f64, high: f64| low + (high - low) * (0.5 + f64::from(n) * step).fract();
    let mut lit = Lit::parse(&two());
    let mut starts = Vec::new();
    for n in 0..200 {
        // Steps of the plastic number, by which three of them together fill the cube evenly.
        let lumens = draw(n, 0.819_172_513, 60.0, 150.0);
        let gain = draw(n, 0.671_043_606, 0.9, 1.6);
        let reflect = draw(n, 0.549_700_477, 0.05, 0.12);
        let film = format!(
            r#"fabrics: [(name: "drawn", kind: Film(gain: {gain}, half_gain_deg: 35, through: 0.01, reflect: {reflect}))],
    films: [(name: "film", fabric: "drawn", window: "window")],"#
        );
        let text = two()
            .replace(r#"    films: [(name: "film", fabric: "rear film, grey", window: "window")],"#, &film)
            .replace(r#"(name: "Window","#, &format!(r#"(name: "Window", lumens: {lumens},"#))
            .replace(r#"(name: "Wall","#, r#"(name: "Wall", on: false,"#)
            .replace("lumens: 1500,", "on: false,");
        lit.yard = Yard::parse(&text, "drawn", &lit.catalogue).unwrap().yard;
        // The same walls under the same sky.
        lit.night = lit.night.rebuilt(&lit.yard, &lit.catalogue, &lit.shelf).unwrap();
        let night = watch(&lit).season_night(&lit.yard, &when(&lit), Word::Clear);
        let sunset = night.hours.sunset.unwrap().instant;
        starts.push(night.starts[0].run.map(|run| run.from.instant.duration_since(sunset).as_mins()));
    }
    let usual = starts.iter().flatten().filter(|minutes| (5..=60).contains(*minutes)).count();
    assert!(usual >= 190, "{usual} of 200: {starts:?}");
    let (least, most) = (starts.iter().flatten().min().unwrap(), starts.iter().flatten().max().unwrap());
    println!("{least} to {most} minutes after sunset");
}

#[test]
fn visitors_may_stay_beyond_midnight_and_a_season_beyond_the_year() {
    let text = two().replace(r#"("16:30", "22:00"),"#, r#"("17:30", "00:30"), season: ("2026-12-30", "2027-01-02"),"#);
    let lit = Lit::parse(&text);
    let when = when(&lit);
    let hours = Hours::of(&lit.yard, &when);
    assert_eq!((hours.from.minutes, hours.until.minutes), (17 * 60 + 30, 24 * 60 + 30));
    assert_eq!(hours.until.instant, hours.end);
    assert!(hours.has_visitors(when.midnight()) && !hours.has_visitors(hours.until.instant));
    let dates = season_dates(&lit.yard, &when);
    let shown: Vec<String> = dates.iter().map(Date::to_string).collect();
    assert_eq!(shown, ["2026-12-30", "2026-12-31", "2027-01-01", "2027-01-02"]);
    let season = watch(&lit).season(&lit.yard, &when, Word::Clear);
    assert_eq!(season.nights.len(), 4);
    // Seen from as early on as the evening of that date alone.
    let alone = watch(&lit).season_night(&lit.yard, &when.on(dates[2]), Word::Clear);
    assert_eq!(season.nights[2], alone);
    let drawn = plot::season(&season, "a <yard>", "path", "Europe/Berlin");
    for part in [
        "<svg",
        "a &lt;yard&gt;",
        "Window",
        "clock time (h:min), Europe/Berlin",
        "2026 to 2027",
        "visitors 17:30 to 00:30",
    ] {
        assert!(drawn.contains(part), "{part} is not in {drawn}");
    }
    assert!(!drawn.contains("NaN"));
}
