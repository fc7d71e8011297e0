//! Weather boxes: heat in is heat out, and boxes of every sort.

use gauzelight::{
    craft::shelter::{self, Ease, Grade, Outdoors, Span, air, flow, rise, sun},
    scene::{BoxColour, BoxWall, Catalogue, Count, Fan, Positive, Shelter, Size, Yard},
    units::Style,
};
use proptest::prelude::*;

const MILD: Outdoors = Outdoors { celsius: 15.0, pressure: 101_325.0 };

fn yard(class: &str, more: &str, around: &str) -> Yard {
    let text = format!(
        r#"(name: "y", {around} stations: [(name: "one", projector: "{class}", at: (0, 0.5, 0), mount: Ground, aim: (0, 1, -3), content: (picture: "gourds"), {more})])"#
    );
    let read = Yard::parse(&text, "yard", &Catalogue::builtin());
    read.unwrap_or_else(|faults| panic!("{}", faults.plain())).yard
}

fn report(yard: &Yard) -> shelter::ShelterReport {
    shelter::report(yard, &Catalogue::builtin(), &yard.stations[0]).unwrap()
}

fn sealed() -> Shelter {
    Shelter { inlet_cm2: 0.0, outlet_cm2: 0.0, ..Shelter::default() }
}

#[test]
fn what_comes_in_goes_out() {
    let fan = Some(Fan { flow_m3_h: Positive(40.0), pressure_pa: Positive(25.0), watts: Positive(2.0) });
    for shelter in [Shelter::default(), Shelter { fan, ..Shelter::default() }, sealed()] {
        for ease in [Ease::Easy, Ease::Typical, Ease::Hard] {
            let k = rise(&shelter, 60.0, true, MILD, ease);
            let carried = MILD.density() * air::HEAT_CAPACITY * flow(&shelter, true, MILD, k, ease);
            let out = (shelter::loss(&shelter, ease) + carried) * k;
            assert!((out - 60.0).abs() < 1e-6, "{out} W leave");
        }
    }
}

#[test]
fn a_sealed_box_of_plastic_by_hand() {
    // 0.406 × 0.306 × 0.456 m outside: 0.898 m², five of six faces 0.748 m²; U = 1 / (0.13 + 0.003/0.2 + 0.07) = 4.651.
    let k = rise(&sealed(), 60.0, true, MILD, Ease::Typical);
    let by_hand = 60.0 / (4.651_16 * 2.0 * (0.406 * 0.306 + 0.406 * 0.456 + 0.306 * 0.456) * 5.0 / 6.0);
    assert!((k / by_hand - 1.0).abs() < 1e-5, "{k} against {by_hand}");
}

#[test]
fn no_heat_no_rise() {
    for shelter in [Shelter::default(), sealed()] {
        assert!(rise(&shelter, 0.0, false, MILD, Ease::Hard) < 1e-9);
    }
}

#[test]
fn sun_minds_the_colour() {
    let of = |colour| sun(&Shelter { colour, ..Shelter::default() }, Ease::Typical);
    let [white, grey, dark] = [BoxColour::White, BoxColour::Grey, BoxColour::Dark].map(of);
    assert!(white < 0.6 * grey && grey < dark, "{white} {grey} {dark}");
}

#[test]
fn a_hot_box_is_told_with_its_number_and_its_remedy() {
    let yard = yard("used lamp projector", "shelter: (inlet_cm2: 0, outlet_cm2: 0)", "climate: (warmest_c: 25),");
    let report = report(&yard);
    let first = &report.verdicts[0];
    assert_eq!(first.grade, Grade::Fix);
    assert!(first.says.contains("25 °C outside") && first.says.contains("35 °C"), "{}", first.says);
    assert!(first.helps.contains("m³/h") && first.helps.contains("CFM"), "{}", first.helps);
    assert!(report.warmest_c.typical > 60.0, "{:?}", report.warmest_c);
    let page = report.page(Style::Metres);
    assert!(page.contains("fix    Running at the warmest hour") && !page.contains("NaN"), "{page}");
}

