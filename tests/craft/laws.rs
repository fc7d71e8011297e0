//! Laws of air, current and wind by hand: first principles, and formulas typed once more.

use gauzelight::{
    craft::{
        money::Running,
        power::{Branch, PowerReport, Trouble, WORKING_C, area_mm2, constant_current, constant_power, ohms_per_m},
        shelter::{
            Ease,
            air::{self, per_hour},
            dew, draught, passes,
        },
        wind::{Drag, SOLID, kept_share, pressure, swing_deg},
    },
    scene::{BoxWindow, Catalogue, Fan, Gauge, PaneKind, Positive, Shelter, Size, Yard},
    units::Style,
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

fn report(text: &str) -> PowerReport {
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(text, "yard", &catalogue).unwrap_or_else(|faults| panic!("{}", faults.plain())).yard;
    PowerReport::of(&yard, &catalogue, Running::of(&yard, 1))
}

/// From first principles once more, by hand: `ρ (1 + α ΔT) / A` of a wire of 2.053 mm (12 AWG, ASTM B258).
#[test]
fn the_geometry_of_a_wire_gives_its_resistance() {
    for (awg, ohms) in [(18, 7.765), (16, 4.883), (14, 3.071), (12, 1.9315), (10, 1.2147)] {
        near(ohms_per_m(Gauge::Awg(awg), true, 75.0) * KFT, ohms, 0.0005);
    }
    for (awg, area) in [(18, 0.823), (16, 1.309), (14, 2.081), (12, 3.309), (10, 5.261)] {
        near(area_mm2(Gauge::Awg(awg)), area, 0.001);
    }
    let by_hand = 1.7241e-8 / (std::f64::consts::PI * (0.5 * 2.0525e-3f64).powi(2));
    near(ohms_per_m(Gauge::Awg(12), true, 20.0), by_hand, 0.001);
}

/// Common practice, no source: 12 V, 4 A, 50 ft on 18 AWG loses about 3.1 V and must be called out; 12 AWG still loses 6 %.
#[test]
fn twelve_volts_do_not_reach_far() {
    let thin = lost(Gauge::Awg(18), true, WORKING_C, 50.0 * FT, 12.0, 4.0);
    near(thin, 3.1, 0.01);
    let thick = lost(Gauge::Awg(12), true, WORKING_C, 50.0 * FT, 12.0, 4.0);
    near(thick / 12.0, 0.064, 0.01);
    // What keeps its watts does not run at all on the thin one.
    let ohms = |gauge| 100.0 * FT * ohms_per_m(gauge, true, WORKING_C);
    let settles = |gauge| constant_power(12.0, &[Branch { parent: None, ohms: ohms(gauge), watts: 48.0 }]);
    assert_eq!(settles(Gauge::Awg(18)), None);
    // V² − 12 V + R P = 0.
    let root = 0.5 * (12.0 + (144.0 - 4.0 * ohms(Gauge::Awg(12)) * 48.0).sqrt());
    near(settles(Gauge::Awg(12)).unwrap()[0].volts, root, 1e-6);
    for (gauge, grave) in [("18 AWG", true), ("12 AWG", false)] {
        let text = format!(
            r#"(name: "far", walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3)],
        stations: [(name: "one", projector: "low", at: (0, 1, 0.5), aim: "wall", content: (picture: "owl_face"))],
        supplies: [(name: "brick", at: ("50 ft", 1, 0.5), kind: TwelveVolt(watts: 100, fuse_a: 7.5), ip: "IP65")],
        cables: [(name: "lead", from: "brick", to: "one", gauge: "{gauge}", solid: true, slack: 0)],
        projectors: [(name: "low", claimed: 100, lumens: 50, pixels: (100, 100), throw_ratio: 1, watts: 48, volts: TwelveVolt)])"#
        );
        let report = report(&text);
        let found = report.problems.iter().find(|problem| problem.trouble == Trouble::Drop).unwrap();
        assert_eq!(found.grave, grave, "{}", found.says);
        near(report.cables[0].simple_drop_v, if grave { 3.1 } else { 0.772 }, 0.01);
        assert_eq!(report.cables[0].drop_v.is_none(), grave);
        assert!(found.says.contains(if grave { "3.1 of the 12 V" } else { "11 V of the 12 V" }), "{}", found.says);
        assert_eq!(report.cables[0].gauge_to_buy, Some(Gauge::Awg(10)));
        let page = report.page(Style::FeetInches);
        assert!(page.contains("50 ft (15.3 m)") && page.contains("buy 10 AWG"), "{page}");
    }
}

/// Common practice, no source: filter and grille may halve a fan. A small fan before openings of its own size.
#[test]
fn filter_and_grille_may_halve_a_fan() {
    let fan = Fan { flow_m3_h: Positive(50.0), pressure_pa: Positive(25.0), watts: Positive(2.0) };
    let bare = Shelter { inlet_cm2: 50.0, outlet_cm2: 50.0, mesh: false, ..Shelter::default() };
    let dressed = Shelter { filter: true, grille: true, ..bare.clone() };
    let left = |shelter: &Shelter| {
        let resistance = draught::resistance(shelter, true, Ease::Typical);
        per_hour(draught::delivered(&fan, resistance, air::RATED)) / fan.flow_m3_h.0
    };
    let (bare, dressed) = (left(&bare), left(&dressed));
    assert!((0.42..0.58).contains(&dressed), "{dressed} of the fan is left");
    assert!(bare > dressed + 0.1, "{bare} without them");
}

