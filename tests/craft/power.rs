//! Power plans: what each part carries, what is found wrong, what is said of it.

use gauzelight::{
    craft::{
        cautions::Caution,
        money::Running,
        power::{PowerReport, Trouble, is_indoors},
    },
    scene::{Catalogue, Yard},
    units::Style,
};
use glam::DVec3;

/// Two stations in a chain from an outlet in a turned house, a third on a battery; each draws what its own class says.
const PLAN: &str = r#"(
    name: "plan",
    visitors: ("17:00", "21:00"),
    season: ("2026-12-01", "2026-12-10"),
    tariff: 0.5,
    houses: [(name: "house", at: (10, 0, 0), width: 6, depth: 4, height: 3, turn_deg: 90)],
    walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)],
    stations: [
        (name: "one", projector: "hundred", at: (0, 0, 10), aim: "wall", content: (picture: "owl_face"), loads: [(kind: Player, watts: 2, volts: Usb, from: ProjectorUsb)]),
        (name: "two", projector: "hundred", at: (0, 0, 20), aim: "wall", content: (picture: "owl_face"), loads: [(kind: Fan, watts: 8.5, volts: TwelveVolt)]),
        (name: "three", projector: "low", at: (5, 0, 30), aim: "wall", content: (picture: "owl_face")),
    ],
    supplies: [
        (name: "outlet", at: (8, 0.5, 0), kind: Mains(volts: 230, breaker_a: 16, gfci: true)),
        (name: "battery", at: (5, 0, 32), kind: Battery(volts: 12, amp_hours: 40, usable: 0.5, fuse_a: 4), ip: "IP65"),
    ],
    cables: [
        (name: "cord", from: "outlet", to: "one", via: [(8, 0.5, 10), (0, 0.5, 10)], gauge: "1.5 mm²", slack: 0, joints: 2),
        (name: "on", from: "one", to: "two", gauge: "1.5 mm²", slack: 0.5),
        (name: "lead", from: "battery", to: "three", gauge: "2.5 mm²"),
    ],
    projectors: [
        (name: "hundred", claimed: 100, lumens: 50, pixels: (100, 100), throw_ratio: 1, watts: 100, inrush: 2),
        (name: "low", claimed: 100, lumens: 50, pixels: (100, 100), throw_ratio: 1, watts: 24, volts: TwelveVolt, inrush: 1),
    ],
)"#;

