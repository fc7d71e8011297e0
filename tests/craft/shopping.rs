//! Shopping lists: sums, what is owned, cloth off the roll, packing.

use gauzelight::{
    craft::{
        money::Running,
        shelter::fitting,
        shopping::{Asked, Need, Run, ShoppingList, What, csv, cut, labels},
        wind::WindReport,
    },
    scene::{Catalogue, GoodsKind, Units, Yard},
    units::Style,
};

const YARD: &str = r#"(
    name: "shopping",
    budget: 400,
    cloths: [(name: "sheet", fabric: "muslin, unbleached", at: (0, 2.4, 0), width: 3, height: 2, fullness: 1.5, ties: 10, hem_kg_m: 0.5)],
    walls: [(name: "wall", at: (6, 0, 0), width: 4, height: 3)],
    stations: [
        (name: "one", projector: "mini LED", at: (0, 0.4, 5), mount: Ground, aim: "sheet", content: (picture: "owl_face")),
        (name: "two", projector: "mini LED", at: (6, 2.6, 5), mount: Hung, aim: "wall", content: (picture: "owl_face")),
        (name: "three", projector: "used lamp projector", at: (7, 0.4, 5), mount: Stand, aim: "wall", content: (picture: "owl_face"), ballast_kg: 5),
    ],
    owned: [(what: "mini LED"), (what: "memory stick", amount: 9), (what: "muslin, unbleached", amount: 2)],
)"#;

