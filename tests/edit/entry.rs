//! Fields as somebody types them.

use super::{yard, yards};
use gauzelight::scene::{Clock, Date, Evening, Item, Sort, Yard};

fn cloth() -> Item {
    yard("owl_night").item("net").unwrap()
}

fn shown(item: &Item, field: &str) -> Vec<String> {
    item.fields().into_iter().find(|f| f.name == field).unwrap().entries
}

#[test]
fn lengths_are_taken_in_any_notation_and_a_plus_adds() {
    let wide = cloth().with_entry("width", 0, "6' 3 1/2\"").unwrap();
    assert_eq!(shown(&wide, "width"), ["6' 3 1/2\""]);
    let wider = wide.with_entry("width", 0, "+4 in").unwrap();
    assert_eq!(shown(&wider, "width"), ["6' 7 1/2\""]);
    let narrower = wider.with_entry("width", 0, "+-1 ft").unwrap();
    assert_eq!(shown(&narrower, "width"), ["5' 7 1/2\""]);
    let moved = cloth().with_entry("at", 1, "2.6 m").unwrap();
    assert_eq!(shown(&moved, "at"), ["-6.6 m", "2.6 m", "4.75 m"]);
    let higher = moved.with_entry("at", 1, "+10 cm").unwrap();
    assert_eq!(shown(&higher, "at"), ["-6.6 m", "2.7 m", "4.75 m"]);
}

#[test]
fn what_cannot_be_taken_says_what_can() {
    for (field, typed, hint) in [
        ("width", "wide", "start with a number"),
        ("width", "0", "greater than 0"),
        ("width", "-2 m", "greater than 0"),
        ("width", "600 m", "at most 500 m"),
        ("width", "NaN", "a number"),
        ("turn_deg", "left", ""),
        ("turn_deg", "999", "360"),
        ("fullness", "9", "4"),
        ("nothing", "1", "no field nothing"),
    ] {
        let fault = cloth().with_entry(field, 0, typed).unwrap_err().to_string();
        assert!(fault.contains(hint) && fault.len() > 8, "{field} {typed}: {fault}");
    }
}

#[test]
fn nothing_typed_puts_back_what_is_usual() {
    let full = cloth().with_entry("fullness", 0, "2").unwrap();
    assert_ne!(full, cloth());
    assert_eq!(full.with_entry("fullness", 0, "").unwrap(), cloth());
    assert!(cloth().with_entry("width", 0, "").is_err(), "a width must be had");
}

