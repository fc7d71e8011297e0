//! Compare before buying.

use crate::Lit;
use gauzelight::{
    craft::money::Running,
    edit::Edit,
    judge::{
        Word,
        compare::{Comparison, Key, NoComparison, Of, Question, compare},
        findings::{Case, Matter, judge},
        read_station,
    },
    light::Night,
    scene::{Catalogue, Item, Ref},
};

/// A cloth before a pale wall, lit from the street side, and a film in a window lit from inside.
const YARD: &str = r#"(
    name: "yard",
    evening: (sky_lx: 0.2),
    walls: [(name: "wall", at: (0, 0, 0), width: 12, height: 3, surface: "plaster, white", openings: [
        Window(name: "window", left: 9, sill: 1, width: 1.2, height: 1, room: (depth: 3)),
    ])],
    cloths: [(name: "net", fabric: "white tulle", at: (-2, 2.4, 1), width: 2, height: 2)],
    films: [(name: "film", fabric: "rear film, grey", window: "window")],
    spots: [
        (name: "path", at: (-2, 0, 7), look: "net"),
        (name: "behind the wall", at: (-2, 0, -6), look: "net"),
    ],
    fabrics: [(name: "mine", kind: Cloth(through: 0.3, diffuse: 0.3, reflect: 0.3), price: 10)],
    locked: ["net"],
    stations: [
        (name: "Net", projector: "mini LED", at: (-2, 0.6, 3.8), mount: Ground, aim: (-2, 1.4, 1), target: "net", hours: 100, content: (picture: "owl_face")),
        (name: "Film", projector: "mini LED", at: (3.6, 1.5, -2.2), mount: Shelf, aim: "film", content: (picture: "owl_face", mirrored: true)),
        (name: "Wall", projector: "mini LED", at: (0, 0.6, 3), mount: Ground, aim: (1, 1.4, 0), target: "wall", content: (picture: "owl_face")),
        (name: "Off", projector: "mini LED", on: false, at: (0, 0.6, 3), mount: Ground, aim: "wall", content: (picture: "owl_face")),
    ],
)"#;

fn asked(lit: &Lit, station: usize, of: Of) -> Result<Comparison, NoComparison> {
    compare(Question {
        yard: &lit.yard,
        catalogue: &lit.catalogue,
        night: &lit.night,
        shelf: &lit.shelf,
        station,
        of,
        running: Running::of(&lit.yard, 5),
    })
}

#[test]
fn a_row_is_what_the_yard_would_be() {
    let lit = Lit::parse(YARD);
    let before = lit.yard.clone();
    let fabrics = asked(&lit, 0, Of::Fabrics).unwrap();
    let pairs = asked(&lit, 0, Of::Pairs).unwrap();
    assert_eq!(lit.yard, before);
    assert!(fabrics.left_out.is_empty() && pairs.left_out.is_empty(), "{:?}", fabrics.left_out);
    // Own and built in, no film; the pairs in either order and of one kind twice.
    assert_eq!(fabrics.rows.len(), 13);
    assert_eq!(pairs.rows.len(), 13 * 13);
    assert_eq!(fabrics.rows.iter().filter(|row| row.now).map(|row| row.name()).collect::<Vec<_>>(), ["white tulle"]);
    let mut told = 0;
    for names in [
        vec!["mine"],
        vec!["cotton sheet, white"],
        vec!["black tulle", "white sheer"],
        vec!["white sheer", "black tulle"],
    ] {
        let rows = fabrics.rows.iter().chain(&pairs.rows);
        let row = rows.into_iter().find(|row| row.names == names).unwrap();
        let mut yard = lit.yard.clone();
        yard.cloths[0].fabric = Ref::to(names[0]);
        yard.cloths[0].behind = names[1..].iter().map(|name| Ref::to(name)).collect();
        let night = Night::build(&yard, &lit.catalogue, &lit.shelf).unwrap();
        let read = read_station(&night, &yard, &lit.catalogue, 0).unwrap();
        // What the cloth shades from the sky stays as it was in a row; built anew it does not.
        let same = |a: f64, b: f64| assert!((a - b).abs() <= 5e-3 * b.abs() + 1e-9, "{names:?}: {a} is not {b}");
        assert_eq!(row.spots[0].word, read.spots[0].sight.as_ref().map(|sight| sight.word));
        same(row.spots[0].mean.typical, read.spots[0].mean.typical);
        same(row.spots[0].mean.high, read.spots[0].mean.high);
        same(row.fate.as_ref().unwrap().through, read.fate.as_ref().unwrap().through);
        let case = Case::of(&yard, &lit.catalogue, &night);
        if let Some(found) = judge(&case).iter().find(|one| one.matter == Matter::Ghost) {
            let ghost = row.spots[0].ghost.as_ref().unwrap();
            assert_eq!(ghost.thing, "wall");
            same(ghost.times, found.number);
            told += 1;
        }
        assert!(row.spots[1].word.is_none() && row.spots[1].by_day.is_none());
        assert_eq!(row.spots[1].second_picture(), None);
    }
    assert!(told > 0, "no second picture was a finding");
    let passes = |name: &str| fabrics.rows.iter().find(|row| row.name() == name).unwrap().straight.unwrap();
    assert!((passes("mine").typical - 0.3).abs() < 1e-6 && passes("white sheer").low < passes("white sheer").high);
}