#[test]
fn a_fan_that_stops_leaves_what_rises_by_itself() {
    let report = |more: &str| report(&yard("compact LED", more, "climate: (warmest_c: 25),"));
    let fanned = report("shelter: (fan: (flow_m3_h: 60), inlet_cm2: 20, outlet_cm2: 20)");
    let stopped = fanned.stopped_c.unwrap();
    // As warm as the same box with none, and two watts of a fan that is stuck.
    let without = report("shelter: (inlet_cm2: 20, outlet_cm2: 20, also_w: 2)");
    assert_eq!((stopped, without.stopped_c), (without.warmest_c, None));
    assert!(stopped.typical > fanned.warmest_c.typical + 5.0 && stopped.typical > fanned.runs_c.1, "{stopped:?}");
    let said = fanned.verdicts.iter().find(|verdict| verdict.says.contains("fan stop")).unwrap();
    assert!(said.grade == Grade::Check && said.helps.contains("cut-out"), "{said:?}");
    assert!(fanned.page(Style::Metres).contains("inside, fan stopped"));
    assert!(!without.verdicts.iter().any(|verdict| verdict.says.contains("fan stop")));
}

#[test]
fn what_keeps_rain_out_leaves_the_draught() {
    let report = report(&yard("mini LED", "shelter: (openings_down: false)", ""));
    let rain = report.verdicts.iter().find(|verdict| verdict.says.starts_with("Rain")).unwrap();
    assert!(rain.grade == Grade::Fix && rain.helps.contains("a hood over each") && !rain.helps.contains("floor"));
    assert!(rain.helps.contains("inlet low") && rain.helps.contains("outlet high"));
}

#[test]
fn feet_bring_fahrenheit() {
    let yard = yard("mini LED", "shelter: ()", "units: Feet,");
    let report = report(&yard);
    assert!(report.page(Style::FeetInches).contains("°F"));
    assert!(report.verdicts.iter().any(|verdict| verdict.says.contains("°F")));
}

#[test]
fn higher_up_it_is_warmer() {
    let fan = "shelter: (fan: (flow_m3_h: 30), wall: Plywood, thickness: \"18 mm\")";
    let low = report(&yard("compact LED", fan, ""));
    let high = report(&yard("compact LED", fan, "climate: (above_sea: \"2500 m\"),"));
    assert!(high.warmest_c.typical > low.warmest_c.typical + 1.0);
    assert!(high.wanted.flow_m3_h > 1.3 * low.wanted.flow_m3_h);
}

#[test]
fn a_station_without_a_box_has_no_report_and_gets_one_that_fits() {
    let catalogue = Catalogue::builtin();
    for class in &catalogue.projectors {
        let mut yard = yard(&class.name.0, "", "");
        assert!(shelter::report(&yard, &catalogue, &yard.stations[0]).is_none());
        yard.stations[0].shelter = shelter::fitting(&yard, &catalogue, &yard.stations[0]);
        let report = report(&yard);
        let worst = report.verdicts[0].grade;
        assert!(worst < Grade::Fix, "{}: {}", class.name.0, report.verdicts[0].says);
        assert!(report.warmest_c.typical < class.runs_c.1, "{}: {:?}", class.name.0, report.warmest_c);
        let faults = yard.check(&catalogue, None);
        assert!(faults.is_empty(), "{}", faults.plain());
    }
}

#[test]
fn a_fan_is_chosen_by_all_that_is_warm_and_by_what_the_class_bears() {
    let catalogue = Catalogue::builtin();
    let fan = |class: &str, more: &str, around: &str| {
        let mut yard = yard(class, more, around);
        let fitted = shelter::fitting(&yard, &catalogue, &yard.stations[0]).unwrap();
        yard.stations[0].shelter = Some(fitted.clone());
        let report = report(&yard);
        if let Some(fan) = &fitted.fan {
            assert!(fan.flow_m3_h.0 >= report.wanted.rating_m3_h.unwrap(), "{class}: {fan:?} {:?}", report.wanted);
        }
        fitted.fan.map_or(0.0, |fan| fan.flow_m3_h.0)
    };
    let bare = fan("compact LED", "", "climate: (warmest_c: 25),");
    let loaded = fan("compact LED", "loads: [(watts: 40)]", "climate: (warmest_c: 25),");
    assert!(bare > 0.0 && loaded > 1.3 * bare, "{bare} {loaded}");
    // Near to what the class bears, less of a rise is left, and so more air is wanted.
    assert!(fan("compact LED", "", "climate: (warmest_c: 31),") > bare);
    // A load of its own alone may make a fan of it.
    assert!(fan("mini LED", "loads: [(watts: 60)]", "climate: (warmest_c: 25),") > 0.0);
}

