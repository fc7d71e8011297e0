//! The wind on a yard's cloths, forms, stands and mounts.

use gauzelight::{
    craft::wind::{Beaufort, WindReport},
    scene::{Catalogue, Count, Yard},
    units::Style,
};

const YARD: &str = r#"(
    name: "windy",
    climate: (coldest_c: 15, gust_m_s: 10),
    cloths: [
        (name: "net", fabric: "white tulle", at: (0, 2.4, 0), width: 2, height: 2),
        (name: "sheet", fabric: "cotton sheet, white", at: (4, 2.4, 0), width: 2, height: 2, ties: 8),
    ],
    forms: [
        Figure(name: "figure", at: (0, 0, 3), height: 2),
        Globe(name: "ball", at: (2, 0, 3), diameter: 0.5),
        Globe(name: "moon", at: (2, 3, 3), diameter: 0.5),
        Turned(name: "drum", at: (4, 0, 3), profile: [(0.3, 0), (0.3, 1)]),
    ],
    stations: [
        (name: "stand", projector: "mini LED", at: (0, 1.2, 5), aim: "net", content: (picture: "owl_face")),
        (name: "low", projector: "mini LED", at: (1, 0.3, 5), mount: Ground, aim: "net", content: (picture: "owl_face")),
        (name: "hung", projector: "mini LED", at: (2, 3, 5), mount: Hung, aim: "net", content: (picture: "owl_face")),
    ],
)"#;

