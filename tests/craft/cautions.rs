//! Cautions: when they apply, and that each can be met.

use gauzelight::{
    craft::cautions::{Caution, Part, of_station, of_yard, page},
    scene::{Catalogue, Yard},
};

const YARD: &str = r#"(
    name: "careful",
    areas: [(name: "street", surface: "asphalt", x: (-20, 20), z: (12, 18))],
    houses: [(name: "house", at: (0, 0, 0), width: 8, depth: 6, height: 3, openings: [
        Window(name: "window", left: 3, sill: 1, width: 1.2, height: 1),
    ])],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.4, 5), width: 2, height: 2)],
    films: [(name: "film", fabric: "rear film, grey", window: "window")],
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
    assert_eq!(of(0), [Caution::Unattended, Caution::EscapeWays]);
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
    let mut away = yard();
    away.hidden = away.stations.iter().map(|station| gauzelight::scene::Ref::to(&station.name.0)).collect();
    assert!(!of_yard(&away, &catalogue).contains(&Caution::Ladder));
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
