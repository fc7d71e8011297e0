//! Supplies, cables and loads that cannot be.

use gauzelight::scene::{Catalogue, Yard};

const GOOD: &str = r#"(
    name: "power",
    walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)],
    lamps: [(name: "lamp", kind: "porch lamp", at: (0, 2, 1))],
    stations: [
        (name: "one", projector: "mini LED", at: (0, 1, 3), aim: "wall", content: (picture: "owl_face"), loads: [(watts: 4, inrush: 2)]),
        (name: "two", projector: "mini LED", at: (1, 1, 3), aim: "wall", content: (picture: "owl_face")),
    ],
    supplies: [
        (name: "outlet", at: (3, 0.3, 0.1), kind: Mains(breaker_a: 16, gfci: true), ip: "IP44"),
        (name: "brick", at: (2, 0.3, 0.1), kind: TwelveVolt(watts: 60, fuse_a: 5, from: None), ip: "IP65"),
        (name: "battery", at: (2, 0.3, 3), kind: Battery(amp_hours: 20, usable: 0.5), ip: "IP65"),
    ],
    cables: [
        (name: "first", from: "outlet", to: "one", gauge: "1.5 mm²", joints: 1),
        (name: "second", from: "one", to: "two", gauge: "18 AWG"),
        (name: "third", from: "outlet", to: "brick", gauge: "1 mm²"),
        (name: "fourth", from: "brick", to: "lamp", gauge: "1 mm²"),
    ],
)"#;

fn faults(text: &str) -> Vec<String> {
    let read = Yard::parse(text, "yard", &Catalogue::builtin());
    read.map_or_else(|faults| faults.iter().map(ToString::to_string).collect(), |_| Vec::new())
}

#[test]
fn what_feeds_what_must_be_there_and_come_from_somewhere() {
    assert_eq!(faults(GOOD), Vec::<String>::new());
    for (what, instead, said) in [
        ("from: \"one\"", "from: \"oen\"", "cables[1].from: no supply, station, lamp or cable is called “oen”"),
        ("from: \"one\"", "from: \"oen\"", "did you mean “one”?"),
        ("to: \"two\"", "to: \"too\"", "no station, lamp or 12 V supply is called “too”"),
        ("to: \"two\"", "to: \"outlet\"", "no station, lamp or 12 V supply is called “outlet”"),
        ("to: \"two\"", "to: \"first\"", "no station, lamp or 12 V supply is called “first”"),
        ("to: \"two\"", "to: \"one\"", "“one” is fed twice: by “first” already"),
        ("from: \"outlet\", to: \"one\"", "from: \"two\", to: \"one\"", "“first” feeds itself"),
        ("from: \"one\"", "from: \"second\"", "“second” feeds itself"),
        ("from: \"outlet\", to: \"brick\"", "from: \"battery\", to: \"brick\"", "“brick” wants the mains"),
        ("from: \"outlet\", to: \"brick\"", "from: \"brick\", to: \"brick\"", "“brick” wants the mains"),
        ("from: None", "from: \"outlet\"", "it is fed twice: by “outlet” and by a cable"),
        ("from: None", "from: \"battery\"", "no mains supply is called “battery”"),
        ("18 AWG", "18", "“18” is no size of a conductor"),
        ("18 AWG", "99 AWG", "“99 AWG” is no size of a conductor"),
        ("ip: \"IP44\"", "ip: \"rain\"", "“rain” is no IP code"),
        ("breaker_a: 16", "breaker_a: 1000", "1000 is out of range"),
        ("watts: 60", "watts: 0.1", "0.1 is out of range"),
        ("fuse_a: 5", "fuse_a: 900", "900 is out of range"),
        ("amp_hours: 20", "amp_hours: 90000", "90000 is out of range"),
        ("usable: 0.5", "usable: 0", "0 is out of range"),
        ("inrush: 2", "inrush: 0.5", "0.5 is out of range"),
        ("joints: 1", "joints: 500", "500 joints"),
        ("name: \"third\"", "name: \"brick\"", "“brick” is the name of supplies[1] already"),
        ("kind: Battery(", "kind: Dynamo(", "Dynamo"),
    ] {
        assert!(GOOD.contains(what), "{what}");
        let found = faults(&GOOD.replacen(what, instead, 1));
        assert!(found.iter().any(|fault| fault.contains(said)), "{instead}: {said} is not among {found:#?}");
    }
}

#[test]
fn a_cable_waits_for_a_station_of_another_arrangement() {
    let other = r#"arrangements: [(name: "other", stations: [(name: "three", projector: "mini LED", at: (0, 1, 3), aim: "wall", content: (picture: "owl_face"))])], cables: ["#;
    let text = GOOD.replace("cables: [", other).replace("to: \"two\"", "to: \"three\"");
    assert_eq!(faults(&text), Vec::<String>::new());
}