#[test]
fn what_is_not_quite_reckoned_with_is_told_as_well() {
    let told = |share: f64| {
        let yard = yard("mini LED", &format!("shelter: (), box_window: {share}"), "");
        report(&yard).verdicts.iter().any(|one| one.grade == Grade::Check && one.says.contains("the station is set to"))
    };
    assert!(told(1.0) && told(0.99) && told(0.95) && !told(0.9));
}

#[test]
fn a_pane_may_be_colder_than_the_walls() {
    let running = |pane: &str| {
        let more = format!("shelter: (wall: Plywood, thickness: \"18 mm\", window: (pane: {pane}))");
        report(&yard("mini LED", &more, "")).dew.running_c
    };
    assert!(running("Glass") < running("Acrylic") && running("Acrylic") < running("Open") - 0.5);
    let page = report(&yard("mini LED", "shelter: ()", "")).page(Style::Metres);
    assert!(page.contains("frost point, cold night"), "{page}");
    let page = report(&yard("mini LED", "shelter: ()", "climate: (coldest_c: 6),")).page(Style::Metres);
    assert!(page.contains("dew point, cold night"), "{page}");
}

#[test]
fn a_pane_that_leans_takes_more() {
    let catalogue = Catalogue::builtin();
    let passes = |tilt: f64| {
        let yard = yard("mini LED", &format!("shelter: (window: (tilt_deg: {tilt}))"), "");
        report(&yard).window.unwrap().passes
    };
    assert!(passes(0.0) > passes(45.0) && passes(45.0) > passes(65.0));
    // And has to be longer: by 1 / cos.
    let needs = |tilt: f64| {
        let yard = yard("mini LED", &format!("shelter: (window: (tilt_deg: {tilt}))"), "");
        report(&yard).window.unwrap().needs_height_m
    };
    assert!((needs(60.0) / needs(0.0) - 2.0).abs() < 1e-9);
    // A shifted picture leaves upwards, so a pane that leans the other way meets it more aslant.
    let shifted = |tilt: f64| {
        let yard = yard("12 V pocket", &format!("shelter: (window: (tilt_deg: {tilt}))"), "");
        report(&yard).window.unwrap().passes
    };
    assert!(catalogue.projector("12 V pocket").unwrap().shift.0[1] > 0.0);
    assert!(shifted(40.0) < shifted(-40.0), "{} {}", shifted(40.0), shifted(-40.0));
}

proptest! {
    #[test]
    fn boxes_of_every_size_have_numbers(
        sizes in [0.02..5.0f64, 0.02..5.0f64, 0.02..5.0f64], thick in 1e-4..0.2f64, faces in 1u32..=6, areas in [0.0..50_000.0f64, 0.0..50_000.0f64],
        watts in 0.0..5000.0f64, fan in prop::option::of((0.1..5000.0f64, 0.5..5000.0f64)), metal in any::<bool>(),
    ) {
        let [width, height, depth] = sizes.map(Size::metres);
        let fan = fan.map(|(flow, pressure)| Fan { flow_m3_h: Positive(flow), pressure_pa: Positive(pressure), watts: Positive(1.0) });
        let shelter = Shelter {
            width, height, depth, thickness: Size::metres(thick), free_faces: Count(faces), inlet_cm2: areas[0], outlet_cm2: areas[1], fan,
            wall: if metal { BoxWall::Metal } else { BoxWall::Plastic }, filter: true, grille: true, ..Shelter::default()
        };
        let of = |ease| rise(&shelter, watts, true, MILD, ease);
        let span = Span { low: of(Ease::Easy), typical: of(Ease::Typical), high: of(Ease::Hard) };
        prop_assert!(span.low.is_finite() && span.low >= 0.0 && span.high.is_finite());
        prop_assert!(span.low <= span.typical + 1e-9 && span.typical <= span.high + 1e-9, "{:?}", span);
        // More heat, warmer; never warmer than the walls alone would let it get.
        prop_assert!(rise(&shelter, watts + 10.0, true, MILD, Ease::Typical) > span.typical);
        prop_assert!(span.typical <= watts / shelter::loss(&shelter, Ease::Typical) + 1e-6);
    }
}