#[test]
fn every_field_of_everything_takes_back_what_it_shows() {
    let mut seen = 0;
    for (_, yard) in yards() {
        for item in yard.items() {
            for field in item.fields() {
                assert!(!field.meaning.is_empty(), "{}.{}", item.word(), field.name);
                for (index, entry) in field.entries.iter().enumerate() {
                    let again = item.with_entry(&field.name, index, entry);
                    assert_eq!(again.as_ref(), Ok(&item), "{} {}.{} = {entry}", item.word(), item.name(), field.name);
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 500, "{seen}");
}

#[test]
fn what_stands_within_is_set_one_by_one() {
    let window = yard("owl_night").item("kitchen window").unwrap();
    assert_eq!(shown(&window, "room.lamp.lumens"), ["60"]);
    let dimmer = window.with_entry("room.lamp.lumens", 0, "40").unwrap();
    let deeper = dimmer.with_entry("room.depth", 0, "+50 cm").unwrap();
    assert_eq!(shown(&deeper, "room.depth"), ["3.5 m"]);
    assert_eq!(shown(&deeper, "room.lamp.lumens"), ["40"]);
    let dark = deeper.with_entry("room.lamp.lumens", 0, "").unwrap();
    assert_eq!(shown(&dark, "room.lamp.lumens"), ["400"], "nothing typed puts back what is usual");
    assert!(window.with_entry("room.lamp.hue", 0, "1").is_err() && window.with_entry("sill.hue", 0, "1").is_err());
    // A lamp can be had where there is none, and taken away.
    let bare = yard("owl_night").item("dormer window").unwrap();
    assert!(shown(&bare, "room.lamp").is_empty());
    let lit = bare.with_entry("room.lamp", 0, "()").unwrap();
    assert_eq!(shown(&lit, "room.lamp.on"), ["false"]);
}

#[test]
fn names_and_aims_are_set_one_by_one() {
    let net = cloth();
    assert_eq!(shown(&net, "behind"), ["grey tulle"]);
    let two = net.with_entry("behind", 1, "white sheer").unwrap();
    assert_eq!(shown(&two, "behind"), ["grey tulle", "white sheer"]);
    assert_eq!(shown(&two.with_entry("behind", 0, "").unwrap(), "behind"), ["white sheer"]);
    let two = yard("owl_night").item("Gourds").unwrap();
    assert_eq!(shown(&two, "target"), ["left gourd", "right gourd"]);
    let one = two.with_entry("target", 1, "").unwrap();
    assert_eq!(shown(&one, "target"), ["left gourd"]);
    assert_eq!(one.with_entry("target", 1, "right gourd").unwrap(), two);
    assert!(shown(&one.with_entry("target", 0, "").unwrap(), "target").is_empty());
    let station = yard("owl_night").item("Dormer window").unwrap();
    assert_eq!(shown(&station, "aim"), ["owl film"]);
    let at = station.with_entry("aim", 0, "(0, 1, 0)").unwrap();
    let higher = at.with_entry("aim", 1, "+25 cm").unwrap();
    assert_eq!(shown(&higher, "aim")[1], "1.25");
    assert_eq!(shown(&higher.with_entry("aim", 0, "net").unwrap(), "aim"), ["net"]);
}

#[test]
fn words_to_choose_from_are_known() {
    let field = |item: &Item, name: &str| item.fields().into_iter().find(|f| f.name == name).unwrap();
    let station = yard("owl_night").item("Gourds").unwrap();
    assert_eq!(field(&station, "pose").sort, Sort::Choice(&["Table", "Ceiling", "Upright"]));
    assert_eq!(field(&station, "at").sort, Sort::Lengths(3));
    assert_eq!(field(&station, "on").sort, Sort::Switch);
    assert_eq!(field(&station, "projector").sort, Sort::Name);
    assert_eq!(field(&cloth(), "width").sort, Sort::Length);
    assert!(field(&station, "on").meaning.contains("on"));
}

#[test]
fn dates_and_clocks_are_typed_and_taken_out_again() {
    let lamp = yard("owl_night").item("porch lamp").unwrap();
    let timed = lamp.with_entry("from", 0, "4:30 pm").unwrap();
    assert_eq!(shown(&timed, "from"), ["16:30"]);
    assert_eq!(timed.fields().iter().find(|field| field.name == "from").unwrap().sort, Sort::Clock);
    assert!(timed.with_entry("from", 0, "late").unwrap_err().to_string().contains("is not a clock time"));
    assert_eq!(timed.with_entry("from", 0, "").unwrap(), lamp);
    let text = r#"(name: "x", evening: (when: (date: "2026-12-21", clock: "18:30", latitude_deg: 1, longitude_deg: 2, zone: "UTC")))"#;
    let yard = Yard::parse(text, "x", &gauzelight::scene::Catalogue::builtin()).unwrap().yard;
    let when = yard.evening.when.clone().unwrap();
    let later = when.with_entry("clock", 0, "21:05").unwrap().with_entry("date", 0, "2026-10-31").unwrap();
    assert_eq!((later.clock, later.date), (Clock::new(21, 5), Date::parse("2026-10-31").unwrap()));
    let zone = when.with_entry("zone", 0, "america/denver").unwrap();
    assert_eq!(zone.fields().into_iter().find(|field| field.name == "zone").unwrap().entries, ["America/Denver"]);
    assert!(when.with_entry("zone", 0, "Mars").is_err() && when.with_entry("date", 0, "").is_err());
    assert!(when.fields().iter().all(|field| !field.meaning.is_empty()));
    let wet = yard.evening.with_entry("soaked", 0, "true").unwrap();
    assert_eq!(wet, Evening { soaked: true, ..yard.evening.clone() });
    assert_eq!(wet.with_entry("when", 0, "").unwrap().when, None);
}