/// Where fan curve and openings meet both have one pressure: first principles.
#[test]
fn a_fan_works_where_its_curve_meets_the_openings() {
    let fan = Fan { flow_m3_h: Positive(80.0), pressure_pa: Positive(40.0), watts: Positive(3.0) };
    for area in [10.0, 60.0, 400.0] {
        let shelter = Shelter { inlet_cm2: area, outlet_cm2: area, ..Shelter::default() };
        let resistance = draught::resistance(&shelter, true, Ease::Typical);
        let got = draught::delivered(&fan, resistance, air::RATED);
        let held = fan.pressure_pa.0 * (1.0 - per_hour(got) / fan.flow_m3_h.0);
        near(held, 0.5 * air::RATED * resistance.unwrap_or(0.0) * got * got, 1e-9);
        // And the rating that brings this much through is this fan's.
        let rating = draught::rating(got, fan.pressure_pa.0, resistance, air::RATED);
        near(per_hour(rating.unwrap()), fan.flow_m3_h.0, 1e-9);
    }
}

/// Loss coefficients of woven screens by their open share, in the form of Hoerner; from memory.
#[test]
fn screens_resist_as_hoerner_has_it() {
    for (open, loss) in [(0.8, 0.2625), (0.7, 0.4837), (0.6, 0.8444), (0.5, 1.5), (0.4, 2.85)] {
        near(draught::screen(1.0 - open), loss, 2e-4);
    }
}

/// A dew point is where the air it is of is saturated: first principles.
#[test]
fn the_dew_point_undoes_the_humidity() {
    for celsius in [-15.0, 0.0, 12.0, 30.0] {
        for humidity in [0.2, 0.6, 0.9, 1.0] {
            let point = dew::point(celsius, humidity);
            // Humidity is held against water; over ice air has lost what is more than that.
            let holds = (humidity * dew::over_water(celsius)).min(dew::saturation(celsius));
            near(dew::saturation(point), holds, 1e-9);
            assert!(point <= celsius + 1e-9);
        }
    }
}

/// An open hole loses nothing; nothing comes through a pane at grazing incidence, less the more aslant (Fresnel).
#[test]
fn panes_pass_less_aslant() {
    let pane = |pane| BoxWindow { pane, thickness: Size::metres(0.003), ..BoxWindow::default() };
    assert!((passes(&pane(PaneKind::Open), 0.3) - 1.0).abs() < 1e-12);
    let aslant: Vec<f64> =
        [0.0f64, 30.0, 60.0, 80.0, 90.0].map(|deg| passes(&pane(PaneKind::Glass), deg.to_radians().cos())).to_vec();
    assert!(aslant.windows(2).all(|pair| pair[0] > pair[1]), "{aslant:?}");
    assert!(aslant[4] < 1e-6);
}

/// AS/NZS 1170.2 (from memory): Kp = 1 − (1 − δ)², the share of a solid panel's load that a porous one keeps.
#[test]
fn porous_panels_of_as_nzs_1170_2() {
    for (solidity, kept) in [(0.0, 0.0), (0.2, 0.36), (0.5, 0.75), (0.8, 0.96), (1.0, 1.0)] {
        assert!((kept_share(solidity) - kept).abs() < 1e-12);
        if solidity <= 0.6 {
            assert!((Drag::of(solidity).typical - SOLID * kept).abs() < 1e-12);
        }
    }
}

/// First principles: a slack sheet without a hem hangs straight at tan φ = pull over weight; with a hem alone it is a parabola
/// whose chord leans by half the pull over the hem; and a chain of many links agrees in between.
#[test]
fn a_hanging_sheet_from_first_principles() {
    assert!((swing_deg(3.0, 4.0, 0.0).to_radians().tan() - 0.75).abs() < 1e-9);
    assert!((swing_deg(0.02, 0.0, 1.0).to_radians().tan() - 0.01).abs() < 1e-5);
    assert_eq!((swing_deg(0.0, 2.0, 1.0), swing_deg(0.0, 0.0, 0.0)), (0.0, 0.0));
    let (pull, weight, hem) = (6.0, 2.5, 4.0);
    let links = 5000_u32;
    // From the foot: each link lies along the sum of all forces below its upper end.
    let (mut x, mut y, mut force) = (0.0, 0.0, [0.0, hem]);
    for _ in 0..links {
        force = [force[0] + pull / f64::from(links), force[1] + weight / f64::from(links)];
        let tension = force[0].hypot(force[1]);
        (x, y) = (x + force[0] / tension, y + force[1] / tension);
    }
    let chain = f64::atan2(x, y).to_degrees();
    assert!((swing_deg(pull, weight, hem) - chain).abs() < 0.01, "{chain}");
}

/// First principles: pressure is what stops a stream, so that force = momentum brought per second, ½ of ρ V² A V / V.
#[test]
fn pressure_is_half_the_momentum_of_the_stream() {
    let (density, m_s) = (1.3, 7.0);
    let mass_per_second = density * m_s;
    assert!((2.0 * pressure(density, m_s) - mass_per_second * m_s).abs() < 1e-9);
    // Twice the wind, four times the pull.
    assert!((pressure(density, 2.0 * m_s) / pressure(density, m_s) - 4.0).abs() < 1e-12);
}
