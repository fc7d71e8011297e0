//! Cautions: when they apply, and that each can be met.

use gauzelight::{
    craft::{
        cautions::{Caution, Part, of_station, of_yard, page},
        is_outdoors,
    },
    scene::{Catalogue, Mount, Point, Ref, Yard},
};

const YARD: &str = r#"(
    name: "careful",
    areas: [(name: "broad strip", surface: "gravel", x: (-20, 20), z: (12, 18), used_by: Cars)],
    houses: [(name: "house", at: (0, 0, 0), width: 8, depth: 6, height: 3, openings: [
        Window(name: "window", left: 3, sill: 1, width: 1.2, height: 1),
    ])],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.4, 5), width: 2, height: 2)],
    films: [(name: "film", fabric: "rear film, grey", window: "window")],
    supplies: [(name: "battery", at: (3, 0.3, 9), kind: Battery(amp_hours: 20), ip: "IP65")],
    forms: [Gourd(name: "gourd", at: (4, 0, 5))],
    stations: [
        (name: "inside", projector: "mini LED", at: (0, 1.5, -2), mount: Shelf, aim: "film", content: (picture: "owl_face", mirrored: true)),
        (name: "tree", projector: "12 V pocket", at: (3, 3.2, 9), mount: Tree, aim: "net", content: (picture: "owl_face")),
        (name: "roof", projector: "used lamp projector", at: (0, 3.6, -1), mount: Wall, aim: "net", content: (picture: "owl_face")),
        (name: "lawn", projector: "mini LED", at: (4, 0.3, 8), mount: Ground, aim: "gourd", content: (picture: "gourds")),
    ],
)"#;

