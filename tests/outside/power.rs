//! Conductors, volts lost and what cords bear, against published tables and worked examples.
//!
//! Sources: NEC Chapter 9 Table 8 as printed by <https://voltdropcalc.com/nec-chapter-9-table-8/> (14 to 8 AWG, whose column the geometry
//! shows to be the solid one; 18 and 16 AWG, and the stranded column, from memory); a worked example of
//! <http://electrician2.com/weltrain05/lpage135.html>; one of <https://voltagedropcalculator.net/examples>; NEC Table 400.5(A) as quoted in
//! <http://www.smokingmeatforums.com/t/89762/> (secondary); a consumer guide, <http://engineeringcrossing.com/article/300032/>.

use gauzelight::{
    craft::{
        money::Running,
        power::{Branch, PowerReport, Trouble, ampacity_a, area_mm2, constant_current, ohms_per_m},
    },
    scene::{Catalogue, Gauge, Yard},
};

/// Metres of a thousand feet.
const KFT: f64 = 304.8;
const FT: f64 = 0.3048;

fn near(value: f64, wanted: f64, share: f64) {
    assert!((value - wanted).abs() <= share * wanted.abs(), "{value} where {wanted} is wanted");
}

/// Volts lost there and back, by the current at full volts.
fn lost(gauge: Gauge, solid: bool, copper_c: f64, one_way_m: f64, volts: f64, amps: f64) -> f64 {
    let ohms = 2.0 * one_way_m * ohms_per_m(gauge, solid, copper_c);
    volts - constant_current(volts, &[Branch { parent: None, ohms, watts: volts * amps }])[0].volts
}

/// NEC Chapter 9 Table 8, uncoated copper, direct current, 75 °C, Ω/kft. The geometry agrees to 0.4 %.
#[test]
fn solid_conductors_resist_what_the_table_says() {
    for (awg, ohms) in [(18, 7.77), (16, 4.89), (14, 3.07), (12, 1.93), (10, 1.21), (8, 0.764)] {
        near(ohms_per_m(Gauge::Awg(awg), true, 75.0) * KFT, ohms, 0.004);
    }
}

/// The same table's stranded column: 16 AWG read in electrician2.com, the rest from memory.
#[test]
#[expect(clippy::approx_constant, reason = "14 AWG resists 3.14 Ω/kft, which has nothing to do with circles")]
fn stranded_conductors_resist_what_the_table_says() {
    for (awg, ohms) in [(16, 4.99), (14, 3.14), (12, 1.98), (10, 1.24), (8, 0.778)] {
        near(ohms_per_m(Gauge::Awg(awg), false, 75.0) * KFT, ohms, 0.006);
    }
}

/// The same page in Ω/km, its circular mils, and that copper at 20 °C reads about 82 % of what it does at 75 °C.
#[test]
fn areas_and_cold_copper_are_those_of_the_table() {
    for (awg, ohms) in [(14, 10.07), (12, 6.332), (10, 3.970)] {
        near(ohms_per_m(Gauge::Awg(awg), true, 75.0) * 1000.0, ohms, 0.004);
    }
    // A circular mil is the area of a circle of a thousandth of an inch across.
    let mm2 = std::f64::consts::FRAC_PI_4 * 0.0254 * 0.0254;
    for (awg, mils) in [(14, 4110.0), (12, 6530.0), (10, 10_380.0), (8, 16_510.0)] {
        near(area_mm2(Gauge::Awg(awg)), mils * mm2, 0.002);
    }
    let [cold, warm] = [20.0, 75.0].map(|c| ohms_per_m(Gauge::Awg(12), true, c));
    near(cold / warm, 0.82, 0.01);
}

/// IEC 60228, greatest resistance at 20 °C in Ω/km, from memory: fine strands (class 5), then solid (class 1).
#[test]
fn metric_conductors_resist_no_less_than_their_standard_allows() {
    for (mm2, ohms) in [(0.75, 26.0), (1.0, 19.5), (1.5, 13.3), (2.5, 7.98), (4.0, 4.95)] {
        near(ohms_per_m(Gauge::Mm2(mm2), false, 20.0) * 1000.0, ohms, 0.025);
    }
    for (mm2, ohms) in [(1.5, 12.1), (2.5, 7.41), (4.0, 4.61)] {
        near(ohms_per_m(Gauge::Mm2(mm2), true, 20.0) * 1000.0, ohms, 0.02);
    }
}