fn yard(text: &str) -> Yard {
    Yard::parse(text, "yard", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

fn report(yard: &Yard) -> WindReport {
    WindReport::of(yard, &Catalogue::builtin())
}

#[test]
fn a_net_pulls_less_than_a_sheet() {
    let report = report(&yard(YARD));
    let [net, sheet] = [&report.cloths[0], &report.cloths[1]];
    // Air at 15 °C by the sea: 61.25 Pa on 4 m²; a sheet all but closed takes 1.2 of that.
    assert!((report.pressure_pa - 61.25).abs() < 0.01);
    assert!((sheet.load_n[1] - 1.2 * 61.25 * 4.0).abs() < 0.05, "{sheet:?}");
    // Tulle of 14 % thread over pitch: (1 − 0.14)² open, of which Kp keeps 1 − 0.7396² = 0.453.
    let kept = 1.0 - 0.86_f64.powi(4);
    assert!((net.load_n[1] - 1.2 * kept * 61.25 * 4.0).abs() < 0.05, "{net:?}");
    assert!(net.load_n[0] < net.load_n[1] && net.load_n[1] < net.load_n[2]);
    assert!(net.weight_kg < 0.1 && (0.3..1.0).contains(&sheet.weight_kg));
    // Two times the mean at the worst tie, a few newtons of weight beside it.
    assert!((sheet.tie_n / (2.0 * sheet.load_n[1] / 8.0) - 1.0).abs() < 0.01);
}

#[test]
fn as_many_ties_as_are_needed_bear_the_gust_and_one_less_does_not() {
    let mut yard = yard(YARD);
    let needed = report(&yard).cloths[1].ties_needed.unwrap();
    for (ties, bears) in [(needed, true), (needed - 1, false)] {
        yard.cloths[1].ties = Count(ties);
        let report = report(&yard);
        let cloth = &report.cloths[1];
        assert_eq!(cloth.tie_n <= report.rules.tie_bears_n, bears, "{cloth:?}");
        assert_eq!(cloth.down_m_s >= report.gust_m_s, bears, "{cloth:?}");
    }
    // At the gust at which it comes down, the worst tie holds just what it can.
    let down = report(&yard).cloths[1].down_m_s;
    yard.climate.gust_m_s = down;
    assert!((report(&yard).cloths[1].tie_n - 50.0).abs() < 1e-6);
}

#[test]
fn a_hem_as_heavy_as_is_asked_for_keeps_a_cloth_plumb() {
    let mut yard = yard(YARD);
    for cloth in 0..2 {
        let needed = report(&yard).cloths[cloth].hem_needed_kg_m;
        yard.cloths[cloth].hem_kg_m = needed;
        let swing = report(&yard).cloths[cloth].swing_deg;
        assert!(swing <= 10.001 && (needed == 0.0 || swing > 9.99), "{swing}");
        yard.cloths[cloth].hem_kg_m = 2.0 * needed + 0.1;
        assert!(report(&yard).cloths[cloth].swing_deg < swing);
    }
}

#[test]
fn ballast_as_heavy_as_is_asked_for_holds() {
    let mut yard = yard(YARD);
    let names: Vec<String> = report(&yard).standing.iter().map(|one| one.name.clone()).collect();
    assert_eq!(names, ["figure", "ball", "drum", "stand"], "what hangs and what lies low goes over nothing");
    for form in &mut yard.forms {
        let needed = |name: &str, list: &WindReport| {
            list.standing.iter().find(|one| one.name == name).map(|one| one.ballast_needed_kg)
        };
        let report = WindReport::of(&self::yard(YARD), &Catalogue::builtin());
        if let Some(kg) = needed(&form.name().0, &report) {
            *form = form.clone().with_ballast(kg);
        }
    }
    yard.stations[0].ballast_kg = report(&yard).standing[3].ballast_needed_kg;
    for one in &report(&yard).standing {
        assert!(one.holds >= one.should - 1e-9, "{one:?}");
    }
    // By hand: a drum of 0.6 m² across, drag 1.2, half a metre up, on a foot of 0.3 m.
    let drum = &report(&self::yard(YARD)).standing[2];
    assert!((drum.load_n - 1.2 * 61.25 * 0.6).abs() < 0.02 && (drum.lever_m - 0.5).abs() < 1e-9);
    let needed = 1.2 * drum.load_n * 0.5 / (9.806_65 * 0.3) - drum.own_kg;
    assert!((drum.ballast_needed_kg - needed).abs() < 1e-9);
}

#[test]
fn what_hangs_above_heads_wants_a_second_tie() {
    let mut yard = yard(YARD);
    let hung = &report(&yard).mounted;
    assert_eq!(hung.len(), 1);
    assert!(hung[0].above_heads && !hung[0].second_tie && hung[0].second_tie_n > 9.0 * 30.0);
    let page = report(&yard).page(Style::Metres);
    assert!(
        page.contains("second tie of its own") && page.contains("rules of thumb") && !page.contains("NaN"),
        "{page}"
    );
    yard.stations[2].second_tie = true;
    assert!(!report(&yard).page(Style::Metres).contains("second tie of its own"));
}

#[test]
fn a_gust_is_told_by_the_mean_wind_that_it_comes_in() {
    // 10 m/s over 1.5 are 14.9 miles an hour: a moderate breeze, where 10 m/s themselves would be a fresh one.
    let report = report(&yard(YARD));
    assert_eq!((report.mean.0, Beaufort::of(report.gust_m_s).0), (4, 5));
    let page = report.page(Style::Metres);
    assert!(page.contains("as comes in a mean wind of Beaufort 4, moderate breeze"), "{page}");
    assert!(page.matches("a mean wind of Beaufort").count() > report.cloths.len(), "{page}");
    assert_eq!(report.cloths[1].down_mean, Beaufort::of_gust(report.cloths[1].down_m_s));
}

#[test]
fn the_wind_finds_the_broad_side_of_a_bag() {
    let bag = |width: f64, depth: f64| {
        let text = format!(
            r#"(name: "y", forms: [Bag(name: "bag", at: (0, 0, 0), width: {width}, height: 0.8, depth: {depth})])"#
        );
        report(&yard(&text)).standing.remove(0)
    };
    assert_eq!(bag(0.3, 0.6), bag(0.6, 0.3));
    assert!((bag(0.3, 0.6).tips_m - 0.15).abs() < 1e-12 && bag(0.3, 0.6).load_n > 1.9 * bag(0.3, 0.3).load_n);
}

#[test]
fn a_yard_without_wind_and_one_in_a_storm() {
    for gust in [0.0, 80.0] {
        let mut yard = yard(YARD);
        yard.climate.gust_m_s = gust;
        let report = report(&yard);
        for style in [Style::Metres, Style::FeetInches] {
            let page = report.page(style);
            assert!(!page.contains("NaN") && !page.contains("inf") && !page.contains("unknown"), "{page}");
        }
        let json = serde_json::to_string(&report).unwrap();
        assert!(json.contains("\"cloths\""));
    }
    let feet = report(&yard(YARD)).page(Style::FeetInches);
    assert!(feet.contains("lbf") && feet.contains("mph") && feet.contains("lb)"), "{feet}");
}