fn yard() -> Yard {
    Yard::parse(YARD, "yard", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

#[test]
fn each_station_has_its_own() {
    let (yard, catalogue) = (yard(), Catalogue::builtin());
    let of = |index: usize| of_station(&yard, &catalogue, &yard.stations[index]);
    assert_eq!(of(0), [Caution::Unattended, Caution::EscapeWays, Caution::Eyes]);
    let tree = of(1);
    for caution in [Caution::OverheadLines, Caution::Ladder, Caution::Falls, Caution::MainsOutdoors, Caution::Unfused] {
        assert!(tree.contains(&caution), "{caution:?} is not in {tree:?}");
    }
    assert!(
        tree.contains(&Caution::FlameRetardant) && !tree.contains(&Caution::HotLamp) && !tree.contains(&Caution::Roof)
    );
    assert!(of(2).contains(&Caution::Roof) && of(2).contains(&Caution::HotLamp));
    assert!(of(3).contains(&Caution::GuysInTheDark) && !of(3).contains(&Caution::Ladder));
}

#[test]
fn a_yard_can_meet_every_one_and_an_empty_one_meets_none() {
    let catalogue = Catalogue::builtin();
    assert_eq!(of_yard(&yard(), &catalogue), Caution::ALL);
    assert!(of_yard(&Yard::named("empty"), &catalogue).is_empty());
    // Cloth that is sold as flame-retardant takes that caution away.
    let mut treated = yard();
    let mut net = catalogue.fabric("white tulle").unwrap().clone();
    net.flame_retardant = Some(true);
    treated.fabrics.push(net);
    assert!(!of_yard(&treated, &catalogue).contains(&Caution::FlameRetardant));
    // A battery with a fuse, once it feeds what runs off 12 V, leaves nothing unfused.
    let fused = YARD.replace("amp_hours: 20", "amp_hours: 20, fuse_a: 5").replace(
        "    forms:",
        "    cables: [(name: \"lead\", from: \"battery\", to: \"tree\", gauge: \"2.5 mm²\")],\n    forms:",
    );
    let fused = Yard::parse(&fused, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    assert!(!of_yard(&fused, &catalogue).contains(&Caution::Unfused));
    let tree = of_station(&fused, &catalogue, &fused.stations[1]);
    assert!(tree.contains(&Caution::Batteries) && !tree.contains(&Caution::Unfused));
    let mut away = yard();
    away.hidden = away.stations.iter().map(|station| Ref::to(&station.name.0)).collect();
    // The net's top edge is up a ladder too.
    let high = [Caution::OverheadLines, Caution::Ladder, Caution::Falls];
    assert!(high.iter().all(|caution| of_yard(&away, &catalogue).contains(caution)));
    away.cloths[0].at = Point::metres(0.0, 1.9, 5.0);
    assert!(high.iter().all(|caution| !of_yard(&away, &catalogue).contains(caution)));
}

#[test]
fn what_hangs_high_is_up_a_ladder_for_who_lights_it_from_the_lawn() {
    let (mut yard, catalogue) = (yard(), Catalogue::builtin());
    yard.stations[3].aim = gauzelight::scene::Aim::Thing(Ref::to("net"));
    let lawn = of_station(&yard, &catalogue, &yard.stations[3]);
    assert!(lawn.contains(&Caution::Ladder) && lawn.contains(&Caution::Falls), "{lawn:?}");
    // Brought in it is still up a ladder, and under no lines.
    yard.stations[3].at = Point::metres(3.0, 0.3, -3.0);
    yard.cloths[0].at = Point::metres(0.0, 2.4, -3.0);
    let within = of_station(&yard, &catalogue, &yard.stations[3]);
    assert!(within.contains(&Caution::Ladder) && !within.contains(&Caution::OverheadLines), "{within:?}");
}

#[test]
fn a_ladder_is_never_for_the_dark_whenever_somebody_may_go_up() {
    assert!(Part::ALL.iter().all(|part| Caution::Ladder.parts().contains(part)));
    assert!(Caution::Ladder.short().contains("dark") && Caution::Ladder.short().contains("wind"));
    // A cord under a mat overheats.
    assert!(Caution::ALL.iter().all(|caution| !caution.text().contains("under a mat")));
}

#[test]
fn neither_a_shelf_nor_a_window_that_is_lit_from_outside_is_a_roof() {
    let mut yard = yard();
    let mut stands = |at: [f64; 3], mount: Mount| {
        yard.stations[0].at = Point::metres(at[0], at[1], at[2]);
        yard.stations[0].mount = mount;
        is_outdoors(&yard, &yard.stations[0])
    };
    assert!(!stands([0.0, 1.5, -2.0], Mount::Stand), "in the house");
    assert!(!stands([0.0, 4.0, -2.0], Mount::Shelf), "under its roof");
    assert!(stands([0.0, 1.5, 3.0], Mount::Shelf), "on the lawn, at the front of the film");
    assert!(stands([0.0, 1.5, -9.0], Mount::Shelf), "behind the house");
    // A wall that stands for a house: its room may be deeper than is drawn.
    let text = r#"(name: "y", walls: [(name: "front", at: (0, 0, 0), width: 6, height: 3, turn_deg: 90, openings: [
        Window(name: "window", left: 2.4, sill: 1, width: 1.2, height: 1, room: (depth: 2)),
    ])], films: [(name: "film", fabric: "rear film, grey", window: "window")],
    stations: [(name: "one", projector: "mini LED", at: (-4, 1.5, 0), aim: "film", content: (picture: "gourds", mirrored: true))])"#;
    let mut wall =
        Yard::parse(text, "yard", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    assert!(!is_outdoors(&wall, &wall.stations[0]));
    wall.stations[0].at = Point::metres(4.0, 1.5, 0.0);
    assert!(is_outdoors(&wall, &wall.stations[0]));
}

#[test]
fn every_text_is_plain_and_short_and_has_its_part() {
    for caution in Caution::ALL {
        let text = caution.text();
        assert!((60..420).contains(&text.len()) && text.ends_with('.') && !text.contains("  "), "{caution:?}: {text}");
        assert!(!caution.parts().is_empty() && !caution.name().is_empty() && !caution.short().ends_with('.'));
    }
    let page = page(Caution::ALL);
    for part in Part::ALL {
        assert!(page.contains(&format!("{}\n", part.name())), "{page}");
    }
    let words = ["licensed", "local"];
    assert!(words.iter().all(|word| page.contains(word)));
}

#[test]
fn a_caution_says_first_what_it_is_about_and_says_it_once() {
    for caution in Caution::ALL {
        let (name, titled) = (caution.name(), caution.titled().to_lowercase());
        assert!(titled.starts_with(name) && titled.ends_with(&caution.text().to_lowercase()), "{titled}");
        let rest = titled[name.len()..].trim_start_matches([':', ' ']);
        assert!(!rest.starts_with(name), "{titled}");
    }
}
