//! What keeps a station running: lists made from its class, mount, box and what it lights.

use gauzelight::{
    craft::running::{FAULT_LOG, Moment, page, tasks},
    scene::{Catalogue, Wakes, Yard},
};

fn lists(class: &str, more: &str) -> String {
    let text = format!(
        r#"(name: "y", cloths: [(name: "net", fabric: "white tulle", at: (0, 2, -3), width: 2, height: 2)],
        stations: [(name: "one", projector: "{class}", at: (0, 2.6, 0), aim: "net", content: (picture: "gourds"), {more})])"#
    );
    let read = Yard::parse(&text, "yard", &Catalogue::builtin());
    of(&read.unwrap_or_else(|faults| panic!("{}", faults.plain())).yard)
}

fn of(yard: &Yard) -> String {
    let tasks = tasks(yard, &Catalogue::builtin(), &yard.stations[0]);
    for moment in Moment::ALL {
        assert!(tasks.iter().any(|task| task.when == moment), "nothing for {moment:?}");
    }
    assert!(tasks.windows(2).all(|pair| pair[0].when <= pair[1].when));
    page("one", &tasks)
}

#[test]
fn what_is_not_known_is_tried_and_what_is_known_is_not() {
    let unknown = lists("mini LED", "");
    assert!(unknown.contains("does it start by itself?") && unknown.contains("does it begin anew by itself"));
    assert!(!unknown.contains("only 120 s later"));
    let lamp = lists("used lamp projector", "");
    assert!(!lamp.contains("does it start by itself?") && lamp.contains("waits for a button"));
    assert!(lamp.contains("blue rectangle") && lamp.contains("only 120 s later") && lamp.contains("hot lamp"));
}

#[test]
fn nobody_pulls_the_plug_of_a_hot_lamp() {
    assert!(lists("mini LED", "").contains("Pull the plug while it plays"));
    let catalogue = Catalogue::builtin();
    let mut old = catalogue.projector("used lamp projector").unwrap().clone();
    old.wakes = Wakes::Unknown;
    let mut yard = Yard::parse(
        r#"(name: "y", stations: [(name: "one", projector: "used lamp projector", at: (0, 0.5, 0), aim: (0, 1, -3), content: (picture: "gourds"))])"#,
        "yard",
        &catalogue,
    )
    .unwrap()
    .yard;
    yard.projectors.push(old);
    let lamp = of(&yard);
    assert!(lamp.contains("let it cool until its fan stops") && lamp.contains("does it start by itself?"), "{lamp}");
    assert!(!lamp.contains("while it plays"), "{lamp}");
}

#[test]
fn up_a_ladder_nothing_is_done_in_the_dark() {
    let high = lists("mini LED", "mount: Wall, shelter: ()");
    for words in ["At dusk", "By day: mark", "By day: wipe", "in wind or in the dark", "overhead lines"] {
        assert!(high.contains(words), "{words} is not in {high}");
    }
    let on_a_shelf = r#"mount: Shelf, note: "a shelf keeps nothing off""#;
    let bare = lists("mini LED", on_a_shelf);
    assert!(
        bare.contains("Carry it in by day") && bare.contains("From below") && !bare.contains("Look for dew"),
        "{bare}"
    );
}

#[test]
fn a_box_a_tree_a_ladder_and_a_cloth_have_their_own() {
    let bare = lists("mini LED", "mount: Tree");
    assert!(bare.contains("Carry it in") && bare.contains("branch") && bare.contains("never alone"), "{bare}");
    assert!(bare.contains("Look over net") && bare.contains("Dry net all through"));
    let boxed = lists("mini LED", "mount: Wall, shelter: (fan: (flow_m3_h: 40), filter: true)");
    assert!(
        !boxed.contains("Carry it in") && boxed.contains("Listen to the fan") && boxed.contains("filter of its box")
    );
    assert!(boxed.contains("off the window of its box"));
    assert!(boxed.contains(&FAULT_LOG.join(" | ")));
}