fn read(text: &str) -> Yard {
    Yard::parse(text, "plan", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

fn report(text: &str) -> PowerReport {
    let yard = read(text);
    PowerReport::of(&yard, &Catalogue::builtin(), Running::of(&yard, 1))
}

fn with(what: &str, instead: &str) -> PowerReport {
    assert!(PLAN.contains(what), "{what}");
    report(&PLAN.replacen(what, instead, 1))
}

fn troubles(report: &PowerReport) -> Vec<(Trouble, &str)> {
    report.problems.iter().map(|problem| (problem.trouble, problem.of.as_str())).collect()
}

fn near(value: f64, wanted: f64, share: f64) {
    assert!((value - wanted).abs() <= share * wanted.abs(), "{value} where {wanted} is wanted");
}

#[test]
fn a_sound_plan_adds_up() {
    let report = report(PLAN);
    assert_eq!(troubles(&report), []);
    let [cord, on, lead] = report.cables.as_slice() else { panic!("{:#?}", report.cables) };
    let (cord, on, lead) = if cord.cable == "lead" { (on, lead, cord) } else { (cord, on, lead) };
    // Along the corners, then as the crow flies with half as much again.
    near(cord.length_m, 10.0 + 8.0 + 0.5, 1e-9);
    near(on.length_m, 15.0, 1e-9);
    near(lead.length_m, 2.2, 1e-9);
    // The projector gives its player's 2 W; the fan of 12 V has an adapter, which hands on 85 %.
    let drawn = |name: &str| report.stations.iter().find(|one| one.station == name).unwrap();
    near(drawn("one").watts, 102.0, 1e-9);
    near(drawn("two").watts, 110.0, 1e-9);
    near(drawn("two").starting_w, 210.0, 1e-9);
    near(cord.amps, 212.0 / 230.0, 0.01);
    near(on.amps, 110.0 / 230.0, 0.01);
    assert!(on.drop_v > cord.drop_v && on.drop_share.unwrap() < 0.03);
    let outlet = report.supplies.iter().find(|supply| supply.supply == "outlet").unwrap();
    near(outlet.running_w, 212.0, 0.01);
    near(outlet.starting_w, 202.0 + 210.0, 1e-9);
    near(outlet.headroom_w.unwrap(), 0.8 * 230.0 * 16.0 - outlet.running_w, 1e-9);
    assert!(!outlet.outdoors && cord.outdoors);
    // 40 Ah, half of it, at 12 V, over 24 W and a little loss; frost leaves it 70 %, but for one indoors or where it never freezes.
    let battery = report.supplies.iter().find(|supply| supply.supply == "battery").unwrap();
    near(battery.lasts_h.unwrap(), 7.0, 0.02);
    let lasts = |report: PowerReport| report.supplies.iter().find_map(|supply| supply.lasts_h).unwrap();
    near(lasts(with("tariff: 0.5", "climate: (coldest_c: 1)")), 10.0, 0.02);
    let indoors = with("at: (5, 0, 32)", "at: (8, 0.5, 1)");
    assert!(indoors.supplies.iter().all(|supply| supply.frost_leaves.is_none()));
    assert_eq!(battery.fuse_to_buy_a, Some(3.0));
    // Ten nights of four hours; the battery is charged with a loss.
    near(report.energy.watts, 212.0 + 24.0 / 0.85, 0.01);
    near(report.energy.kwh_season, report.energy.watts * 40.0 / 1000.0, 1e-9);
    near(report.energy.cost_night.unwrap(), 0.5 * report.energy.kwh_night, 1e-9);
    // Cautions stand where they belong: outdoor mains, its joints, the battery.
    assert_eq!(report.cautions, [Caution::MainsOutdoors, Caution::Joints, Caution::Batteries]);
    let page = report.page(Style::Metres);
    for word in [
        "cord to one: 18.5 m (61 ft) of 1.5 mm²",
        "; 2 joints, off the ground",
        "costs",
        "GFCI or RCD",
        "caution: Batteries",
        "lasts 7.0 h in frost, which leaves it 70 %",
    ] {
        assert!(page.contains(word), "{word}: {page}");
    }
    assert!(!page.contains("NaN") && !page.contains("unknown"), "{page}");
    let json = serde_json::to_string(&report).unwrap();
    assert!(json.contains("\"length_m\":18.5"), "{json}");
}

#[test]
fn each_trouble_is_told() {
    for (what, instead, trouble, of) in [
        ("gfci: true", "gfci: false", Trouble::NoGuard, "outlet"),
        ("ip: \"IP65\"", "ip: \"IP20\"", Trouble::Rain, "battery"),
        (", fuse_a: 4", "", Trouble::Fuse, "battery"),
        ("fuse_a: 4", "fuse_a: 2", Trouble::Fuse, "battery"),
        ("fuse_a: 4", "fuse_a: 30", Trouble::Fuse, "battery"),
        ("amp_hours: 40", "amp_hours: 12", Trouble::Supply, "battery"),
        ("breaker_a: 16", "breaker_a: 1", Trouble::Supply, "outlet"),
        ("gauge: \"1.5 mm²\", slack: 0.5", "gauge: \"0.5 mm²\"", Trouble::Cable, "on"),
        ("gauge: \"2.5 mm²\"", "gauge: \"2.5 mm²\", via: [(60, 0, 31)]", Trouble::Drop, "three"),
        ("watts: 2,", "watts: 6,", Trouble::Usb, "one"),
        ("projector: \"low\"", "projector: \"hundred\"", Trouble::Volts, "three"),
        ("volts: 12,", "volts: 24,", Trouble::Volts, "three"),
        ("volts: 12,", "volts: 48,", Trouble::Volts, "three"),
    ] {
        let report = with(what, instead);
        let found = troubles(&report);
        assert!(found.contains(&(trouble, of)), "{instead}: {found:?}");
        for problem in &report.problems {
            assert!(problem.says.len() > 30 && problem.helps.len() > 10, "{problem:?}");
            assert!(!problem.says.contains("NaN") && problem.limit.is_finite(), "{problem:?}");
        }
    }
}

/// Of the cord all is outdoors but what lies in the house.
#[test]
fn what_is_wrong_is_told_in_plain_words_and_the_yard_s_units() {
    let says = |report: &PowerReport, trouble| {
        report.problems.iter().find(|one| one.trouble == trouble).map(|one| one.says.clone()).unwrap()
    };
    let indoors = PLAN.replacen("slack: 0, joints: 2", "slack: 0, joints: 2, made_for: Indoors", 1);
    let told = says(&report(&indoors), Trouble::IndoorLead);
    assert!(
        told.starts_with("“cord” is a lead for indoors, and ") && told.contains(" m of it lies outdoors"),
        "{told}"
    );
    let feet =
        says(&report(&indoors.replacen("name: \"plan\",", "name: \"plan\", units: Feet,", 1)), Trouble::IndoorLead);
    assert!(feet.contains(" of it lies outdoors") && !feet.contains(" m of it"), "{feet}");
    let full = says(&with("breaker_a: 16", "breaker_a: 1"), Trouble::Supply);
    assert!(full.ends_with(" W of its 230 W; 184 W is its limit for hours on end"), "{full}");
}

#[test]
fn a_class_s_own_usb_outlet_comes_before_a_plain_one() {
    let own = |watts: &str| {
        let class = format!("usb_w: {watts}, watts: 100, inrush: 2");
        let text = PLAN.replace("watts: 100, inrush: 2", &class).replace("watts: 2,", "watts: 4,");
        troubles(&report(&text)).contains(&(Trouble::Usb, "one"))
    };
    assert!(!own("5") && own("3"));
    // A full 12 V battery is nothing to be told of.
    assert_eq!(troubles(&with("volts: 12,", "volts: 13.6,")), []);
}

#[test]
fn a_cable_that_hands_over_too_little_is_nothing_to_the_next_on_the_same_supply() {
    let far =
        r#"stations: [(name: "four", projector: "low", at: (5, 0, 90), aim: "wall", content: (picture: "owl_face")),"#;
    let lead = r#"cables: [(name: "long", from: "battery", to: "four", gauge: "0.75 mm²"),"#;
    let report = report(&PLAN.replace("stations: [", far).replace("cables: [", lead));
    let of = |name: &str| report.cables.iter().find(|cable| cable.cable == name).unwrap();
    assert!(of("long").drop_v.is_none(), "{:?}", of("long"));
    near(of("lead").drop_share.unwrap(), of("lead").simple_drop_v / 12.0, 0.02);
    assert_eq!(of("lead").gauge_to_buy, None);
    assert!(!troubles(&report).contains(&(Trouble::Drop, "three")), "{:?}", troubles(&report));
}

#[test]
fn what_is_not_known_is_said_and_not_guessed() {
    let notes = |report: PowerReport| report.notes.join("\n");
    let bare = format!(
        "{}supplies: [], cables: [], projectors:{}",
        &PLAN[..PLAN.find("supplies:").unwrap()],
        &PLAN[PLAN.find("projectors:").unwrap() + 11..]
    );
    let bare = report(&bare);
    assert!(bare.notes[0].contains("has no supply") && bare.problems.is_empty(), "{:?}", bare.notes);
    near(bare.energy.watts, 102.0 + 108.5 + 24.0, 1e-9);
    assert!(
        notes(with("(name: \"on\", from: \"one\", to: \"two\", gauge: \"1.5 mm²\", slack: 0.5),", ""))
            .contains("nothing in this yard feeds two")
    );
    // A cord that is put away feeds nothing, and so does what hangs on it.
    let away = notes(with("tariff: 0.5", "hidden: [\"cord\"]"));
    assert!(
        away.contains("feeds one") && away.contains("feeds two") && away.contains("on leads to no supply"),
        "{away}"
    );
    // A lamp says what it draws, or nobody knows.
    let lamp = "lamps: [(name: \"lamp\", kind: \"porch lamp\", at: (0, 2, 1))], cables: [(name: \"more\", from: \"cord\", to: \"lamp\", gauge: \"1.5 mm²\"),";
    assert!(notes(with("cables: [", lamp)).contains("nobody says what lamp draws"));
}

#[test]
fn a_supply_of_twelve_volts_draws_from_the_mains_what_it_loses_too() {
    let brick = r#"supplies: [(name: "brick", at: (5, 0, 31), kind: TwelveVolt(watts: 100, fuse_a: 4, from: "outlet"), ip: "IP65"),"#;
    let text = PLAN.replace("supplies: [", brick).replace("from: \"battery\"", "from: \"brick\"");
    let plugged = report(&text);
    let of = |name: &str| plugged.supplies.iter().find(|supply| supply.supply == name).unwrap();
    near(of("outlet").running_w, 212.0 + of("brick").running_w / 0.85, 0.01);
    near(plugged.energy.watts, of("outlet").running_w, 1e-9);
    // By a cable it is the same, but for what that loses.
    let text = text
        .replace(", from: \"outlet\")", ")")
        .replace("cables: [", "cables: [(name: \"feed\", from: \"outlet\", to: \"brick\", gauge: \"1.5 mm²\"),");
    let fed = report(&text);
    near(fed.energy.watts, plugged.energy.watts, 0.005);
    assert!(fed.notes.is_empty(), "{:?}", fed.notes);
}

#[test]
fn owl_night_has_a_sound_plan() {
    let report = report(include_str!("../../scenes/owl_night.ron"));
    let page = report.page(Style::Metres);
    assert!(report.problems.is_empty() && report.notes.is_empty(), "{page}");
    assert!(report.stations.len() == 5 && report.stations.iter().all(|station| station.volts.is_some()), "{page}");
    println!("{page}");
}

#[test]
fn indoors_is_inside_a_house_that_stands() {
    let yard = read(PLAN);
    // Turned a quarter, its front wall faces along x and its depth runs towards −x.
    for (at, inside) in [
        ([8.0, 0.5, 0.0], true),
        ([8.0, 0.5, 2.9], true),
        ([8.0, 0.5, 3.1], false),
        ([10.2, 0.5, 0.0], false),
        ([5.9, 0.5, 0.0], false),
        ([8.0, 3.2, 0.0], false),
    ] {
        assert_eq!(is_indoors(&yard, DVec3::from_array(at)), inside, "{at:?}");
    }
    assert!(!is_indoors(&read(&PLAN.replace("tariff: 0.5", "hidden: [\"house\"]")), DVec3::new(8.0, 0.5, 0.0)));
    // In the room behind a wall's window too.
    let room = "openings: [Window(name: \"window\", left: 1, sill: 1, width: 1, height: 1, room: (depth: 2))])],\n    stations:";
    let yard = read(&PLAN.replacen(")],\n    stations:", &format!(", {room}"), 1));
    assert!(is_indoors(&yard, DVec3::new(0.0, 1.0, -1.0)) && !is_indoors(&yard, DVec3::new(0.0, 1.0, 1.0)));
}