fn yard() -> Yard {
    Yard::parse(YARD, "yard", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

fn list(yard: &Yard) -> ShoppingList {
    ShoppingList::of(Asked { yard, catalogue: &Catalogue::builtin(), runs: &[], more: &[], hours: 500.0 })
}

#[test]
fn what_is_owned_is_taken_off_and_sums_are_those_of_the_lines() {
    let list = list(&yard());
    let line = |what: &str| list.lines.iter().find(|line| line.what == what).unwrap_or_else(|| panic!("{what}"));
    let mini = line("mini LED");
    assert_eq!((mini.amount, mini.owned, mini.to_buy), (2.0, 1.0, 1.0));
    // More sticks are owned than are needed: three and a spare.
    assert_eq!((line("memory stick").owned, line("memory stick").to_buy), (4.0, 0.0));
    assert_eq!(line("safety line").amount, 1.0, "one hangs above heads");
    assert!((line("hem chain").amount - 1.5).abs() < 1e-12 && line("sand bag").amount == 5.0);
    assert_eq!((line("tie").amount, line("hook").amount), (10.0, 10.0));
    let sum = |of: fn(&gauzelight::craft::shopping::Line) -> f64| list.lines.iter().map(of).sum::<f64>();
    assert!((list.to_buy.typical - sum(|l| l.cost.unwrap().typical)).abs() < 1e-9);
    assert!((list.all.high - sum(|l| l.cost_of_all.unwrap().high)).abs() < 1e-9);
    for line in &list.lines {
        let each = line.each.unwrap();
        assert!((line.cost.unwrap().low - each.low * line.to_buy).abs() < 1e-9, "{line:?}");
        assert!(line.to_buy >= 0.0 && line.owned <= line.amount);
    }
    // Stations and what all share make the whole, and what the shop cuts the guys' rope up to.
    let shared = ["gaffer tape", "ladder", "timer"];
    let shared: f64 =
        list.lines.iter().filter(|l| shared.contains(&l.sort)).map(|l| l.cost_of_all.unwrap().typical).sum();
    let rope = line("guy rope");
    let needed = line("stake").amount * (2.4 * 2f64.sqrt() + 1.0);
    let cut_up = (rope.amount - needed) * rope.each.unwrap().typical;
    let stick = list.lines.iter().find(|l| l.what == "memory stick").unwrap().each.unwrap().typical;
    let stations: f64 = list.stations.iter().map(|s| s.all.typical).sum();
    assert!((stations + shared + stick + cut_up - list.all.typical).abs() < 1e-6, "{stations} + {shared} + {stick}");
}

#[test]
fn stakes_fans_and_batteries_are_those_that_the_plans_ask_for() {
    let mut yard = yard();
    let catalogue = Catalogue::builtin();
    let amount = |yard: &Yard, sort: &str| {
        let list = ShoppingList::planned(yard, &catalogue, Running::of(yard, 1));
        list.lines.iter().filter(|line| line.sort == sort).map(|line| line.amount).sum::<f64>()
    };
    let stakes = |yard: &Yard| f64::from(WindReport::of(yard, &catalogue).cloths[0].stakes);
    assert!(stakes(&yard) > 2.0 && amount(&yard, "stake") == stakes(&yard));
    yard.climate.gust_m_s = 3.0;
    assert!(stakes(&yard) == 2.0 && amount(&yard, "stake") == 2.0);
    // As many fans as boxes that fit would want, and none where it is cold.
    let fans = |yard: &Yard| {
        let boxes = yard.stations.iter().filter_map(|station| fitting(yard, &catalogue, station));
        boxes.filter(|one| one.fan.is_some()).count() as f64
    };
    yard.climate.warmest_c = 25.0;
    assert!(fans(&yard) > 0.0 && amount(&yard, "fan") == fans(&yard));
    yard.climate.warmest_c = -15.0;
    assert!(fans(&yard) < 3.0 && amount(&yard, "fan") == fans(&yard), "{}", fans(&yard));
    let battery = r#"supplies: [(name: "battery", at: (0, 0.3, 5), kind: Battery(amp_hours: 20, fuse_a: 5), ip: "IP65")], budget: 400"#;
    let text = YARD.replace("budget: 400", battery);
    let fed = Yard::parse(&text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    assert_eq!((amount(&yard, "battery"), amount(&fed, "battery"), amount(&fed, "fuse holder")), (0.0, 1.0, 1.0));
}

#[test]
fn a_yard_s_own_goods_come_first() {
    let mut yard = yard();
    let mut own = Catalogue::builtin().goods("hook").unwrap().clone();
    (own.name.0, own.price.low, own.price.typical, own.price.high) = ("my hook".to_owned(), 0.0, 0.0, 0.0);
    yard.goods.push(own);
    let list = list(&yard);
    assert!(list.lines.iter().any(|line| line.what == "my hook" && line.cost.unwrap().high == 0.0));
    assert!(!list.lines.iter().any(|line| line.what == "hook"));
}

/// By hand: a hem of 4 cm at each side, 10 cm at top and foot, 1.5 cm on each side of a seam (common practice, no source).
#[test]
fn cloth_off_the_roll() {
    // One length is wide enough, upright.
    assert_eq!(cut(1.4, 2.2, 1.5), (1, false, 2.2));
    // Too wide upright, but its height fits the roll laid across.
    assert_eq!(cut(4.0, 1.4, 1.5), (1, true, 4.0));
    // Neither: the fewest seams, then the least cloth.
    let (lengths, across, taken) = cut(4.58, 2.2, 1.6);
    assert_eq!((lengths, across), (2, true));
    assert!((taken - 2.0 * 4.58).abs() < 1e-12);
    let list = list(&yard());
    let piece = &list.cuts[0];
    assert!((piece.width_m - 4.5).abs() < 1e-12 && (piece.cut_width_m - 4.58).abs() < 1e-12);
    assert!((piece.cut_height_m - 2.2).abs() < 1e-12);
    assert_eq!((piece.lengths, piece.seams(), piece.across), (2, 1, true));
    // Shops cut tenths of a metre, or quarters of a yard.
    assert!((piece.buy_m.unwrap() - 9.2).abs() < 1e-9 && (piece.area_m2 - 9.2 * 1.6).abs() < 1e-9);
    let mut feet = yard();
    feet.units = Units::Feet;
    let piece = &self::list(&feet).cuts[0];
    let yards = piece.buy_m.unwrap() / 0.9144;
    assert!((yards * 4.0 - (yards * 4.0).round()).abs() < 1e-9 && piece.buy_m.unwrap() >= 9.16);
    // As many lengths as it takes, seams and all, for whatever roll.
    for width in [0.3, 1.0, 2.9, 7.7] {
        for roll in [0.4, 1.1, 3.0] {
            let (lengths, across, _) = cut(width, 2.0, roll);
            let wide = if across { 2.0 } else { width };
            let joined = f64::from(lengths) * roll - f64::from(lengths - 1) * 0.03;
            assert!(joined >= wide - 1e-9, "{width} from {roll}");
        }
    }
}

#[test]
fn supplies_of_a_power_plan_take_the_place_of_leads() {
    let yard = yard();
    let catalogue = Catalogue::builtin();
    let wire = Run { cable: "wire".to_owned(), mm2: 1.309, metres: 12.0, of: "one".to_owned(), ..Run::default() };
    let thick = Run { cable: "thick".to_owned(), mm2: 99.0, metres: 3.0, ..Run::default() };
    let more =
        [Need::new(What::Goods(GoodsKind::Supply), 1.0, "two"), Need::new(What::Goods(GoodsKind::FuseHolder), 2.0, "")];
    let runs = [wire, thick];
    let list = ShoppingList::of(Asked { yard: &yard, catalogue: &catalogue, runs: &runs, more: &more, hours: 0.0 });
    let amount = |what: &str| list.lines.iter().find(|line| line.what == what).map(|line| line.amount);
    assert_eq!(amount("mains lead"), Some(1.0), "only the third has none");
    assert_eq!(
        (amount("cable, 1.5 mm²"), amount("12 V supply"), amount("fuse holder")),
        (Some(12.0), Some(1.0), Some(2.0))
    );
    assert_eq!(list.no_price, ["cable, 99 mm²"], "no shop has that");
    assert!(list.page(Style::Metres).contains("not in these sums"));
}

/// A yard of two outlets, three ways of the mains (one of them on from a station), and one of 12 V.
const FED: &str = r#"
    supplies: [
        (name: "outlet", at: (0, 0.4, 0), kind: Mains(gfci: true), ip: "IP44"),
        (name: "twelve", at: (7, 0.4, 0), kind: TwelveVolt(watts: 60, fuse_a: 3, from: "outlet"), ip: "IP44"),
    ],
    cables: [
        (name: "short", from: "outlet", to: "one", gauge: "1.5 mm²", slack: 0),
        (name: "long", from: "one", to: "two", via: [(40, 0, 5)], gauge: "1.5 mm²", slack: 0),
        (name: "low", from: "twelve", to: "three", gauge: "1.5 mm²", slack: 0),
    ],
    budget: 400,
"#;

fn fed(units: &str) -> Yard {
    let text = YARD.replace("budget: 400,", &format!("{FED} units: {units},"));
    // A class that 12 V may feed, in place of the lamp.
    let text = text.replace("used lamp projector", "12 V pocket");
    Yard::parse(&text, "yard", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

#[test]
fn the_mains_goes_by_leads_and_low_voltage_by_wire_and_nothing_drawn_is_lost() {
    let catalogue = Catalogue::builtin();
    for units in ["Metric", "Feet"] {
        let yard = fed(units);
        let list = ShoppingList::planned(&yard, &catalogue, Running::of(&yard, 1));
        let goods = |name: &str| catalogue.goods(name).unwrap_or_else(|| panic!("{name}"));
        let feet = units == "Feet";
        for way in &list.ways {
            let cable = yard.cables.iter().find(|cable| cable.name.0 == way.cable).unwrap();
            let bought: Vec<_> = way.by.iter().map(|name| goods(name)).collect();
            let mains = cable.name.0 != "low";
            let kind = if mains { GoodsKind::MainsLead } else { GoodsKind::Cable };
            assert!(bought.iter().all(|goods| goods.kind == kind), "{way:?}");
            assert!(bought.iter().all(|goods| goods.mm2.unwrap().0 >= 0.98 * 1.5), "{way:?}");
            let is_feet = |goods: &&gauzelight::scene::Goods| goods.shops == Some(Units::Feet);
            assert!(bought.iter().all(|goods| is_feet(goods) == feet), "{way:?}");
            if mains {
                let reach: f64 = bought.iter().map(|lead| lead.length.as_ref().unwrap().0.m).sum();
                assert!(reach + 1e-3 >= way.length_m, "{way:?} reaches {reach} m");
            }
        }
        // By hand: 5 m straight out from the outlet; 40 m along and back to 6 m aside and 2.6 m up; 5 m straight out.
        let drawn = [5.0, (0.4f64 * 0.4 + 1600.0).sqrt() + (34.0f64 * 34.0 + 2.6 * 2.6).sqrt(), 5.0];
        let all: Vec<f64> = list.ways.iter().map(|way| way.length_m).collect();
        assert!(all.len() == 3 && all.iter().zip(drawn).all(|(way, drawn)| (way - drawn).abs() < 1e-6), "{all:?}");
        let wire = list.lines.iter().find(|line| line.sort == "cable").unwrap();
        let [unit, per] = if feet { ["ft", "0.3048"] } else { ["m", "1"] };
        assert_eq!(wire.unit, unit);
        assert!(wire.amount * per.parse::<f64>().unwrap() + 1e-6 >= list.ways[2].length_m, "{wire:?}");
        assert!((wire.amount - wire.amount.round()).abs() < 1e-9, "shops cut whole ones: {wire:?}");
        let amount = |what: &str| list.lines.iter().find(|line| line.what == what).map_or(0.0, |line| line.amount);
        assert_eq!((amount("fuse holder"), amount("fuse, 3 A")), (1.0, 2.0), "{:#?}", list.lines);
        assert_eq!(amount("low-voltage connector"), 2.0);
        // One plug and the lead that goes on: a block at the first station, none at the second.
        assert_eq!(amount("outdoor socket block"), 1.0);
        assert_eq!(amount("outdoor timer"), 1.0, "all hang on one outlet");
        assert!(amount("plug cover") >= 2.0);
        let page = list.page(yard.units.style());
        assert!(page.contains("cables, as the yard has them\n  short, "), "{page}");
        if feet {
            for word in [" m ", " m²", " kg ", "mm²"] {
                assert!(!page.contains(word), "“{word}” in a yard in feet: {page}");
            }
            assert!(page.contains(" ft cable, ") && page.contains("AWG") && page.contains(" lb "), "{page}");
            assert!(!labels(&list.packs).contains(" m "), "{}", labels(&list.packs));
        }
    }
}

#[test]
fn a_timer_switches_no_projector_that_has_to_cool() {
    let catalogue = Catalogue::builtin();
    let timers = |yard: &Yard| {
        let list = ShoppingList::planned(yard, &catalogue, Running::of(yard, 1));
        list.lines.iter().filter(|line| line.sort == "timer").map(|line| line.amount).sum::<f64>()
    };
    let mut yard = fed("Metric");
    assert_eq!(timers(&yard), 1.0);
    yard.stations[1].projector.0 = "used lamp projector".to_owned();
    assert_eq!(timers(&yard), 0.0);
}

#[test]
fn cloths_take_guys_and_films_what_fixes_them_and_high_work_a_ladder() {
    let text = YARD.replace(
        "budget: 400,",
        r#"budget: 400, films: [(name: "free film", fabric: "rear film, grey", at: (3, 2, 0), size: (1.2, 0.8))],"#,
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    let list = list(&yard);
    let amount = |sort: &str| list.lines.iter().find(|line| line.sort == sort).map_or(0.0, |line| line.amount);
    let stakes = amount("stake");
    assert_eq!(amount("tensioner"), stakes);
    // Guys at 45° from a top edge at 2.4 m, and a metre for knots each.
    assert_eq!(amount("rope"), (stakes * (2.4 * 2f64.sqrt() + 1.0)).ceil());
    // 1.2 and 0.8 m twice, whole metres.
    assert_eq!((amount("film tape"), amount("film frame")), (4.0, 4.0));
    assert_eq!(amount("ladder"), 1.0, "the cloth hangs at 2.4 m");
    let mut low = yard.clone();
    (low.cloths[0].at.0[1].m, low.cloths[0].height.0.m, low.stations[1].at.0[1].m) = (1.6, 1.5, 1.5);
    assert!(!self::list(&low).lines.iter().any(|line| line.sort == "ladder"));
}

#[test]
fn lamps_wear_out_and_leds_fade() {
    let list = list(&yard());
    let [one, _, three] = [0, 1, 2].map(|i| list.stations[i].wear.unwrap());
    assert!(!one.has_lamp && one.lamps == 0 && one.light_left[0] < one.light_left[1]);
    let left = Catalogue::builtin().projector("mini LED").unwrap().left_after_1000_h;
    assert!((one.light_left[1] - left.typical.sqrt()).abs() < 1e-12, "half of a thousand hours");
    assert!(three.has_lamp);
    assert!(list.lines.iter().any(|line| line.what == "lamp for used lamp projector" && line.amount >= 1.0));
    let long = ShoppingList::of(Asked {
        yard: &yard(),
        catalogue: &Catalogue::builtin(),
        runs: &[],
        more: &[],
        hours: 20_000.0,
    });
    let wear = long.stations[2].wear.unwrap();
    let life = Catalogue::builtin().projector("used lamp projector").unwrap().lamp_hours.unwrap().0;
    assert_eq!(f64::from(wear.lamps), (20_000.0 / life).floor());
}

#[test]
fn it_can_be_read_and_packed() {
    let mut yard = yard();
    yard.stations[0].name.0 = "one, \"the first\"".to_owned();
    let list = list(&yard);
    for style in [Style::Metres, Style::FeetInches] {
        let page = list.page(style);
        assert!(!page.contains("NaN") && page.contains("budget of 400") && page.contains("first\n  1. "), "{page}");
    }
    let table = csv(&list);
    let mut rows = table.lines();
    let columns = rows.next().unwrap().split(',').count();
    assert_eq!((columns, table.lines().count()), (13, list.lines.len() + 1));
    assert!(table.contains("one, \"\"the first\"\""));
    let packs = labels(&list.packs);
    for station in &yard.stations {
        assert!(packs.contains(&format!("-- {} --", station.name.0)), "{packs}");
    }
    assert!(packs.contains("-- for all --") && packs.contains("1 × sheet (muslin, unbleached)"), "{packs}");
    let json = serde_json::to_value(&list).unwrap();
    assert_eq!(json["lines"].as_array().unwrap().len(), list.lines.len());
    let empty = self::list(&Yard::named("empty"));
    assert!(empty.lines.is_empty() && empty.to_buy.high == 0.0 && empty.first.is_empty() && empty.over().is_none());
    assert!(!empty.page(Style::Metres).contains("NaN"));
}