#[test]
fn worked_examples_of_volts_lost() {
    // electrician2.com: 16 AWG stranded, 100 ft, 4 A: 3.99 V, printed 4.0.
    near(lost(Gauge::Awg(16), false, 75.0, 100.0 * FT, 120.0, 4.0), 3.99, 0.005);
    // voltagedropcalculator.net: 12 AWG, 100 ft, 20 A, 120 V, copper at 20 °C: 6.35 V, 5.3 %.
    let volts = lost(Gauge::Awg(12), true, 20.0, 100.0 * FT, 120.0, 20.0);
    near(volts, 6.35, 0.005);
    near(100.0 * volts / 120.0, 5.3, 0.01);
    // 2 K I D / CM with K = 12.9: 12 AWG, 100 ft, 16 A: 6.32 V; by 1.93 Ω/kft 6.18 V.
    let volts = lost(Gauge::Awg(12), true, 75.0, 100.0 * FT, 120.0, 16.0);
    near(volts, 6.18, 0.005);
    near(volts, 6.32, 0.025);
}

/// NEC Table 400.5(A) as quoted: two conductors carrying, then three. Never a value between two rows.
#[test]
fn cords_bear_what_the_code_quotes() {
    for (awg, two, three) in [(16, 13.0, 10.0), (14, 18.0, 15.0), (12, 25.0, 20.0), (10, 30.0, 25.0)] {
        assert_eq!(ampacity_a(Gauge::Awg(awg), true), Some(two));
        assert_eq!(ampacity_a(Gauge::Awg(awg), false), Some(three));
    }
    // The consumer guide: 18 AWG 10 A; it is more careful with what is thicker: 14 AWG 15 A, 12 AWG 15 A, 10 AWG 20 A.
    assert_eq!(ampacity_a(Gauge::Awg(18), true), Some(10.0));
    for (awg, guide) in [(16, 13.0), (14, 15.0), (12, 15.0), (10, 20.0)] {
        assert!(ampacity_a(Gauge::Awg(awg), true).unwrap() >= guide);
    }
    for (mm2, thinner) in [(1.0, 18), (1.5, 16), (2.0, 16), (2.5, 14), (4.0, 12), (6.0, 10), (16.0, 10)] {
        assert_eq!(ampacity_a(Gauge::Mm2(mm2), true), ampacity_a(Gauge::Awg(thinner), true), "{mm2} mm²");
    }
    assert_eq!(ampacity_a(Gauge::Awg(22), true), None);
}

/// A station that draws so many watts from an outlet of 120 V on a breaker.
fn outlet(breaker_a: f64, watts: f64) -> PowerReport {
    let text = format!(
        r#"(name: "outlet", walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)],
        stations: [(name: "one", projector: "bare", at: (0, 1, 3), aim: "wall", content: (picture: "owl_face"), loads: [(watts: {watts})])],
        supplies: [(name: "outlet", at: (0, 0.3, 3), kind: Mains(volts: 120, breaker_a: {breaker_a}, gfci: true), ip: "IP55")],
        cables: [(name: "cord", from: "outlet", to: "one", gauge: "10 AWG")],
        projectors: [(name: "bare", claimed: 100, lumens: 50, pixels: (100, 100), throw_ratio: 1, watts: 0.001)])"#
    );
    report(&text)
}

fn report(text: &str) -> PowerReport {
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    PowerReport::of(&yard, &catalogue, Running::of(&yard, 1))
}

/// NEC 210.19 and 210.20, from memory: for three hours and more 15 A carry 12 A, 1440 W at 120 V; 20 A carry 16 A, 1920 W.
#[test]
fn a_breaker_carries_four_fifths_for_hours() {
    for (breaker, watts) in [(15.0, 1440.0), (20.0, 1920.0)] {
        let over = |watts| {
            let report = outlet(breaker, watts);
            report.problems.into_iter().find(|problem| problem.trouble == Trouble::Supply)
        };
        // What the cord loses counts too, a few watts.
        assert_eq!(over(watts * 0.98), None);
        let found = over(watts * 1.02).unwrap();
        assert!(!found.grave, "{}", found.says);
        near(found.limit, watts, 1e-6);
        assert!(over(watts * 1.3).unwrap().grave);
    }
}
