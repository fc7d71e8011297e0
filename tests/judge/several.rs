//! A station that lights several things: fabrics are compared and priced on each.

use crate::Lit;
use gauzelight::{
    craft::{money::Running, shopping::cuts},
    edit::Edit,
    judge::compare::{Of, Question, compare},
};

/// Two windows with films that lit by one station.
const WINDOWS: &str = r#"(
    name: "windows",
    walls: [(name: "front", at: (0, 0, 0), width: 6, height: 3, openings: [
        Window(name: "plain", left: 1.9, sill: 1, width: 1, height: 1, room: (depth: 3)),
        Window(name: "barred", left: 3.1, sill: 1, width: 1, height: 1, bars: (3, 3), bar: 0.06, screen: "insect screen, charcoal", room: (depth: 3)),
    ])],
    spots: [(name: "path", at: (0, 0, 7), look: (0, 1.5, 0))],
    films: [
        (name: "first", fabric: "rear film, grey", window: "plain"),
        (name: "second", fabric: "rear film, grey", window: "barred"),
    ],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.5, -2.6), mount: Shelf, aim: (0, 1.5, 0), target: ["first", "second"], content: (picture: "owl_wall", mirrored: true))],
)"#;

#[test]
fn fabrics_are_compared_on_each_of_two_films() {
    let lit = Lit::parse(WINDOWS);
    let Lit { yard, catalogue, night, shelf, .. } = &lit;
    let running = Running::of(yard, 5);
    let question = Question { yard, catalogue, night, shelf, station: 0, of: Of::Fabrics, running };
    let rows = compare(question).unwrap().rows;
    let on = |name: &str| rows.iter().filter(|row| row.on.as_deref() == Some(name)).count();
    assert!(on("first") > 1 && on("first") == on("second") && 2 * on("first") == rows.len(), "{rows:?}");
    let now: Vec<String> = rows.iter().filter(|row| row.now).map(gauzelight::judge::compare::Row::name).collect();
    assert_eq!(now, ["rear film, grey on “first”", "rear film, grey on “second”"]);
    // What they cost is what the shopping list has off the roll.
    for row in rows.iter().filter(|row| !row.now && row.cost.is_some()) {
        let after = Edit::Change(row.item.clone()).apply(yard, catalogue, None).unwrap();
        let cut = cuts(&after, catalogue).into_iter().find(|cut| Some(&cut.of) == row.on.as_ref()).unwrap();
        let price = after.fabric(catalogue, &cut.fabric).unwrap().price.unwrap();
        assert!((row.cost.unwrap().typical - price.typical * cut.area_m2).abs() < 1e-9, "{}", row.name());
    }
}