/// Near square on, what passes a cloth straight (s) is reflected by a wall behind it (ρ) and passes once more: with the illuminance E of the
/// figure, the throw t and the gap g its luminance is s² ρ E (t / (t + g))² / π by the inverse-square law. The figure's own is read without
/// the wall. On leaves there is a second picture as well.
#[test]
fn a_second_picture_is_seen_through_its_cloth() {
    let (throw, gap, straight) = (8.0_f64, 2.0, 0.3_f64);
    let yard = |behind: &str| {
        Lit::parse(&format!(
            r#"(
    name: "yard", evening: (sky_lx: 0.0001), {behind}
    cloths: [(name: "net", fabric: "mine", at: (0, 2.5, 0), width: 3, height: 2)],
    spots: [(name: "path", at: (0.5, 0, 16), look: "net")],
    fabrics: [(name: "mine", kind: Cloth(through: {straight}, diffuse: 0.3, reflect: 0.3))],
    stations: [(name: "one", projector: "mini LED", at: (0, 1.5, {throw}), throw_ratio: 8, mount: Ground, aim: (0, 1.5, 0), target: "net", content: (picture: "owl_face"))],
)"#
        ))
    };
    let ghost = |behind: &str| {
        let fabrics = asked(&yard(behind), 0, Of::Fabrics).unwrap();
        fabrics.rows.iter().find(|row| row.name() == "mine").unwrap().spots[0].ghost.clone()
    };
    assert_eq!(ghost(""), None);
    let alone = yard("");
    let alone = read_station(&alone.night, &alone.yard, &alone.catalogue, 0).unwrap();
    let wall =
        ghost(r#"walls: [(name: "behind", at: (0, 0, -2), width: 4, height: 4, surface: "plaster, white")],"#).unwrap();
    let reflectance = 0.2126 * 0.72 + 0.7152 * 0.70 + 0.0722 * 0.66;
    let fade = (throw / (throw + gap)).powi(2);
    let second = straight.powi(2) * reflectance * alone.figure_lx.typical * fade / std::f64::consts::PI;
    let expected = second / alone.spots[0].mean.typical;
    assert_eq!(wall.thing, "behind");
    assert!((wall.times / expected - 1.0).abs() < 0.02, "{} is not {expected}", wall.times);
    let hedge = r#"plants: [Hedge(name: "behind", from: (-2, 0, -2.4), to: (2, 0, -2.4), height: 4, depth: 0.8)],"#;
    let leaves = ghost(hedge).unwrap();
    assert!(leaves.thing == "behind" && leaves.times > 0.0 && leaves.times < wall.times, "{leaves:?}");
}

/// Common practice, no source: tulle nearly vanishes by day and a sheer is seen; a denser cloth has less of a ghost.
#[test]
fn by_day_and_behind() {
    let lit = Lit::parse(YARD);
    let fabrics = asked(&lit, 0, Of::Fabrics).unwrap();
    let of = |name: &str| &fabrics.rows.iter().find(|row| row.name() == name).unwrap().spots[0];
    let day = |name: &str| of(name).by_day.unwrap();
    assert!(fabrics.rows.iter().all(|row| row.spots[0].by_day.unwrap() >= 1.0));
    assert!(day("white tulle") < 1.25 && day("black cloth") > 5.0, "{} {}", day("white tulle"), day("black cloth"));
    assert!(day("black tulle") < day("black cloth"));
    let ghost = |name: &str| of(name).second_picture().unwrap();
    assert!(
        ghost("white tulle") > 3.0 * ghost("white sheer") && ghost("white sheer") > 3.0 * ghost("cotton sheet, white")
    );
}

#[test]
fn sorted_by_any_key_what_is_better_comes_first() {
    let lit = Lit::parse(YARD);
    let mut fabrics = asked(&lit, 0, Of::Fabrics).unwrap();
    assert_eq!(fabrics.usual_spot(), 0);
    for key in Key::ALL {
        fabrics.sort(key, 0);
        assert!(fabrics.rows.windows(2).all(|pair| key.order(&pair[0], &pair[1], 0).is_le()), "{}", key.name());
    }
    fabrics.sort(Key::Luminance, 0);
    assert!(fabrics.rows[0].spots[0].mean.typical > fabrics.rows[12].spots[0].mean.typical);
    fabrics.sort(Key::Cost, 0);
    // What hangs there costs nothing more; then 2 m × 2 m with hems, off a roll of 2 m: 4.2 m at 0.6; and of the
    // yard's own, of unknown roll, 2.08 m × 2.2 m × 1.1 at 10.
    assert_eq!(fabrics.rows[0].name(), "white tulle");
    assert_eq!(fabrics.rows[0].cost.unwrap().typical, 0.0);
    assert_eq!(fabrics.rows[1].name(), "garden row cover");
    assert!((fabrics.rows[1].cost.unwrap().typical - 5.04).abs() < 1e-5);
    assert!(fabrics.rows.iter().any(|row| row.name() == "mine" && (row.cost.unwrap().high - 50.336).abs() < 1e-4));
}

#[test]
fn projectors_with_the_lamps_they_take() {
    let mut lit = Lit::parse(YARD);
    lit.yard.stations[0].hours = 2900.0;
    let projectors = asked(&lit, 0, Of::Projectors).unwrap();
    assert_eq!(projectors.rows.len(), lit.catalogue.projectors.len());
    let of = |name: &str| projectors.rows.iter().find(|row| row.name() == name).unwrap();
    let (mini, lamp) = (of("mini LED"), of("used lamp projector"));
    assert!(mini.now && !lamp.now && lamp.spots[0].mean.typical > 5.0 * mini.spots[0].mean.typical);
    // 5 seasons of 30 nights from 17 to 21 o'clock; another projector comes with no hours on it.
    assert_eq!((lamp.upkeep.unwrap().hours, lamp.upkeep.unwrap().lamps), (600.0, 0));
    assert!((lamp.upkeep.unwrap().kwh - 168.0).abs() < 1e-9 && (mini.cost.unwrap().typical - 60.0).abs() < 1e-9);
    // One that has 2900 hours behind it asks for a lamp soon.
    lit.yard.stations[0].projector = Ref::to("used lamp projector");
    let again = Lit::of(lit.yard);
    let projectors = asked(&again, 0, Of::Projectors).unwrap();
    let lamp = projectors.rows.iter().find(|row| row.now).unwrap();
    assert_eq!(lamp.upkeep.unwrap().lamps, 1);
    assert!((lamp.cost.unwrap().typical - (90.0 + 70.0)).abs() < 1e-9);
}

#[test]
fn films_are_for_films_and_walls_are_of_no_fabric() {
    let lit = Lit::parse(YARD);
    let films = asked(&lit, 1, Of::Fabrics).unwrap();
    assert_eq!(films.rows.len(), 4);
    assert!(films.rows.iter().all(|row| row.spots[0].word >= Some(Word::Lost) && row.cost.is_some()));
    for (station, of, says) in [
        (1, Of::Pairs, "“Film” lights “film”, which is no hanging cloth"),
        (2, Of::Fabrics, "“Wall” lights “wall”, which is neither a hanging cloth nor a film"),
        (3, Of::Projectors, "“Off” gives no light"),
        (9, Of::Projectors, "“” gives no light"),
    ] {
        let said = asked(&lit, station, of).unwrap_err().to_string();
        assert!(said.starts_with(says), "{said}");
    }
    // A row is an edit away.
    let free = Edit::Lock("net".to_owned(), false).apply(&lit.yard, &lit.catalogue, None).unwrap();
    let Some(Item::Cloth(net)) = free.item("net") else { panic!("it hangs") };
    assert_eq!(net.fabric.0, "white tulle");
}

#[test]
fn another_projector_is_a_new_one() {
    let text = r#"(
    name: "old",
    evening: (sky_lx: 0.05),
    walls: [(name: "wall", at: (0, 0, 0), width: "5 m", height: "4 m", surface: "plaster, white")],
    spots: [(name: "path", at: (0.5, 0, 6), look: (0, 1.2, 0))],
    stations: [(name: "one", projector: "mini LED", at: (0, 0.5, 3), mount: Ground, aim: (0, 1.4, 0), target: "wall", content: (picture: "owl_face"), lumens: 50, throw_ratio: 1.2, shift: (0.1, 0.2), gamma: 2, keystone: (vertical_deg: 7), focus: "2 m", hours: 900)],
)"#;
    let plain = text.replace(r#", lumens: 50, throw_ratio: 1.2, shift: (0.1, 0.2), gamma: 2, keystone: (vertical_deg: 7), focus: "2 m", hours: 900"#, "");
    let [old, new] =
        [text, &plain.replace("mini LED", "big LED")].map(|text| Lit::parse(text).yard.stations[0].clone());
    assert_eq!(old.with_projector(Catalogue::builtin().projector("big LED").unwrap()), new);
}
